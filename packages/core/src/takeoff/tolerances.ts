// Every tolerance of the take-off, by meaning, with its unit and reason.

/** Bolt lengths closer than this are one: under half the step of the standard lengths, metres. */
export const SAME_BOLT_LENGTH = 6e-4;

/** Sides closer than this share of the radius are of one class: 0.4 mm at 2.7 m, under the spread
 * of a tape reading and over rounding. */
export const SAME_SIDE_CLASS = 1.5e-4;

/** Threads of two systems whose major diameters differ by less than this share of the larger pass
 * for each other: 5/16 and M8 differ by 0.8 %, 1/4 and M6 by 5.5 %. */
export const TWIN_DIAMETERS = 0.06;

/** Diameters of one system closer than this are the same size, metres: rounding. */
export const SAME_DIAMETER = 1e-9;

/** Pieces below this are rounding of a share, not a piece to buy. */
export const NO_PIECE = 1e-9;

/** A standard length may fall short of the needed one by this, metres: rounding of inches. */
export const LENGTH_ROUNDING = 1e-6;
