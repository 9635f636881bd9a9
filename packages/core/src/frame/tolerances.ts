// Tolerances of the frame, each with its unit and its reason.

/** A movement that no tie resists: the sum of the squares of what the ties are strained by it, of a
 * movement of length 1, is no more than this. Rounding leaves some 1e-15; the softest real shell in
 * the tables (a half-built course with fifteen free rim hubs) has 1.7e-7. No unit. */
export const NO_RESISTANCE = 1e-10;

/** Movements within this part of the largest one count as equal when a hub is named. */
export const SAME_MOVEMENT = 1e-6;

/** How sharp a mode without resistance is wanted: the sum of the squares of what the ties are strained
 * by it, of a movement of length 1. Rounding leaves some 1e-25. */
export const SHARP = 1e-22;

/** Movements that differ by less than this part are equal when a node is named. */
export const AT_REST = 1e-9;

/** How often an element that works one way may change between slack and taut before the structure
 * counts as unsettled. Two or three changes settle any real shell. */
export const MOST_CHANGES = 12;

/** Part by which a buckling factor or a squared frequency may be off. */
export const EIGEN_OFF = 1e-10;

/** How far beyond the last eigenvalue found, as a part of it, the check counts: wider than it may be
 * off, narrower than what tells neighbours apart. */
export const BEYOND_LAST = 1e-7;

/** An inverse load factor below this part of the largest of either sign is rounding: the load does
 * not buckle that way. */
export const NO_EFFECT = 1e-9;

/** Where eigenvalues are sought from, as a part of a rough first one: below it, so that the matrix
 * stays definite, and near, so that its neighbours lie apart. */
export const SHORT_OF_FIRST = 0.9;
