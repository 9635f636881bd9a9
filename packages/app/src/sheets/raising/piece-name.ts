// A piece by the numbers of its panels, runs of neighbours in one course shortened: `1-37 to 1-39`.

import { listed } from '../../words/counted.ts';
import { unbroken } from './props-at.ts';

/** The name: numbers in order, three or more that follow each other as the first and the last. */
export function pieceName(numbers: readonly string[]): string {
  const sorted = [...numbers].sort();
  const runs: string[][] = [];
  for (const number of sorted) {
    const run = runs.at(-1);
    if (run !== undefined && follows(run.at(-1) ?? '', number)) run.push(number);
    else runs.push([number]);
  }
  return listed(
    runs.flatMap((run) =>
      run.length < 3
        ? run.map(unbroken)
        : [`${unbroken(run[0] ?? '')} to ${unbroken(run.at(-1) ?? '')}`],
    ),
  );
}

/** Whether a number is the next one in the same course. */
function follows(before: string, number: string): boolean {
  const [course, at] = before.split('-');
  const [other, next] = number.split('-');
  return course === other && Number(next) === Number(at) + 1;
}
