// A code of the whole labelled shell as read from one side outwards. Two sides have the same code
// exactly where a rotation of the shell lays one on the other, and the code does not depend on how
// hubs, sides and places happen to be numbered: it gives ways up a lasting order and name.

import { compareLists } from '../math/order.ts';
import type { SideId } from './ids.ts';
import { nextSide, placeAt, type Shell, sideCount } from './shell.ts';

const OPEN = -1;
const NEW_PLACE = -2;

/** The shell read breadth-first from a side: for each place in the order of meeting its number of
 * sides and their labels from the side it is entered by; for each side in that order the number
 * of its mate, −1 where open, −2 where it leads to a new place. Only the side's own piece. */
export function codeFrom(shell: Shell, labels: ArrayLike<number>, start: SideId): Int32Array {
  const order: SideId[] = [];
  const rank = new Int32Array(sideCount(shell)).fill(-1);
  const code: number[] = [];
  const enter = (entry: SideId): void => {
    const place = placeAt(shell, entry);
    code.push((shell.placeStart[place + 1] as number) - (shell.placeStart[place] as number));
    let side = entry;
    do {
      rank[side] = order.push(side) - 1;
      code.push(labels[side] as number);
      side = nextSide(shell, side);
    } while (side !== entry);
  };
  enter(start);
  for (let i = 0; i < order.length; i++) {
    const mate = shell.mate[order[i] as SideId] as number;
    if (mate < 0) code.push(OPEN);
    else if ((rank[mate] as number) >= 0) code.push(rank[mate] as number);
    else {
      code.push(NEW_PLACE);
      enter(mate as SideId);
    }
  }
  return Int32Array.from(code);
}

/** The side with the lowest code among some (the first of them on a tie), and that code. Throws
 * for no sides. */
export function lowestCode(
  shell: Shell,
  labels: ArrayLike<number>,
  sides: readonly SideId[],
): { readonly side: SideId; readonly code: Int32Array } {
  const read = sides.map((side) => ({ side, code: codeFrom(shell, labels, side) }));
  return read.reduce((best, next) => (compareLists(next.code, best.code) < 0 ? next : best));
}
