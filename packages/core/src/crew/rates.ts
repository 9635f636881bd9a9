// How fast people work: person-seconds for a panel, a bolt, a hub plate, a prop, each with how sure it
// is. No published minutes a bolt of light panels were found: the values here are common practice, wide
// on purpose, and what the record shows of this crew soon outweighs them. A rate is log-normal: `median`
// with `logSd` for how little is known of it; single jobs scatter about it by `scatter`.

import { commonPractice, type Provenance } from '../loads/provenance.ts';
import { assertNumber } from '../math/doors.ts';
import { learningFactor } from './learning.ts';

/** Sorts of work that have a rate: carrying, lifting and holding a panel; putting in a bolt finger-tight;
 * tightening one to the next pass; a hub plate; a prop set or moved; staking out and levelling the ground
 * for one base hub; an anchor. */
export const WORKS = ['panel', 'bolt', 'tighten', 'plate', 'prop', 'base', 'anchor'] as const;

/** A sort of work: one of {@link WORKS}. */
export type Work = (typeof WORKS)[number];

/** A rate: person-seconds for one, at a height that is reached from the ground, by people who have done
 * `SETTLED` panels. */
export interface Rate {
  readonly median: number;
  /** Standard deviation of its logarithm: of the rate itself, the same for the whole job. */
  readonly logSd: number;
  /** Standard deviation of the logarithm of one job about the rate. */
  readonly scatter: number;
  /** Jobs of the record that it rests on. */
  readonly observed: number;
}

/** The rates of a crew, how it learns, and what height costs. */
export interface CrewRates {
  readonly work: Readonly<Record<Work, Rate>>;
  /** Wright's learning rate by panels: 1, nobody learns. */
  readonly learning: number;
  /** Part by which work takes longer for each metre over REACH. */
  readonly perMetre: number;
}

/** Panels after which the rates hold: before, work is slower by the learning curve. */
export const SETTLED = 20;

/** Height that people reach from the ground, metres. */
export const REACH = 2.2;

const rate = (median: number, logSd: number): Rate => ({
  median,
  logSd,
  scatter: 0.3,
  observed: 0,
});

/** Rates where nobody measured: 30 bolts an hour and person, ten person-minutes a panel. */
export const commonRates: CrewRates = {
  work: {
    panel: rate(600, 0.5),
    bolt: rate(120, 0.35),
    tighten: rate(40, 0.5),
    plate: rate(180, 0.5),
    prop: rate(900, 0.5),
    base: rate(1200, 0.5),
    anchor: rate(1500, 0.5),
  },
  learning: 0.9,
  perMetre: 0.15,
};

/** Where the common rates come from. */
export const RATE_SOURCES: readonly Provenance[] = [
  commonPractice(
    'bolts: 20 to 35 an hour and person for volunteers with hand tools; six practised people with power tools were reported at about 75, all work included',
  ),
  commonPractice(
    'panels, plates, props, tightening, levelling, anchors, learning 90 %, 15 % a metre of height',
  ),
];

/** One job as it went. */
export interface WorkObserved {
  readonly work: Work;
  /** How many panels, bolts …. */
  readonly count: number;
  readonly people: number;
  readonly seconds: number;
  /** Panels that stood before it, and height of the work, metres. */
  readonly panelsBefore: number;
  readonly height: number;
}

/** The rates with what the record shows: each rate's logarithm by the conjugate rule for a normal mean
 * (precision-weighted), its scatter pooled with the observed one (four jobs' worth of the old). Learning
 * and height are taken out of each observation first. Rates without observations stay as they are. */
export function updatedRates(rates: CrewRates, observed: readonly WorkObserved[]): CrewRates {
  const work = Object.fromEntries(
    WORKS.map((name) => [
      name,
      updatedRate(
        rates.work[name],
        observed.filter((one) => one.work === name).map((one) => Math.log(perUnit(rates, one))),
      ),
    ]),
  ) as Record<Work, Rate>;
  return { ...rates, work };
}

/** Person-seconds for one as it would be low down and settled. */
function perUnit(rates: CrewRates, one: WorkObserved): number {
  assertNumber('count', one.count, Number.MIN_VALUE);
  assertNumber('people', one.people, 1);
  assertNumber('seconds', one.seconds, Number.MIN_VALUE);
  const panels = one.work === 'panel' ? one.count : 0;
  const slow = slowness(rates, one.panelsBefore, panels, one.height);
  return (one.people * one.seconds) / one.count / slow;
}

/** By how much work takes longer than settled and low down: `panels` that follow `before` ones, at a
 * height in metres. */
export const slowness = (
  { learning, perMetre }: CrewRates,
  before: number,
  panels: number,
  height: number,
): number =>
  learningFactor(before, panels, SETTLED, learning) * (1 + perMetre * Math.max(0, height - REACH));

const OLD_JOBS = 4;

/** A rate's logarithm with observations of it, each normal about it by `scatter`. */
export function updatedRate(rate: Rate, logs: readonly number[]): Rate {
  const n = logs.length;
  if (n === 0) return rate;
  const mean = logs.reduce((sum, x) => sum + x, 0) / n;
  const squares = logs.reduce((sum, x) => sum + (x - mean) ** 2, 0);
  // One job says nothing of scatter: its degree of freedom went into the mean.
  const pooled = (OLD_JOBS * rate.scatter ** 2 + squares) / (OLD_JOBS + n - 1);
  const [prior, data] = [1 / rate.logSd ** 2, n / pooled];
  const log = (prior * Math.log(rate.median) + data * mean) / (prior + data);
  return {
    median: Math.exp(log),
    logSd: 1 / Math.sqrt(prior + data),
    scatter: Math.sqrt(pooled),
    observed: rate.observed + n,
  };
}
