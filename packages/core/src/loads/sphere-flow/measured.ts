// A sphere as measured: frictionless flow up to where it parts from the surface, the pressure there
// carried on behind. One measured number, the drag of the free sphere, fixes where that is.
//
// With s₁ = sin² of the angle from the windward point to the parting, the drag coefficient of this
// shape is 9/8 s₁² (integrated here). Drag 0.2 parts at 139° with a rear pressure of +0.05.

import { assertBetween } from '../doors.ts';
import type { PressureLaw } from '../law.ts';
import { commonPractice, type Sourced } from '../provenance.ts';
import { POTENTIAL_FLOW, potentialSphere } from './potential.ts';

/** Reynolds number above which the flow is beyond the critical one on a rough sphere: own limit from
 * memory of E. Achenbach, J. Fluid Mech. 54 and 65. */
export const BEYOND_CRITICAL = 4e5;

/** Reynolds number of a sphere: speed × width / 1.5e-5 m²/s.
 * Source: definition. */
export const reynolds = (speed: number, radius: number): number => (speed * 2 * radius) / 1.5e-5;

/** u of the parting circle (below 0: behind the middle) for a drag coefficient of 0.05 to 0.5.
 * RangeError outside.
 * Source: own integral of the pressure along the wind, drag = 9/8 sin⁴θ. */
export function partingCircle(drag: number): number {
  assertBetween('drag coefficient of a sphere', drag, 0.05, 0.5);
  return -Math.sqrt(1 - Math.sqrt(drag / 1.125));
}

/** Pressure coefficient at component u towards the wind, for a sphere of that drag.
 * Source: potential flow to the parting circle, constant behind it (own shape). Range: Reynolds
 * numbers beyond the critical one; a shell of 4 m is there from 1.5 m/s on. */
export function measuredSphere(u: number, drag: number): number {
  return potentialSphere(Math.max(u, partingCircle(drag)));
}

/** The law for a whole sphere in free air; no ground under it.
 * Source: E. Achenbach, J. Fluid Mech. 54(3) 1972, 565, for the drag; shape own. */
export function measuredSphereLaw(drag: Sourced): PressureLaw {
  const parting = partingCircle(drag.value);
  return {
    name: 'sphere as measured',
    coefficient: (u) => potentialSphere(Math.max(u, parting)),
    factor: 1,
    sources: [
      POTENTIAL_FLOW,
      ...drag.sources,
      commonPractice('sphere: frictionless flow to the parting circle, constant pressure behind'),
    ],
  };
}
