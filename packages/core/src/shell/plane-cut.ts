// Which places a level plane leaves, cuts through and leaves out. Nothing is cut here: panels keep
// their shape. The shell stands crown up, metres.

import { assertNumber } from '../math/doors.ts';
import { meanSideLength } from './geometry.ts';
import type { PlaceId } from './ids.ts';
import { placeCount, type Shell } from './shell.ts';
import { SAME_LEVEL } from './tolerances.ts';

/** What a level plane leaves of a shell. */
export interface PlaneCut {
  /** Places wholly above the plane. */
  readonly kept: readonly PlaceId[];
  /** Places with hubs on both sides of it: the panels that it would cut through. */
  readonly crossed: readonly PlaceId[];
  /** Places with no hub above it. */
  readonly below: readonly PlaceId[];
}

/** Sorts the places of a shell by a level plane at height z, metres. A hub within `tolerance`
 * (metres; 2 % of the mean side unless told) of the plane lies in it and counts to neither side;
 * a place that lies in the plane counts as below. RangeError where either is no such number. */
export function cutAtPlane(
  shell: Shell,
  z: number,
  tolerance = SAME_LEVEL * meanSideLength(shell),
): PlaneCut {
  assertNumber('z', z);
  assertNumber('tolerance', tolerance, 0);
  const cut = { kept: [] as PlaceId[], crossed: [] as PlaceId[], below: [] as PlaceId[] };
  for (let p = 0; p < placeCount(shell); p++) {
    const heights = Array.from(
      shell.sideHub.subarray(shell.placeStart[p], shell.placeStart[p + 1]),
      (hub) => (shell.hubs[3 * hub + 2] as number) - z,
    );
    const above = heights.some((h) => h > tolerance);
    const under = heights.some((h) => h < -tolerance);
    (above ? (under ? cut.crossed : cut.kept) : cut.below).push(p as PlaceId);
  }
  return cut;
}
