// A panel's sides as a cyclic list: seen from the other face, laid on another's. Anticlockwise; any
// one unit.

import { lowestTurn, turned } from '../math/cyclic.ts';
import { compareLists } from '../math/order.ts';

/** The sides in the order in which they run seen from the other face. */
export const fromOtherFace = <T>(sides: readonly T[]): T[] => [...sides].reverse();

/** A fit of one cyclic list on another: `a` turned by `turn` against `b`, with its cost. */
export interface TurnFit {
  readonly turn: number;
  readonly cost: number;
}

/** The turn of `a` that is nearest `b`: least sum of weighted squares, the first of equals.
 * Infinite cost where the lists differ in length. Weights belong to the sides of `b`. */
export function nearestTurn(
  a: readonly number[],
  b: readonly number[],
  weights: (sideOfA: number, sideOfB: number) => number = () => 1,
): TurnFit {
  let best: TurnFit = { turn: 0, cost: Number.POSITIVE_INFINITY };
  if (a.length !== b.length) return best;
  for (let turn = 0; turn < a.length; turn++) {
    let cost = 0;
    for (let i = 0; i < b.length; i++) {
      const j = (i + turn) % a.length;
      cost += weights(j, i) * ((a[j] as number) - (b[i] as number)) ** 2;
    }
    if (cost < best.cost) best = { turn, cost };
  }
  return best;
}

/** Which of a mirror pair a shape is: R where its own turning order, anticlockwise seen from
 * outside, gives the smaller list from its best starting side, L where the mirror's does. In a
 * triangle that is: R where the sides run short, middle, long anticlockwise; stood on its longest
 * side with the outside facing you, its shortest side is on the right. Null for no difference. */
export function handOf(sides: readonly number[]): 'L' | 'R' | null {
  const own = turned(sides, lowestTurn(sides));
  const back = fromOtherFace(sides);
  const order = compareLists(own, turned(back, lowestTurn(back)));
  return order === 0 ? null : order < 0 ? 'R' : 'L';
}
