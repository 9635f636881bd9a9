// Tolerances of the shell's geometry. All are parts of the mean side, so that they scale with the
// model; each says what it allows and why it is as large as it is.

/** Hubs this near in height stand at one level, part of the mean side: 2 cm on a side of 1 m is
 * what a shim takes up, and far more than the scatter of a fitted net. */
export const SAME_LEVEL = 0.02;

/** A base ring whose hubs spread no more than this in height is flat, part of the mean side. */
export const FLAT_BASE = 0.02;

/** The most that the hubs of a natural base ring may spread in height, part of the mean side: a
 * ring that zigzags through one row of hubs spreads by half a side; more is a torn course. */
export const RAGGED_BASE = 0.6;

/** A hub may lie this far off the sphere, part of the radius: beyond the scatter of any fit. */
export const OFF_SPHERE = 1e-3;

/** A hub or a seam this near the nadir is drawn as if it lay on it, part of the mean side. */
export const AT_NADIR = 0.1;

/** Two azimuths this near are the same, radians: rounding, far below the width of any place. */
export const SAME_AZIMUTH = 1e-7;

/** The solid angles of a closed shell are 4π times a whole number; it covers the sphere once within
 * this: rounding, far below the next whole number. */
export const COVERED_ONCE = 1e-6;
