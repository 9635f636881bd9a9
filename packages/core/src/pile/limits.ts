// What a row of the pile may say, for whoever asks people for one: names and bounds that the
// schema holds to. Metres.

/** Most sides that one panel may have. */
export const MAX_SIDES = 12;

/** Fewest sides of a panel. */
export const LEAST_SIDES = 3;

/** Longest name: a tag, a mark, a person, characters. */
export const LONGEST_NAME = 60;

/** Largest count of panels or pieces in one row. */
export const MOST_COUNTED = 100_000;

/** What a hardware lot may be. */
export const hardwareItems = [
  'bolt',
  'nut',
  'lock nut',
  'washer',
  'plate',
  'tape',
  'sealant',
  'anchor',
  'other',
] as const;

/** What state a hardware lot may be in. */
export const hardwareStates = ['new', 'used', 'rusted', 'unknown'] as const;

/** Longest bolt, or roll of tape, metres. */
export const LONGEST_ITEM = 200;

/** Corners that a hub plate may have. */
export const PLATE_CORNERS = { least: 2, most: 20 } as const;

/** Angle between two panels that a seam may have, radians: flat is π; the sharpest that anybody
 * builds is far above the tetrahedron's 1.23. */
export const DIHEDRALS = { min: 1, max: 5.28 } as const;
