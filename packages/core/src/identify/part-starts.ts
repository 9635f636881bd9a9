// Where the growth of a part about one axis starts (grow-part.ts): at a hub on the axis, around which
// one panel stands with each of its turned copies, at the radius at which they close; or anywhere.

import { TAU } from '../math/angle.ts';
import { polygonOnSphere } from '../sphere/polygon.ts';
import { firstSides } from './corner-model.ts';
import { radiusCovering } from './fold-starts.ts';
import type { IslandSeed } from './grow-part.ts';
import { mayBeEqual, type SideBelief } from './side-belief.ts';

/** Two sides of one panel meet each other's copies where they differ by no more deviations. */
const EQUAL = 3.8;
/** The kinds of a part, each once for each turn, cover a sphere whose radius is this many times too
 * small, at most, where some are missing; at least where all are there and misread. */
const LARGEST = 1.6;
const SMALLEST = 1 / 1.06;

/** Every corner that may lie on an axis of this order, at the radius at which it does, metres; the
 * nearest to the radius of a ball without a missing panel first. */
export function poleSeeds(readings: SideBelief, order: number): IslandSeed[] {
  const once = readings.sides.map(() => 1);
  const least = radiusCovering(readings.sides, once, 1 / order);
  const first = firstSides(readings.sides);
  const seeds = readings.sides.flatMap((own, k) =>
    own.flatMap((_, i): IslandSeed[] => {
      if (!mayBeEqual(readings, k, (i + own.length - 1) % own.length, i, EQUAL)) return [];
      const radius = radiusClosing(own, i, TAU / order, LARGEST * least);
      if (radius === null || radius < SMALLEST * least) return [];
      const pole = (first[k] as number) + i;
      return [{ radius, pole, corner: pole }];
    }),
  );
  return seeds.sort((a, b) => a.radius - b.radius);
}

/** Starts anywhere, for parts without a hub on the axis: with the kinds whose sides fewest others are as
 * long as, at radii that cover those that a part about an axis of 3 to 6 turns may have, metres; the
 * likeliest first. */
export function looseSeeds(readings: SideBelief): IslandSeed[] {
  const first = firstSides(readings.sides);
  const least = radiusCovering(
    readings.sides,
    readings.sides.map(() => 1),
    1 / USUAL,
  );
  const met = readings.sides.map((own, k) =>
    own.reduce(
      (sum, x, i) => sum + likeCount(readings, x, readings.variances[k]?.[i] as number),
      0,
    ),
  );
  const kinds = [...met.keys()].sort((a, b) => (met[a] as number) - (met[b] as number) || a - b);
  return kinds.slice(0, LOOSE_KINDS).flatMap((k) =>
    LOOSE_STEPS.map((step): IslandSeed => {
      return { radius: step * least, pole: null, corner: first[k] as number };
    }),
  );
}

/** Turns of the axis that is likeliest, and radii tried against that at which all kinds together cover
 * the sphere about it. */
const USUAL = 5;
const LOOSE_STEPS = [1.06, 1.2, 0.94, 1.35, 0.83] as const;
/** Kinds that are started with: one may stand on the rim with nothing that closes beside it. */
const LOOSE_KINDS = 2;

/** Sides that may be as long as this one. */
function likeCount({ sides, variances }: SideBelief, length: number, variance: number): number {
  return sides.reduce(
    (sum, own, k) =>
      sum +
      own.filter(
        (x, i) => (x - length) ** 2 <= EQUAL ** 2 * (variance + (variances[k]?.[i] as number)),
      ).length,
    0,
  );
}

/** The radius up to `most` at which a corner takes an angle, metres; null where none does. */
function radiusClosing(
  sides: readonly number[],
  corner: number,
  angle: number,
  most: number,
): number | null {
  const angleAt = (radius: number): number => {
    const polygon = polygonOnSphere(sides, radius);
    return polygon.ok ? (polygon.corners[corner] as number) : Number.POSITIVE_INFINITY;
  };
  let low = Math.max(...sides) / 2;
  let high = most;
  if (!(angleAt(high) <= angle)) return null;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (angleAt(middle) > angle) low = middle;
    else high = middle;
  }
  return high;
}
