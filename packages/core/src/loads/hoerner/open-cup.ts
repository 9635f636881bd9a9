// Hollow half spheres and half cylinders in the wind, by their drag: the upper envelope for a shell
// half built. A uniform net pressure p on such a cup has the drag p × frontal area, so that the drag
// coefficient is that pressure over q.

import { numberOf, type Override } from '../numbers.ts';
import { reckonedFrom, type Sourced } from '../provenance.ts';

/** Net coefficient, positive inward, of a half sphere with its open side (`faces` true) or its back
 * to the wind: pushed outward from inside, or inward from outside.
 * Source: S. F. Hoerner, Fluid-Dynamic Drag, 1965, 1.42 and 0.38, from memory. */
export const cupPressure = (faces: boolean, overrides: readonly Override[] = []): Sourced =>
  signed(numberOf(faces ? 'cupOpen' : 'cupClosed', overrides), faces);

/** Net coefficient, positive inward, of a half cylinder standing upright, the same way.
 * Source: S. F. Hoerner, Fluid-Dynamic Drag, 1965, 2.30 and 1.20, from memory. */
export const curvedWallPressure = (faces: boolean, overrides: readonly Override[] = []): Sourced =>
  signed(numberOf(faces ? 'curvedWallOpen' : 'curvedWallClosed', overrides), faces);

const signed = (of: Sourced, outward: boolean): Sourced =>
  reckonedFrom(outward ? -of.value : of.value, of);
