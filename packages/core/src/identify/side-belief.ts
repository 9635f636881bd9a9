// What the readings say of the kinds' sides before any panel is joined to another.

import type { Kind } from '../pile/kind.ts';
import { type Belief, makeBelief } from './belief.ts';

/** Side lengths by kind and how well they are known. */
export interface SideBelief {
  /** Kind → side lengths, metres. */
  readonly sides: readonly (readonly number[])[];
  /** Kind → variance of each side's own error, m². */
  readonly variances: readonly (readonly number[])[];
  /** Variance of an error that all sides share (an unknown hub allowance), m². */
  readonly sharedVariance: number;
}

/** Readings are never taken to be better than this, metres: no tape and no hole is. */
export const FINEST_SD = 5e-5;

/** What these kinds' readings say. `sharedSd`: of an unknown hub allowance, 0 where it is known. */
export const sideBelief = (kinds: readonly Kind[], sharedSd: number): SideBelief => ({
  sides: kinds.map((kind) => kind.sides),
  variances: kinds.map((kind) => kind.sideSds.map((sd) => Math.max(sd, FINEST_SD) ** 2)),
  sharedVariance: sharedSd ** 2,
});

/** Prior of a corner model's unknowns: the readings for the sides, and κ / κ₀ with a deviation. */
export function priorOf(readings: SideBelief, kappaSd: number): Belief {
  const own = readings.variances.flat();
  const sides = own.length;
  const prior = makeBelief(sides + 1);
  own.forEach((variance, s) => {
    prior.covariance.fill(readings.sharedVariance, s * (sides + 1), s * (sides + 1) + sides);
    prior.covariance[s * (sides + 2)] = readings.sharedVariance + variance;
  });
  prior.covariance[sides * (sides + 2)] = kappaSd ** 2;
  return prior;
}

/** Whether two sides of a kind may be of one length, at `gate` standard deviations. */
export function mayBeEqual(
  readings: SideBelief,
  kind: number,
  a: number,
  b: number,
  gate: number,
): boolean {
  const sides = readings.sides[kind] as readonly number[];
  const variances = readings.variances[kind] as readonly number[];
  const off = (sides[a] as number) - (sides[b] as number);
  return off ** 2 <= gate ** 2 * ((variances[a] as number) + (variances[b] as number));
}
