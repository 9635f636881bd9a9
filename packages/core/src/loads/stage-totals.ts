// What a case does to a stage as a whole, for each pascal of velocity pressure: the sums that anchors
// and stop-work winds are reckoned from, quick enough for every case of every stage.

import type { WindCase, WindModel } from './wind-cases.ts';

/** Totals for each pascal: forces in m², the moment in m³. */
export interface CaseTotals {
  /** Along the wind, positive downwind. */
  readonly drag: number;
  /** Across it, to the left of one who faces the wind. */
  readonly side: number;
  /** Up. */
  readonly lift: number;
  /** About the middle of the base, positive where it tips the shell downwind. */
  readonly overturning: number;
}

/** Totals of a case over the places that have a panel. For forces in N times the velocity pressure in
 * Pa. The middle of the base lies on the sphere's axis at the height of the form's base.
 * Source: statics. */
export function caseTotals(
  { faces, question }: WindModel,
  placed: ArrayLike<number>,
  { coefficient, windFrom }: Pick<WindCase, 'coefficient' | 'windFrom'>,
): CaseTotals {
  const { area, centre } = faces;
  const [c, s] = [Math.cos(windFrom), Math.sin(windFrom)];
  const { baseZ } = question.form;
  let [drag, side, lift, overturning] = [0, 0, 0, 0];
  for (let i = 0; i < placed.length; i++) {
    const p = placed[i] as number;
    const k = coefficient[p] as number;
    const [x, y, z] = [3 * p, 3 * p + 1, 3 * p + 2] as const;
    const towards = (area[x] as number) * c + (area[y] as number) * s;
    const up = area[z] as number;
    drag += k * towards;
    side -= k * ((area[y] as number) * c - (area[x] as number) * s);
    lift -= k * up;
    // Force −k × area at height above the base tips downwind; an upward one on the windward side too.
    const ahead = (centre[x] as number) * c + (centre[y] as number) * s;
    overturning += k * (towards * ((centre[z] as number) - baseZ) - up * ahead);
  }
  return { drag, side, lift, overturning };
}
