// Tolerances of the frame, each with its unit and its reason.

/** A movement that no tie resists: the sum of the squares of what the ties are strained by it, of a
 * movement of length 1, is no more than this. Rounding leaves some 1e-15; the softest real shell in
 * the tables (a half-built course with fifteen free rim hubs) has 1.7e-7. No unit. */
export const NO_RESISTANCE = 1e-10;

/** Movements within this part of the largest one count as equal when a hub is named. */
export const SAME_MOVEMENT = 1e-6;

/** How sharp a mode without resistance is wanted: the square of the part of it that may be wrong.
 * The shifted inverse multiplies it a million times more than anything else, so it is soon had. */
export const SHARP = 1e-24;

/** Movements that differ by less than this part are equal when a node is named. */
export const AT_REST = 1e-9;

/** How often an element that works one way may change between slack and taut before the structure
 * counts as unsettled. Two or three changes settle any real shell. */
export const MOST_CHANGES = 12;
