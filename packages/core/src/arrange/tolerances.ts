// Every tolerance of arranging, by meaning, with its unit and reason.

/** Two sides count as equal within this many standard deviations of their difference … */
export const EQUAL_SIDE_Z = 3;

/** … and this part of their length: rounding of sides that were written in tenths of a millimetre. */
export const EQUAL_SIDE = 1e-4;

/** Rises of the crown are ranked in steps of this part of the radius, so that rounding orders
 * nothing. */
export const RISE_STEP = 1e-6;

/** Heights of one cut found again may differ by this part: the net is fitted anew with each new
 * reading. */
export const SAME_HEIGHT = 0.05;

/** Directions whose unit vectors differ by less along an axis are one: far above the misfit of a
 * fitted net, far below the angle between two hubs. */
export const SAME_DIRECTION = 0.005;
