// Whole force on a sphere by EN 1991-1-4:2005, 7.9.3: a check on the sum of any pressure law.

import { assertForm, type ShellForm } from '../law.ts';
import { numberOf, type Override } from '../numbers.ts';
import { productOf, reckonedFrom, type Sourced } from '../provenance.ts';

/** Drag and lift (upward) of a sphere of this radius near the ground, N, for a peak pressure in Pa:
 * the force coefficient times 1.6 near the ground, on the whole disc π r².
 * Source: EN 1991-1-4:2005, 7.9.3 and Fig. 7.30, from memory. */
export function sphereForces(
  form: ShellForm,
  peak: Sourced,
  overrides: readonly Override[] = [],
): { drag: Sourced; lift: Sourced } {
  assertForm(form);
  const disc = reckonedFrom(Math.PI * form.radius ** 2, peak);
  const q = reckonedFrom(peak.value * disc.value, peak);
  const cf = numberOf('sphereForceDrag', overrides);
  return {
    drag: productOf(q, cf, numberOf('sphereNearGround', overrides)),
    lift: productOf(q, numberOf('sphereLift', overrides)),
  };
}
