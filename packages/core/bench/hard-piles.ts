// What a real heap does to the identification. `npm run bench -- hard-piles` prints the table of the
// twelve cases and the calibration; `-- hard-piles CASE [piles] [first seed]` one case with every
// pile that is not right; `-- hard-piles calibration [piles]` the calibration alone;
// `-- hard-piles all` the full run. Seeds are fixed; every pile goes through the whole of it:
// readings into kinds, the question, the answer.

import { printCalibration } from './heaps/calibration.ts';
import { cases } from './heaps/cases.ts';
import type { HardCase, Outcome } from './heaps/heap.ts';
import { runPile, type Told } from './heaps/run.ts';

/** Runs what is asked for. */
export function main(args: readonly string[]): number {
  const [name, piles, first] = args;
  if (name === 'calibration') {
    printCalibration(Number(piles ?? 300));
    return 0;
  }
  const chosen =
    name === undefined || name === 'all' ? cases : cases.filter((one) => one.name === name);
  if (chosen.length === 0) {
    console.error(`There is no case ${name}: ${cases.map((one) => one.name).join(', ')}.`);
    return 2;
  }
  const count = Number(piles ?? (name === 'all' ? 20 : 8));
  const details = chosen.length === 1;
  console.log(header);
  for (const one of chosen) printCase(one, count, Number(first ?? 1), details);
  console.log(
    'wanted: every pile right or an honest no, none wrong but certain; 320 places in 2 s,',
  );
  console.log('720 in 10 s; culprits and mixtures in 10 s at 320, an honest no in 10 s');
  if (chosen.length > 1) printCalibration(name === 'all' ? 1000 : 100);
  return 0;
}

const columns: readonly (readonly [Outcome, string])[] = [
  ['right', 'right'],
  ['short', 'not all said'],
  ['no', 'honest no'],
  ['wrong', 'wrong'],
  ['certain', 'wrong but certain'],
];

const header = `case        piles  ${columns.map(([, title]) => title).join('  ')}  median    worst`;

function printCase(one: HardCase, piles: number, first: number, details: boolean): void {
  const told: Told[] = [];
  for (let seed = first; seed < first + piles; seed++) {
    const run = runPile(one, seed);
    told.push(run);
    if (details || run.verdict.outcome === 'certain') printPile(run);
  }
  const times = told.map(({ ms }) => ms).sort((a, b) => a - b);
  const counts = columns.map(([outcome, title]) =>
    String(told.filter(({ verdict }) => verdict.outcome === outcome).length).padStart(title.length),
  );
  const ms = (at: number): string => `${(times[at] as number).toFixed(0)} ms`.padStart(8);
  console.log(
    `${one.name.padEnd(10)}  ${String(piles).padStart(5)}  ${counts.join('  ')}  ${ms(piles >> 1)} ${ms(piles - 1)}`,
  );
}

function printPile({ seed, label, verdict, ms, answer }: Told): void {
  const best = answer?.shapes[0];
  const said = best
    ? `${answer?.shapes.length} shapes, best ${best.shell.placeStart.length - 1} places at ${(100 * best.probability).toFixed(0)} %`
    : (answer?.reasons[0] ?? 'no reason');
  const lacks = verdict.lacks.length > 0 ? `; not said: ${verdict.lacks.join('; ')}` : '';
  console.log(`  ${seed} ${verdict.outcome}: ${label}; ${said}${lacks}; ${ms.toFixed(0)} ms`);
}
