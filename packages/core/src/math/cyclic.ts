// Lists without a first item: the sides of a panel, the corners around a hub.

import { compareLists } from './order.ts';

/** The list turned so that its item `by` comes first; `by` from 0, beyond the end it starts over. */
export const turned = <T>(list: readonly T[], by: number): T[] =>
  list.map((_, i) => list[(i + by) % list.length] as T);

/** How far to turn the list so that it is the lowest, item by item, of all its turns; the least of
 * several, 0 for an empty list. */
export function lowestTurn(list: readonly number[]): number {
  let best = 0;
  for (let by = 1; by < list.length; by++)
    if (compareLists(turned(list, by), turned(list, best)) < 0) best = by;
  return best;
}
