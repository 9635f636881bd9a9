// Tolerances of setting out and surveying. Each says what it allows, in which unit, and where it
// comes from; those from practice alone are settings, and results say so.

/** Standard deviation of one reading of a steel tape held level between two nails, metres: common
 * practice, no source. */
export const TAPE_SD = 0.002;

/** A stake may be this many tape deviations off in its worst direction before another pair of
 * pegs is sought for it: two tapes that cross at 30° are 1.9 off. */
export const STAKE_AIM = 2;

/** Longest pull of a tape, metres: a 30 m tape; common practice, no source. */
export const TAPE_LENGTH = 30;

/** A check measure may differ by this many standard deviations of what it should find: one in 370
 * differs by more by chance. */
export const CHECK_SDS = 3;

/** Two measures of one stake check it in every direction where their lines cross by at least this
 * sine: 30°. */
export const CROSSING = 0.5;

/** The datum stake stands this far outside the base ring, metres: clear of the work, near enough
 * for two tapes; common practice, no source. */
export const DATUM_CLEAR = 1;

/** Pairs of pegs are equally good within this share: rounding. */
export const SAME_SD = 1e-9;

/** Standard deviation of one level reading by method, metres: common practice, no source. */
export const LEVEL_SD = { laser: 0.001, 'water level': 0.002, heights: 0.001 } as const;

/** No level of a site that a crew shims reads more, metres: more is a slip of unit. */
export const LEVEL_RANGE = 20;

/** A reading off by more of its deviations than this is suspect: one in 370 is by chance. */
export const SUSPECT_TEST = 3;

/** Standard deviations of survey readings, metres: a taped radius or chord at the hubs themselves, a
 * level, a hub height. Common practice, no source. */
export const SURVEY_SD = { radius: 0.002, chord: 0.002, level: 0.001, height: 0.005 } as const;

/** A hub stands this near its stake before anything is measured, standard deviation, metres: a
 * hand's breadth; no reading is weighed against it to speak of. */
export const PRIOR_SD = 0.1;

/** A reading further from what the plan gives is another hub or another unit, metres. */
export const FAR_FROM_PLAN = 0.4;

/** A hub is known where its deviation is below this, metres: half of what is allowed of it. */
export const KNOWN_SD = 0.004;

/** No hub of a base that was set out stands further out than this, metres: a radius may read more
 * than the sphere's by so much, a chord more than its diameter by twice. */
export const OUT_OF_PLACE = 0.05;
