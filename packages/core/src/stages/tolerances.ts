// Tolerances of stages, each with its unit and its reason.

/** A hub has a say in a movement where holding it takes away at least this part of it (the movement
 * of all joints together being 1 long). A free panel moves its hubs by a tenth or more; a prop where
 * much less moves would bear many times the load, and leave the movement all but free. */
export const HAS_A_SAY = 0.02;

/** A movement counts as free where the sum of the squares of what the ties are strained by it is no
 * more than this, the movement of all joints together being 1 long: a strain of 0.01, below which a
 * stage stands on paper only. The slack of bolts in their holes then lets hubs move by decimetres,
 * and the forces at base hubs and props are many times the load. Whole shells of 160 to 960 places,
 * every seam finger-tight, have strains of 0.17 to 0.044. No unit. */
export const LOOSE = 1e-4;

/** Added to the ties' matrix so that it has an inverse: far below LOOSE, far above rounding. */
export const LIFTED = 1e-10;

/** Turns of the search for free movements: at least, and at most. */
export const TURNS = { least: 3, most: 12 } as const;

/** Volumes that differ by less than this part are equal when a hub is picked: then the lower
 * numbered one is. */
export const SAME_HOLD = 1e-9;

/** Sets of props looked at before the search for fewer gives up and says so. */
export const MOST_SETS = 4000;

/** A set tried on the frame itself counts as so many looked at: it takes as long. */
export const TRIAL_SETS = 20;

/** Gusts beyond this are not looked at, m/s: no half-built shell is meant for them. */
export const MOST_GUST = 60;

/** How sharp the gust of a limit is wanted, m/s. */
export const GUST_STEP = 0.005;
