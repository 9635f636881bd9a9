// Whether two decisions stand the same shell.

import type { PlacesDecision } from '@shellraise/core';

/** Whether two decisions have the same way up and cut; heights may differ by rounding, as a shape that
 * is found anew has its radius anew. */
export const sameStand = (
  a: Pick<PlacesDecision, 'wayUp' | 'cut'>,
  b: Pick<PlacesDecision, 'wayUp' | 'cut'>,
): boolean =>
  JSON.stringify([a.wayUp.at, a.wayUp.kinds, a.wayUp.orbit, a.cut.places]) ===
    JSON.stringify([b.wayUp.at, b.wayUp.kinds, b.wayUp.orbit, b.cut.places]) &&
  Math.abs(a.cut.height - b.cut.height) <= 0.01 * b.cut.height;
