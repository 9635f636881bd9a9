// Whether a part of one shell is also a part of another: laid with one side on each side that bears
// the same label, it must agree seam by seam with what is there.

import type { SideId } from './ids.ts';
import { nextSide, type Shell, sideCount } from './shell.ts';

/** Whether `part` (in one piece) can be laid into `whole` so that labels agree and every seam of the
 * part is a seam of the whole. Labels as for `symmetries`. An empty part occurs everywhere. */
export function occursIn(
  part: Shell,
  partLabels: ArrayLike<number>,
  whole: Shell,
  wholeLabels: ArrayLike<number>,
): boolean {
  if (sideCount(part) === 0) return true;
  const start = rarestSide(partLabels, wholeLabels);
  for (let s = 0; s < sideCount(whole); s++)
    if (
      wholeLabels[s] === partLabels[start] &&
      fits(part, partLabels, whole, wholeLabels, start, s)
    )
      return true;
  return false;
}

/** The side of the part whose label the whole has fewest of. */
function rarestSide(partLabels: ArrayLike<number>, wholeLabels: ArrayLike<number>): number {
  const counts = new Map<number, number>();
  for (let s = 0; s < wholeLabels.length; s++)
    counts.set(wholeLabels[s] as number, (counts.get(wholeLabels[s] as number) ?? 0) + 1);
  let rarest = 0;
  for (let s = 1; s < partLabels.length; s++)
    if (
      (counts.get(partLabels[s] as number) ?? 0) < (counts.get(partLabels[rarest] as number) ?? 0)
    )
      rarest = s;
  return rarest;
}

function fits(
  part: Shell,
  partLabels: ArrayLike<number>,
  whole: Shell,
  wholeLabels: ArrayLike<number>,
  start: number,
  onto: number,
): boolean {
  const image = new Int32Array(sideCount(part)).fill(-1);
  const queue = [start];
  image[start] = onto;
  const lay = (side: number, to: number): boolean => {
    if (to < 0 || partLabels[side] !== wholeLabels[to]) return false;
    if ((image[side] as number) >= 0) return image[side] === to;
    image[side] = to;
    queue.push(side);
    return true;
  };
  for (const side of queue) {
    const to = image[side] as number;
    if (!lay(nextSide(part, side as SideId), nextSide(whole, to as SideId))) return false;
    const mate = part.mate[side] as number;
    if (mate >= 0 && !lay(mate, whole.mate[to] as number)) return false;
  }
  return true;
}
