// What a real heap does to the identification. `npm run bench -- hard-piles` prints the table of the
// twelve cases and the calibration; `-- hard-piles CASE [piles] [first seed]` one case with every
// pile that is not right; `-- hard-piles calibration [piles]` the calibration alone;
// `-- hard-piles all` the full run. Seeds are fixed; every pile goes through the whole of it:
// readings into kinds, the question, the answer.

import { printCalibration } from './heaps/calibration.ts';
import { cases } from './heaps/cases.ts';
import type { HardCase, Outcome } from './heaps/heap.ts';
import { runPile, stopsAfter, type Told } from './heaps/run.ts';

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
  console.log('wanted: every pile right or an honest no, none wrong but certain');
  if (chosen.length > 1) {
    printStops(chosen);
    printCalibration(name === 'all' ? 1000 : 100);
  }
  return 0;
}

const columns: readonly (readonly [Outcome, string])[] = [
  ['right', 'right'],
  ['short', 'not all said'],
  ['no', 'honest no'],
  ['wrong', 'wrong'],
  ['certain', 'wrong but certain'],
];

const header = `case        piles  ${columns.map(([, title]) => title).join('  ')}  median    worst: to 320   to 720 places  wanted`;

/** Cases that may take ten seconds at 320 places; the others may at 720. */
const slow = new Set(['culprits', 'mixtures', 'nothing']);

function printCase(one: HardCase, piles: number, first: number, details: boolean): void {
  const told: Told[] = [];
  for (let seed = first; seed < first + piles; seed++) {
    const run = runPile(one, seed);
    told.push(run);
    if (details || run.verdict.outcome === 'certain') printPile(run);
  }
  const times = told.map(({ ms }) => ms).sort((a, b) => a - b);
  const worst = (large: boolean): string => {
    const of = told.filter(({ most }) => most > 320 === large).map(({ ms }) => ms);
    return of.length === 0 ? '–'.padStart(8) : inMs(Math.max(...of));
  };
  const counts = columns.map(([outcome, title]) =>
    String(told.filter(({ verdict }) => verdict.outcome === outcome).length).padStart(title.length),
  );
  const median = inMs(times[piles >> 1] as number);
  console.log(
    `${one.name.padEnd(10)}  ${String(piles).padStart(5)}  ${counts.join('  ')}  ${median}       ${worst(false)}   ${worst(true)}         ${slow.has(one.name) ? '10 s' : '2 s, 10 s'}`,
  );
}

const inMs = (time: number): string => `${time.toFixed(0)} ms`.padStart(8);

/** How soon the search ends when told to, at three moments of a pile of each case. */
function printStops(chosen: readonly HardCase[]): void {
  const late = chosen.flatMap((one) =>
    [10, 60, 200].flatMap((after) => {
      const by = stopsAfter(one, 8, after);
      return by === null ? [] : [by];
    }),
  );
  if (late.length === 0) return;
  console.log(
    `told to stop ${late.length} times: ended within ${Math.max(...late).toFixed(0)} ms (wanted: 100 ms)`,
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
