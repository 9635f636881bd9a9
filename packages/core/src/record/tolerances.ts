// Limits of the record. Upper limits catch slips of unit and of the finger, and what a hostile phone
// might send; none comes near what a build needs.

/** Longest name of a person, tag, place, seam or hub, characters. */
export const LONGEST_RECORD_NAME = 60;

/** Longest name of a hub, characters: it lists the places around it. */
export const LONGEST_HUB_NAME = 200;

/** Longest note, characters. */
export const LONGEST_NOTE = 2000;

/** Most entries that one entry may follow on: as many phones may have spoken of one thing at once. */
export const MOST_FOLLOWED = 100;

/** Times that are read, milliseconds since 1970: 2000 to 2100. */
export const RECORD_TIMES = { min: 946_684_800_000, max: 4_102_444_800_000 } as const;

/** The largest order that is read. An honest order never passes the number of entries. */
export const MOST_ORDER = 2 ** 40;

/** A phone's clock is doubted where it stands further from the others than this, milliseconds. */
export const CLOCK_DOUBT = 10 * 60_000;

/** Part of a seam's bolts to be sampled once it is final (common practice, no source). */
export const SAMPLED_PART = 0.1;

/** Work of one person goes on over gaps shorter than this, seconds; a longer one is a break (common
 * practice, no source). */
export const WORK_GAP = 45 * 60;
