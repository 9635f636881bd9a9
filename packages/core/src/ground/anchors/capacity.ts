// What one anchor holds: the pull, what sort of number that is, and where it comes from. Newtons.

import type { Provenance } from '../../loads/provenance.ts';

/** A pound of force and the weight of a kilogram, N: exact by definition (international pound, 1959;
 * standard gravity, 1901). */
export const POUND_FORCE = 4.4482216152605;

/** Weight of a kilogram, N. */
export const KILOGRAM_FORCE = 9.80665;

/** What the source means by its number. `ultimate`: pulls out there; `safe`: what the source lets
 * people use; `design`: to be held against loads times their factors; `tested`: the least of three or
 * more test pulls on the site; `tested few`: of one or two. */
export type CapacityBasis = 'ultimate' | 'safe' | 'design' | 'tested' | 'tested few';

/** How an anchor is pulled: straight up at the hub, or along a guy that leaves the ground at an
 * angle. */
export type Pull = { readonly way: 'up' } | { readonly way: 'guy'; readonly elevation: number };

/** What one anchor holds in the way it is pulled. */
export interface Capacity {
  /** N. */
  readonly pull: number;
  readonly basis: CapacityBasis;
  readonly sources: readonly Provenance[];
  /** What the source takes for granted, one sentence each. */
  readonly notes: readonly string[];
}

/** Steepest guy that a holdfast which leans from its pull is good for, radians: 45°, beyond which it
 * is drawn out rather than pulled over. */
export const STEEPEST_GUY = Math.PI / 4;

/** Angle of a pull over the ground, radians: a right angle where it is straight up. */
export const elevationOf = (pull: Pull): number =>
  pull.way === 'up' ? Math.PI / 2 : pull.elevation;
