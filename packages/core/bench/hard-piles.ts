// What a real heap does to the identification. `npm run bench -- hard-piles` prints the table of the
// twelve cases and the calibration; `-- hard-piles CASE [piles] [first seed]` one case with every
// pile that is not right; `-- hard-piles calibration [piles]` the calibration alone;
// `-- hard-piles all` the full run. Seeds are fixed; every pile goes through the whole of it:
// readings into kinds, the question, the answer.

import type { Line } from '../../../scripts/bench-line.d.ts';
import { printCalibration } from './heaps/calibration.ts';
import { cases } from './heaps/cases.ts';
import type { HardCase, Outcome } from './heaps/heap.ts';
import { runPile, stopsAfter, type Told } from './heaps/run.ts';

/** Runs what is asked for. */
export function main(args: readonly string[]): readonly Line[] {
  const [name, piles, first] = args;
  if (name === 'calibration') return printCalibration(Number(piles ?? 300));
  const chosen =
    name === undefined || name === 'all' ? cases : cases.filter((one) => one.name === name);
  if (chosen.length === 0) {
    throw new Error(`there is no case ${name}: ${cases.map((one) => one.name).join(', ')}`);
  }
  const count = Number(piles ?? (name === 'all' ? 20 : name === undefined ? 4 : 8));
  const details = chosen.length === 1;
  console.log(header);
  const told = chosen.flatMap((one) =>
    printCase(one, count, Number(first ?? 1), details).map((run) => ({ one, run })),
  );
  console.log('wanted: every pile right or an honest no, none wrong but certain');
  const worst = (isSlow: boolean, isLarge: boolean): number =>
    Math.max(
      0,
      ...told
        .filter(({ one, run }) => slow.has(one.name) === isSlow && run.most > 320 === isLarge)
        .map(({ run }) => run.ms / 1000),
    );
  const outcomes = (of: Outcome): number =>
    told.filter(({ run }) => run.verdict.outcome === of).length;
  const of = `of ${told.length} hard piles`;
  const wrong = outcomes('wrong') + outcomes('certain');
  return [
    {
      what: `right, or an honest no, ${of}`,
      found: 100 * (1 - wrong / told.length),
      unit: '%',
      wanted: 99,
      least: true,
    },
    { what: `wrong but certain, ${of}`, found: outcomes('certain'), unit: 'piles', wanted: 0 },
    { what: 'answer to 320 places, worst', found: worst(false, false), unit: 's', wanted: 2 },
    { what: `the same: ${[...slow].join(', ')}`, found: worst(true, false), unit: 's', wanted: 10 },
    ...(count >= 8
      ? ([
          {
            what: 'answer to 720 places, worst',
            found: Math.max(worst(false, true), worst(true, true)),
            unit: 's',
            wanted: 10,
          },
        ] as const)
      : []),
    ...(chosen.length > 1
      ? [...printStops(chosen), ...printCalibration(name === 'all' ? 1000 : 60)]
      : []),
  ];
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

function printCase(one: HardCase, piles: number, first: number, details: boolean): readonly Told[] {
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
  return told;
}

const inMs = (time: number): string => `${time.toFixed(0)} ms`.padStart(8);

/** How soon the search ends when told to, at three moments of a pile of each case. */
function printStops(chosen: readonly HardCase[]): readonly Line[] {
  const late = chosen.flatMap((one) =>
    [10, 60, 200].flatMap((after) => {
      const by = stopsAfter(one, 8, after);
      return by === null ? [] : [by];
    }),
  );
  if (late.length === 0) return [];
  console.log(
    `told to stop ${late.length} times: ended within ${Math.max(...late).toFixed(0)} ms (wanted: 100 ms)`,
  );
  return [
    { what: 'told to stop: ended within', found: Math.max(...late), unit: 'ms', wanted: 100 },
  ];
}

function printPile({ seed, label, verdict, ms, answer }: Told): void {
  const best = answer?.shapes[0];
  const said = best
    ? `${answer?.shapes.length} shapes, best ${best.shell.placeStart.length - 1} places at ${(100 * best.probability).toFixed(0)} %`
    : (answer?.reasons[0] ?? 'no reason');
  const lacks = verdict.lacks.length > 0 ? `; not said: ${verdict.lacks.join('; ')}` : '';
  console.log(`  ${seed} ${verdict.outcome}: ${label}; ${said}${lacks}; ${ms.toFixed(0)} ms`);
}
