// Are the probabilities what they say? Plain and hard piles in turn; the best shape's stated
// probability against the share that is right, and how often the radius's interval holds the truth.

import type { Line } from '../../../../scripts/bench-line.d.ts';
import type { Shape } from '../../src/identify/shape.ts';
import { ambiguity } from './ambiguity.ts';
import { culprits } from './culprits.ts';
import { gap } from './gap.ts';
import { hands } from './hands.ts';
import type { HardCase } from './heap.ts';
import { isCertain } from './judging.ts';
import { laps } from './laps.ts';
import { mixtures } from './mixtures.ts';
import { nearEqual } from './near-equal.ts';
import { part } from './part.ts';
import { plain } from './plain.ts';
import { runPile, type Told } from './run.ts';
import { strangers } from './strangers.ts';

/** Four plain piles for eight hard ones. */
const turns: readonly HardCase[] = [
  plain,
  nearEqual,
  strangers,
  plain,
  culprits,
  hands,
  plain,
  ambiguity,
  gap,
  plain,
  part,
  mixtures,
  laps,
];

/** Places of the largest base: many piles, so small ones. */
const MOST_PLACES = 260;

const bins = [0, 0.2, 0.4, 0.6, 0.8, 0.9, 0.99, 1.0001] as const;

/** Prints the reliability table of so many piles, seeds from 100,001. */
export function printCalibration(piles: number): readonly Line[] {
  const told: { one: HardCase; run: Told }[] = [];
  for (let i = 0; i < piles; i++) {
    const one = turns[i % turns.length] as HardCase;
    told.push({ one, run: runPile(one, 100_001 + i, MOST_PLACES) });
  }
  const answered = told.filter(({ run }) => run.verdict.bestRight !== null);
  console.log(`\nCalibration over ${piles} piles, ${answered.length} of them with a shape`);
  console.log('stated        answers  right');
  for (let b = 0; b + 1 < bins.length; b++) {
    const [low, high] = [bins[b] as number, bins[b + 1] as number];
    const inside = answered.filter(({ run }) => stated(run) >= low && stated(run) < high);
    console.log(
      `${percent(low)} – ${percent(Math.min(high, 1))}  ${String(inside.length).padStart(6)}  ${share(inside)}`,
    );
  }
  const sure = answered.filter(({ run }) => stated(run) >= 0.9);
  console.log(`of those at 90 % or more right: ${share(sure)} (wanted: 90 % at least)`);
  const round = answered.filter(({ run }) => run.radius !== null && run.verdict.bestRight);
  const held = round.filter(({ run }) => {
    const best = run.answer?.shapes[0] as Shape;
    return Math.abs(best.radius - (run.radius as number)) < 1.96 * best.radiusSd;
  });
  console.log(
    `radius within 1.96 sd of the truth: ${held.length}/${round.length} ${percent(held.length / Math.max(1, round.length))} (wanted: 95 % ± 2 %)`,
  );
  const lies = answered.filter(
    ({ run }) => !run.verdict.bestRight && run.answer !== null && isCertain(run.answer),
  );
  console.log(`wrong but certain: ${lies.length} (wanted: 0)`);
  for (const { one, run } of sure.filter(({ run }) => !run.verdict.bestRight))
    console.log(`  ${one.name} ${run.seed} at ${percent(stated(run))}: ${run.label}`);
  const right = sure.filter(({ run }) => run.verdict.bestRight).length;
  const of = `of ${piles} piles`;
  return [
    {
      what: `right of those stated at 90 % or more, ${of}`,
      found: (100 * right) / Math.max(1, sure.length),
      unit: '%',
      wanted: 90,
      least: true,
    },
    {
      what: `radius within 1.96 deviations, ${of}`,
      found: (100 * held.length) / Math.max(1, round.length),
      unit: '%',
      wanted: 90,
      least: true,
    },
    { what: `wrong but certain, ${of}`, found: lies.length, unit: 'piles', wanted: 0 },
  ];
}

const stated = (run: Told): number => run.answer?.shapes[0]?.probability ?? 0;

const percent = (part: number): string => `${(100 * part).toFixed(0)} %`.padStart(5);

const share = (of: readonly { run: Told }[]): string => {
  const right = of.filter(({ run }) => run.verdict.bestRight).length;
  return of.length === 0 ? '–' : `${right}/${of.length} ${percent(right / of.length)}`;
};
