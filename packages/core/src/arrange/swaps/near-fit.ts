// How well a panel of one kind fits the place of another: in its best turn, how far its sides are
// from those it meets, and whether the holes of a seam still take that.

import type { Kind } from '../../pile/kind.ts';

/** One kind in the place of another. */
export interface NearFit {
  /** Side of the panel that lies where side 0 of the place's own kind does. */
  readonly turn: number;
  /** Largest difference of a side, metres. */
  readonly misfit: number;
}

/** Room of a bolt in its hole, metres: M8 or 5/16 in a hole 1 mm wider. Common practice, no source. */
export const HOLE_ROOM = 0.001;

/** The best way to put a panel of `kind` into a place of `own`; null where the numbers of sides or
 * what is known of laps and holes forbid it. Sides are as fitted, metres. */
export function nearFit(own: Kind, kind: Kind): NearFit | null {
  const n = own.sides.length;
  if (kind.sides.length !== n) return null;
  let best: NearFit | null = null;
  for (let turn = 0; turn < n; turn++) {
    if (!own.sides.every((_, i) => agrees(own, i, kind, (i + turn) % n))) continue;
    const misfit = own.sides.reduce(
      (most, side, i) => Math.max(most, Math.abs(side - (kind.sides[(i + turn) % n] as number))),
      0,
    );
    if (best === null || misfit < best.misfit) best = { turn, misfit };
  }
  return best;
}

/** Whether the holes of all seams still take a misfit (metres): each end of a seam is off by half of
 * it, and both flanges have room for their bolt. */
export const holesTake = (misfit: number, room = HOLE_ROOM): boolean => misfit / 2 <= room;

function agrees(a: Kind, i: number, b: Kind, j: number): boolean {
  const same = <T>(p: T | null | undefined, q: T | null | undefined): boolean =>
    (p ?? null) === null || (q ?? null) === null || p === q;
  return same(a.laps?.[i], b.laps?.[j]) && same(a.holes?.[i], b.holes?.[j]);
}
