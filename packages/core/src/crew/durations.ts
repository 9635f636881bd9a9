// How long work takes, as a range, from its panels, bolts, plates and props, its height, and what was
// done before. The range is that of single jobs (nine of ten in it, log-normal); how fast this crew is at
// all is another thing, the same for every task: `paceSd`.

import { type CrewRates, slowness, WORKS, type Work } from './rates.ts';
import type { Range } from './task.ts';

/** What a task is made of. */
export interface WorkAmount {
  readonly counts: Readonly<Partial<Record<Work, number>>>;
  /** Mean height of the work, metres over the ground. */
  readonly height: number;
  /** Panels that stand before it. */
  readonly panelsBefore: number;
}

/** Half of 90 % of a normal distribution, in standard deviations. */
const NINE_OF_TEN = 1.6449;

/** Person-seconds of some work at the median rates. */
export function effortOf(rates: CrewRates, amount: WorkAmount): number {
  const panels = amount.counts.panel ?? 0;
  const slow = slowness(rates, amount.panelsBefore, panels, amount.height);
  return WORKS.reduce(
    (sum, work) => sum + (amount.counts[work] ?? 0) * rates.work[work].median * slow,
    0,
  );
}

/** The duration of some work by so many people, seconds; all zero where there is none of it. Parts with
 * different scatter add as if they went fast or slow together. Throws RangeError where nobody does it. */
export function durationOf(rates: CrewRates, amount: WorkAmount, people: number): Range {
  if (!(people >= 1)) throw new RangeError(`people is ${people}, expected at least 1`);
  const slow = slowness(rates, amount.panelsBefore, amount.counts.panel ?? 0, amount.height);
  const at = (z: number): number =>
    WORKS.reduce((sum, work) => {
      const { median, scatter } = rates.work[work];
      return sum + (amount.counts[work] ?? 0) * median * Math.exp(z * scatter);
    }, 0) *
    (slow / people);
  return { low: at(-NINE_OF_TEN), likely: at(0), high: at(NINE_OF_TEN) };
}

/** Standard deviation of the logarithm of a crew's pace on the whole job: the rates' own, weighted by the
 * work that each stands for. 0 where there is no work. */
export function paceSd(rates: CrewRates, amounts: readonly WorkAmount[]): number {
  let [sum, all] = [0, 0];
  for (const amount of amounts)
    for (const work of WORKS) {
      const effort = (amount.counts[work] ?? 0) * rates.work[work].median;
      sum += effort * rates.work[work].logSd;
      all += effort;
    }
  return all === 0 ? 0 : sum / all;
}
