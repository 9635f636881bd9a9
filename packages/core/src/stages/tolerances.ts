// Tolerances of stages, each with its unit and its reason.

/** A movement counts as free where the sum of the squares of what the ties are strained by it is no
 * more than this, the movement of all joints together being 1 long: a strain of 0.01, below which a
 * stage stands on paper only. The slack of bolts in their holes then lets hubs move by decimetres,
 * and the forces at base hubs and props are many times the load. Whole shells of 160 to 960 places,
 * every seam finger-tight, have strains of 0.17 to 0.044. No unit. */
export const LOOSE = 1e-4;

/** Added to the ties' matrix so that it has an inverse: far below LOOSE, far above rounding. */
export const LIFTED = 1e-10;

/** Turns of the search for free movements: at least (two leave a stage of the benchmark unproved), and at
 * most. */
export const TURNS = { least: 3, most: 12 } as const;

/** Sets of props looked at before the search for fewer gives up and says so. */
export const MOST_SETS = 400;

/** Nodes looked at for the fewest hubs that hit all patches, each time: half a second. */
export const HIT_NODES = 50_000;

/** A patch is first looked for among so many hubs about one: most have 5 to 15. */
export const NEAR_PATCH = 40;

/** A patch of more hubs than those is made smaller so often and no more: it takes long. */
export const FAR_TURNS = 3;

/** A patch of no more hubs than those is made smaller so often one by one, then all at once. */
export const NEAR_TURNS = 1;

/** A patch of more hubs than this is not looked for: it would bound little, and take long. */
export const MOST_PATCH = 200;

/** A hub moves in a free movement of length 1 where the square of what it moves is more than this:
 * above rounding. */
export const MOVES = 1e-12;

/** Gusts beyond this are not looked at, m/s: no half-built shell is meant for them. */
export const MOST_GUST = 60;

/** How sharp the gust of a limit is wanted, m/s. */
export const GUST_STEP = 0.005;

/** Slopes of guys from the ground where nobody says others, radians (20° and 60°: common practice):
 * flatter they reach too far, steeper they hold little but what lifts. */
export const GUY_SLOPES = { least: 0.35, most: 1.05 } as const;

/** A line carries nothing where its pull is no more than this part of the load: above rounding. A
 * stage that needs a line which carries nothing rests on an edge, and counts as falling. */
export const NO_PULL = 1e-9;

/** Least cosine between a guy and the way out of the shell at its hub: it clears the flanges. */
export const CLEAR = 0.02;

/** Pairs of lines, and threes, tried on one hub after each by itself: so many of each. */
export const MOST_LINE_SETS = 20;
