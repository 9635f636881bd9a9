// Every threshold of the pile, by meaning, with its unit and reason. Those in standard deviations
// scale with the reading noise.

/** Range of a panel's side, metres: outside it a slip of unit is far likelier than a panel. */
export const SIDE_LENGTHS = { min: 0.05, max: 12 } as const;

/** Chance that one side of a reading is a blunder (wrong inch, swapped digits) rather than noise:
 * common practice, no source. */
export const BLUNDER_CHANCE = 0.01;

/** Density of a blundered side, per metre: anywhere within about a metre. */
export const BLUNDER_DENSITY = 1;

/** Readings nearer than this in every side are looked at together, in standard deviations of one
 * reading: the difference of two readings of one side stays below it save once in 10⁵. */
export const NEIGHBOUR_Z = 6.4;

/** Least gain in log likelihood for which one kind is split into two. 7.5 for a triangle of few
 * readings is about one false split in a thousand; with more readings the BIC asks for more. */
export const LEAST_SPLIT_GAIN = 7.5;

/** Kinds nearer than this (root of the sum of squares over the sides), in standard deviations of one
 * reading, are not told apart: panels a little more uneven than the rest look just like them. Such
 * a kind is reported as one that may be two. */
export const LEAST_SEPARATION = 2;

/** One odd panel is a kind of its own only if that beats a blundered side by this many more blunders:
 * one side off is a blunder; two sides off, a second reading of the same panel that agrees, or a
 * second panel alike, make a kind. */
export const NEW_KIND_BLUNDERS = 1.7;

/** A side further from its kind than this, in standard deviations of the difference, is a suspect:
 * 1 in 60 000 by noise. */
export const SUSPECT_Z = 4.3;

/** Two kinds closer than this, as the normal deviate of their chi-square, may be one. */
export const MAYBE_ONE_Z = 3;

/** Spread of a kind beyond this, as the normal deviate of its chi-square, may be two kinds. */
export const MAYBE_TWO_Z = 4;

/** Below this probability a panel's kind is not settled. */
export const SETTLED_PROBABILITY = 0.9;

/** From this probability a panel counts as evidence that its mark covers a kind. */
export const MARK_EVIDENCE_PROBABILITY = 0.99;

/** Most that a mark may weigh against the tape: odds of 4 to 1. */
export const MARK_LOG_ODDS = Math.log(4);

/** A tape's own error, that no number of readings removes, metres: common practice, no source. */
export const SIDE_SD_FLOOR = 0.0001;

/** A person's bias is applied when it exceeds this many of its standard deviations. */
export const BIAS_Z = 3;

/** Repeated readings must hold this many degrees of freedom to judge the stated noise by. */
export const NOISE_DOF = 12;

/** Stated noise is overruled when repeats exceed it by this many standard deviations. */
export const NOISE_Z = 3;

/** What one more free side must gain in log likelihood before sides that could be equal are taken
 * to differ: 3 standard deviations. */
export const FREE_SIDE_GAIN = 4.5;

/** Two sides meet in a seam when they differ by no more than this many standard deviations; wide,
 * as it only rules out what cannot be. */
export const SEAM_Z = 6;

/** A kind with less than this share of the panels that carry a mark has it by mistake: a stray. */
export const STRAY_MARK_SHARE = 0.1;

/** Chi-square by which a kind must lie nearer another's mirror image than its own, before two kinds
 * that could each be their own mirror image are called a pair: 2 standard deviations. */
export const PAIR_GAIN = 4;

/** Kinds further apart than this in some side, in standard deviations of one reading, were not torn
 * from each other by noise; they show what the noise is. */
export const LONE_Z = 10;

/** Readings of one panel lie no further apart than this in a side, metres, whatever noise the file
 * states, save by a slip: common practice, no source. */
export const TAG_APART = 0.01;

/** Step by which a larger noise is tried where no kind stands alone. */
export const NOISE_STEP = 1.4;

/** A side further from its kind than this, in standard deviations of the difference, is a slip and no
 * longer noise: 4 in 10⁸. */
export const SLIP_Z = 5.5;

/** A side further than this from every side of every kind, in standard deviations of one reading,
 * meets none of them. */
export const LONE_SIDE_Z = 5;

/** A tape that kinds alone show to be off is off by more than this, in standard deviations of one
 * reading: nearer, noise mixes up the kinds. */
export const SHIFT_Z = 6;

/** It is off by no more than this, metres: common practice, no source. */
export const SHIFT_REACH = 0.1;

/** Log odds against chance from which kinds that agree on a shift show a tape that is off: 20 000 to
 * 1 where people may have shared out the kinds among them, 50 to 1 where the others did not. */
export const SHIFT_LOG_ODDS = { sharedOut: 10, mixed: 4 } as const;

/** How often people slip, for each reading: our own judgement. `turned`: from the wrong face, or two
 * sides in each other's place. `twoSides`: two sides misread. `stranger`: for each kind, the chance
 * of a lone panel that belongs to no other and looks like one of these slips. `agreeing`: log odds
 * against a side's agreeing by chance with what another unit makes of it. */
export const SLIP_RATES = {
  turned: 0.005,
  twoSides: 0.001,
  other: 0.002,
  stranger: 2e-4,
  agreeing: 2,
} as const;

/** Log odds from which an odd reading is taken for a slip and not for a kind of its own: 20 to 1. */
export const SLIP_LOG_ODDS = 3;

/** Standard deviation of one angle where the file names none, radians: half a degree, what a sliding
 * bevel and a protractor give (common practice). */
export const ANGLE_SD = 0.0087;
