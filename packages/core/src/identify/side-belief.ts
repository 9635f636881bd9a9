// What the readings say of the kinds' sides before any panel is joined to another.

import type { Kind } from '../pile/kind.ts';
import { type Belief, makeBelief } from './belief.ts';
import { type Joints, jointsOf } from './joints.ts';

/** Side lengths by kind and how well they are known. */
export interface SideBelief {
  /** Kind → side lengths, metres. */
  readonly sides: readonly (readonly number[])[];
  /** Kind → variance of each side's own error, m². */
  readonly variances: readonly (readonly number[])[];
  /** Variance of an error that all sides share (an unknown hub allowance), m². */
  readonly sharedVariance: number;
  /** What is known of how the sides are joined; absent where nobody looked. */
  readonly joints?: Joints;
  /** Where kinds are offered both ways round: see {@link BothWays}. */
  readonly bothWays?: BothWays;
}

/** Kinds that are offered both ways round because nobody noted their faces. */
export interface BothWays {
  /** Kind → the kind that is the same readings the other way round, null for none. Of the two at
   * least one is to be used. */
  readonly other: readonly (number | null)[];
  /** Kind-side, numbered through all kinds → the one that is the same reading, itself for none. */
  readonly same: readonly number[];
  /** Kinds that no search needs to start from: what starts there is the mirror image of what starts
   * from the other. */
  readonly mirrored: readonly boolean[];
  /** Kinds that were added to be the other way round. */
  readonly added: readonly boolean[];
}

/** Kinds that a net with these does without, where of a kind offered both ways round one will do. */
export const unusedKinds = (
  kinds: number,
  isUsed: (kind: number) => boolean,
  bothWays: BothWays | undefined,
): number[] =>
  Array.from({ length: kinds }, (_, k) => k).filter((k) => {
    const other = bothWays?.other[k] ?? null;
    return !isUsed(k) && (other === null || (!bothWays?.added[k] && !isUsed(other)));
  });

/** Readings are never taken to be better than this, metres: no tape and no hole is. */
export const FINEST_SD = 5e-5;

/** What these kinds' readings say. `sharedSd`: of an unknown hub allowance, 0 where it is known. */
export function sideBelief(kinds: readonly Kind[], sharedSd: number): SideBelief {
  const joints = jointsOf(kinds);
  return {
    sides: kinds.map((kind) => kind.sides),
    variances: kinds.map((kind) => kind.sideSds.map((sd) => Math.max(sd, FINEST_SD) ** 2)),
    sharedVariance: sharedSd ** 2,
    ...(joints && { joints }),
  };
}

/** Prior of a corner model's unknowns: the readings for the sides, and κ / κ₀ with a deviation. */
export function priorOf(readings: SideBelief, kappaSd: number): Belief {
  const own = readings.variances.flat();
  const sides = own.length;
  const prior = makeBelief(sides + 1);
  own.forEach((variance, s) => {
    prior.covariance.fill(readings.sharedVariance, s * (sides + 1), s * (sides + 1) + sides);
    prior.covariance[s * (sides + 2)] = readings.sharedVariance + variance;
  });
  readings.bothWays?.same.forEach((t, s) => {
    if (t === s) return;
    const variance = Math.max(own[s] as number, own[t] as number) + readings.sharedVariance;
    for (const [i, j] of [
      [s, t],
      [t, s],
      [s, s],
      [t, t],
    ] as const)
      prior.covariance[i * (sides + 1) + j] = variance;
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
