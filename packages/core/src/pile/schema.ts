// The pile section of the project file: what people measured, counted and painted, as plain data.
// Lengths in metres, masses in kilograms; sides run anticlockwise. Shape only: what one row says
// about another (ids alike, groups of unknown kinds) is checked in check.ts.

import { z } from 'zod';
import {
  DIHEDRALS,
  hardwareItems,
  hardwareStates,
  LEAST_SIDES,
  LONGEST_ITEM,
  LONGEST_NAME,
  MAX_SIDES,
  MOST_COUNTED,
  PLATE_CORNERS,
} from './limits.ts';
import { SIDE_LENGTHS } from './tolerances.ts';

const name = z.string().trim().min(1).max(LONGEST_NAME);
const note = z.string().max(2000).optional();
const wholeCount = z.int().min(0).max(MOST_COUNTED);
const condition = z.enum(['good', 'repair', 'scrap']);
const mass = z.number().positive().max(5000).nullable().optional();

const sideRange = {
  error: (issue: { input?: unknown }): string =>
    `a side of ${SIDE_LENGTHS.min} to ${SIDE_LENGTHS.max} m${unitSlip(issue.input)}`,
};
const side = z.number().min(SIDE_LENGTHS.min, sideRange).max(SIDE_LENGTHS.max, sideRange);

/** The sides of a panel, metres, such that they can meet: the longest shorter than the others
 * together. */
export const sidesSchema = z
  .array(side)
  .min(LEAST_SIDES)
  .max(MAX_SIDES)
  .refine(sidesClose, {
    error: (issue) => `sides that meet: ${sidesGap(issue.input)}`,
    when: ({ value }) => isNumbers(value) && value.length >= 3 && value.every(inRange),
  });

/** Side → number of holes; null for a side nobody counted. */
const holes = z.array(wholeCount.max(200).nullable()).max(MAX_SIDES).nullable().optional();

/** Side → its flange laps over, under or meets flush with the neighbour's, as seen from outside; null
 * for a side nobody looked at. */
const laps = z
  .array(z.enum(['over', 'under', 'flush']).nullable())
  .max(MAX_SIDES)
  .nullable()
  .optional();

/** Side → angle between the faces of the two panels that meet there, measured inside, radians: π
 * where they are level. On a lone panel twice the angle between its face and its flange. */
const dihedrals = z
  .array(z.number().min(DIHEDRALS.min).max(DIHEDRALS.max).nullable())
  .max(MAX_SIDES)
  .nullable()
  .optional();

const face = z.enum(['outside', 'inside', 'unknown']);

/** One row of `kinds`. Without any of `good`, `repair`, `scrap` nobody counted this kind. */
const kindRow = z.strictObject({
  id: name,
  marks: z.array(name).max(50).default([]),
  sides: sidesSchema,
  good: wholeCount.optional(),
  repair: wholeCount.optional(),
  scrap: wholeCount.optional(),
  mass,
  laps,
  holes,
  dihedrals,
  /** Face from which `sides` run anticlockwise; outside if not given. */
  seenFrom: face.optional(),
  /** True where a person says that it does not belong to the shell: the shape is sought without. */
  leaveOut: z.boolean().optional(),
  note,
});

/** One row of `readings`: one panel measured once. `tag` names the panel; `count` is how many
 * panels a row without a tag stands for (1 if not given). `mark` is what is painted on it: where that
 * cannot be read for sure `3|8` is a 3 or an 8, `3?` most likely a 3, and `?` (or no mark) unmarked. */
const readingRow = z.strictObject({
  tag: name.optional(),
  by: name.optional(),
  mark: name.optional(),
  sides: sidesSchema,
  /** Sides run anticlockwise as the measurer sees the panel, from this face. */
  seenFrom: face.default('unknown'),
  condition: condition.optional(),
  count: wholeCount.min(1).optional(),
  mass,
  laps,
  holes,
  dihedrals,
  /** True where a person says that it stands as it was read: it is never taken for a slip. */
  asRead: z.boolean().optional(),
  note,
});

/** A distance across joined panels, from the far end of one spoke to that of another, taken between
 * the same points as the sides. Spoke i (from 0) is the seam on the clockwise side of panel i of
 * `around`; an open run has one more at its end. */
const rimReading = z.strictObject({
  from: wholeCount.max(MAX_SIDES),
  to: wholeCount.max(MAX_SIDES),
  length: z
    .number()
    .min(SIDE_LENGTHS.min)
    .max(2 * SIDE_LENGTHS.max),
});

/** Panels still joined around one hub: kinds or marks (also faded ones, `3|8`, `3?` or `?`),
 * anticlockwise seen from outside; `count`
 * such groups. `closed` true: the run goes all the way round the hub; absent: not stated. */
const groupRow = z.strictObject({
  around: z.array(name).min(2).max(MAX_SIDES),
  count: wholeCount.min(1).default(1),
  closed: z.boolean().optional(),
  rim: z.array(rimReading).max(50).optional(),
  note,
});

