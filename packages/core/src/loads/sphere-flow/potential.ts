// Flow without friction about a sphere: every surplus of lift in it, no drag at all.

import type { PressureLaw } from '../law.ts';
import { confirmed, type Provenance } from '../provenance.ts';

/** The textbook result, reckoned again. */
export const POTENTIAL_FLOW: Provenance = confirmed(
  'potential flow about a sphere, Cp = 1 − 9/4 sin²θ (F. M. White, Fluid Mechanics)',
);

/** Pressure coefficient where the outward normal has component u towards the wind: 1 at the
 * windward and leeward points, −1.25 on the circle between.
 * Source: potential flow, Cp = 1 − 9/4 sin²θ. Neglects friction and so all drag. */
export const potentialSphere = (u: number): number => 1 - 2.25 * (1 - u * u);

/** The law on a half sphere on flat ground (its mirror image is the other half) and, as if the
 * ground were not there, on more than half.
 * Source: potential flow, Cp = 1 − 9/4 sin²θ. */
export const potentialLaw = (): PressureLaw => ({
  name: 'frictionless sphere',
  coefficient: (u) => potentialSphere(u),
  factor: 1,
  sources: [POTENTIAL_FLOW],
});
