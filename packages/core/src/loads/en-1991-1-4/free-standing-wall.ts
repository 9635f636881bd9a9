// Free-standing walls by EN 1991-1-4:2005, 7.4.1: net pressure by distance from the free end.

import { assertBetween } from '../doors.ts';
import { numberOf, type Override } from '../numbers.ts';
import { reckonedFrom, type Sourced } from '../provenance.ts';

/** Zone of a wall by distance from its free end in wall heights: A to 0.3, B to 2, C to 4, D beyond.
 * Source: EN 1991-1-4:2005, Fig. 7.19. */
export function wallZone(fromEnd: number, height: number): 'A' | 'B' | 'C' | 'D' {
  assertBetween('height of the wall', height, 0.01, 100, 'm');
  if (!(fromEnd >= 0))
    throw new RangeError(`distance from the free end is ${fromEnd} m, expected 0 or more`);
  const heights = fromEnd / height;
  if (heights <= 0.3) return 'A';
  if (heights <= 2) return 'B';
  return heights <= 4 ? 'C' : 'D';
}

/** Net pressure coefficient of a zone, length over height 5, no return corner, solid; it may act
 * either way.
 * Source: EN 1991-1-4:2005, Table 7.9 (2.9, 1.8, 1.4, 1.2). */
export const wallPressure = (
  zone: 'A' | 'B' | 'C' | 'D',
  overrides: readonly Override[] = [],
): Sourced => numberOf(`wall${zone}`, overrides);

/** Part of its load that a wall takes behind another one of the same height, by their distance in
 * heights: 0.3 up to 5, straight to 1 at 20. Not for what stands nearer than a height to a free end.
 * RangeError for a distance that is none.
 * Source: EN 1991-1-4:2005, 7.4.2 and Fig. 7.20 (solid), from memory. */
export function shelterFactor(heightsApart: number, overrides: readonly Override[] = []): Sourced {
  assertBetween('distance between the walls in heights', heightsApart, 0, 1e5);
  const near = numberOf('wallShelter', overrides);
  const part = Math.min(1, Math.max(0, (heightsApart - 5) / 15));
  return reckonedFrom(near.value + (1 - near.value) * part, near);
}
