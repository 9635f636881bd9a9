// What interchangeable kinds cost when one stands in the place of another: how far the sides are off,
// in the turn that fits best. Sides are those of the fitted net, so closure has its say beside the
// tape.

import { turned } from '../math/cyclic.ts';
import type { Kind } from '../pile/kind.ts';
import { kindsOfShape, type Shape } from './shape.ts';

/** For each list of interchangeable kinds of a shape, the root mean square by which a side is off when
 * each stands for each other, metres. `kinds` are the question's. A list of kinds that are none of
 * the shape's costs 0. */
export function interchangeCosts(
  shape: Pick<Shape, 'added' | 'fittedSides' | 'interchangeable'>,
  kinds: readonly Kind[],
): number[] {
  const all = kindsOfShape(shape, kinds);
  return shape.interchangeable.map((ids) => {
    const sides = ids.flatMap((id) => {
      const own = shape.fittedSides[all.findIndex((kind) => kind.id === id)];
      return own ? [own] : [];
    });
    const pairs = sides.flatMap((a, i) => sides.slice(0, i).map((b) => exchangeCost(a, b)));
    return Math.sqrt(pairs.reduce((sum, cost) => sum + cost ** 2, 0) / Math.max(1, pairs.length));
  });
}

/** Root mean square difference of the sides of two panels, in the turn where it is least; infinite
 * where they have not as many sides. Unit of the sides. */
export function exchangeCost(a: readonly number[], b: readonly number[]): number {
  if (a.length !== b.length) return Number.POSITIVE_INFINITY;
  const squares = b.map((_, turn) =>
    turned(b, turn).reduce((sum, side, i) => sum + (side - (a[i] as number)) ** 2, 0),
  );
  return Math.sqrt(Math.min(...squares) / a.length);
}