/** A sort of hub plate. `radius`: from its middle to the point that the sides were measured from,
 * along an arm, metres. `arms`: angles from each arm to the next, anticlockwise seen from outside,
 * radians. */
const hubPlateRow = z.strictObject({
  corners: wholeCount.min(PLATE_CORNERS.least).max(PLATE_CORNERS.most),
  radius: z.number().min(0).max(0.5).optional(),
  arms: z.array(z.number().min(0.1).max(Math.PI)).max(PLATE_CORNERS.most).optional(),
  count: wholeCount.optional(),
  note,
});

/** What a person's tape adds to every length that he reads, metres: taken off before anything else. */
const personRow = z.strictObject({
  by: name,
  shift: z.number().min(-0.1).max(0.1),
});

/** One lot of hardware. `count` in pieces, rolls or cartridges; `length` of a bolt or a roll. */
const hardwareRow = z.strictObject({
  item: z.enum(hardwareItems),
  thread: name.optional(),
  length: z.number().positive().max(LONGEST_ITEM).optional(),
  width: z.number().positive().max(5).optional(),
  grade: name.optional(),
  count: wholeCount,
  state: z.enum(hardwareStates).default('unknown'),
  price: z.number().min(0).max(1e6).optional(),
  pack: wholeCount.min(1).optional(),
  /** Of a hub plate: its corners, and whether it is one of the rim. */
  corners: wholeCount.min(PLATE_CORNERS.least).max(PLATE_CORNERS.most).optional(),
  rim: z.boolean().optional(),
  note,
});

/** The `pile` section of the project file. Every part may be left out. */
export const pileSection = z.strictObject({
  measuredAlong: z.enum(['holes', 'skin', 'hubs']).default('hubs'),
  /** Hub-to-hub length minus measured side, metres; null where unknown. */
  hubAllowance: z.number().min(-0.2).max(0.5).nullable().default(null),
  /** Standard deviation of one reading, metres. */
  readingSd: z.number().min(0.00005).max(0.05).default(0.001),
  /** Standard deviation of one angle, radians; half a degree if not given. */
  angleSd: z.number().min(0.0001).max(0.2).optional(),
  kinds: z.array(kindRow).max(1000).default([]),
  readings: z.array(readingRow).max(20_000).default([]),
  groups: z.array(groupRow).max(1000).default([]),
  hardware: z.array(hardwareRow).max(1000).default([]),
  hubPlates: z.array(hubPlateRow).max(100).optional(),
  people: z.array(personRow).max(200).optional(),
  note,
});

/** The pile as read, with its defaults filled in. */
export type Pile = z.infer<typeof pileSection>;
/** One row of `kinds`. */
export type KindRow = z.infer<typeof kindRow>;
/** One row of `readings`. */
export type ReadingRow = z.infer<typeof readingRow>;
/** One row of `groups`. */
export type GroupRow = z.infer<typeof groupRow>;
/** One row of `hardware`. */
export type HardwareRow = z.infer<typeof hardwareRow>;
/** One distance across a joined group. */
export type RimReading = z.infer<typeof rimReading>;
/** One row of `hubPlates`. */
export type HubPlateRow = z.infer<typeof hubPlateRow>;
/** One row of `people`. */
export type PersonRow = z.infer<typeof personRow>;
/** What state a panel is in. */
export type Condition = z.infer<typeof condition>;

/** Whether these sides (any unit) can meet as a polygon of some area. */
function sidesClose(sides: readonly number[]): boolean {
  const longest = Math.max(...sides);
  return 2 * longest < sides.reduce((sum, s) => sum + s, 0);
}

function sidesGap(input: unknown): string {
  const sides = isNumbers(input) ? input : [];
  const longest = Math.max(...sides);
  const others = sides.reduce((sum, s) => sum + s, 0) - longest;
  return `the longest, ${longest} m, must be shorter than the others together, ${Number(others.toFixed(6))} m`;
}

const inRange = (length: number): boolean =>
  length >= SIDE_LENGTHS.min && length <= SIDE_LENGTHS.max;

const isNumbers = (value: unknown): value is number[] =>
  Array.isArray(value) && value.every((item) => typeof item === 'number' && Number.isFinite(item));

/** The unit that would make an absurd length a likely one. */
function unitSlip(input: unknown): string {
  if (typeof input !== 'number' || input <= 0) return '';
  const units = [
    ['millimetres', 0.001],
    ['centimetres', 0.01],
    ['inches', 0.0254],
  ] as const;
  const likely = units.filter(([, size]) => input * size >= 0.3 && input * size <= 4);
  if (input < SIDE_LENGTHS.min) return '; lengths here are in metres';
  return likely.length > 0
    ? `; lengths here are in metres, was it ${likely.map(([unit]) => unit).join(' or ')}?`
    : '; lengths here are in metres';
}
