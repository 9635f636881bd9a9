// Whether two decisions stand the same shell.

import type { PlacesDecision } from '@shellraise/core';

/** Leans nearer than this are one, radians. */
const SAME_LEAN = 1e-3;

/** Whether two decisions have the same way up and cut; heights may differ by rounding, as a shape that
 * is found anew has its radius anew. */
export const sameStand = (
  a: Pick<PlacesDecision, 'wayUp' | 'cut'>,
  b: Pick<PlacesDecision, 'wayUp' | 'cut'>,
): boolean =>
  JSON.stringify([a.wayUp.at, a.wayUp.kinds, a.wayUp.orbit, a.cut.places]) ===
    JSON.stringify([b.wayUp.at, b.wayUp.kinds, b.wayUp.orbit, b.cut.places]) &&
  Math.abs((a.wayUp.lean?.by ?? 0) - (b.wayUp.lean?.by ?? 0)) <= SAME_LEAN &&
  Math.abs((a.wayUp.lean?.towards ?? 0) - (b.wayUp.lean?.towards ?? 0)) <= SAME_LEAN &&
  Math.abs(a.cut.height - b.cut.height) <= 0.01 * b.cut.height;

/** Whether a decision stands a fit as it is meant: its openings with it; others may be added. */
export const standsAs = (decided: PlacesDecision, fit: PlacesDecision): boolean =>
  sameStand(decided, fit) &&
  (fit.openings ?? []).every(({ places }) => {
    const out = (decided.openings ?? []).flatMap((one) => one.places);
    return places.every((place) => out.includes(place));
  });
