// What the lead wants of the shell, as the project file keeps it: what counts first, and what must be.
// A demand that is named in the order as well (spares, a door, a level base, groups) may be missed
// where what stands before it in the order wants that; else it must be kept.

import { z } from 'zod';

/** What there can be more or less of, the best way first named. */
export const objectives = [
  'fewest bought',
  'tallest',
  'largest floor',
  'fewest mended',
  'fewest gaps',
  'spares kept',
  'door',
  'level base',
  'mended low',
  'groups joined',
] as const;

/** One of them. */
export type Objective = (typeof objectives)[number];

const length = z.number().positive().max(50);

/** The part `places.wishes` of the project file. */
export const wishesSection = z.strictObject({
  order: z
    .array(z.enum(objectives))
    .max(objectives.length)
    .refine((list) => new Set(list).size === list.length, { error: 'each objective once' })
    .default(['fewest bought', 'tallest', 'fewest mended'])
    .describe('What counts, the first beyond all others; those left out count last.'),
  spares: z
    .int()
    .min(0)
    .max(100)
    .default(0)
    .describe(
      'Good panels of each kind in use that are to be kept aside; to be missed only where the order names "spares kept".',
    ),
  mended: z.boolean().default(true).describe('Whether panels to be mended may be used.'),
  mostGaps: z
    .int()
    .min(0)
    .max(50)
    .default(0)
    .describe('Places that may be left open for want of panels.'),
  mostBought: z.int().min(0).max(1000).optional().describe('Panels bought or made, at most.'),
  flatBase: z
    .boolean()
    .default(false)
    .describe('Whether the base ring must be level, unless the order names "level base".'),
  mayCut: z
    .boolean()
    .default(false)
    .describe(
      'Whether the lowest panels may be sawn off along a level plane: a ragged base then counts as level.',
    ),
  leaning: z
    .boolean()
    .default(false)
    .describe('Whether ways up off the net’s hubs, seams and places are looked at as well.'),
  leastHeight: length.optional().describe('From the lowest base hub to the topmost, metres.'),
  leastFloor: length
    .optional()
    .describe('Radius of the circle about the axis that is clear at the base, metres.'),
  mostFloor: length.optional().describe('Radius of the circle that holds the base ring, metres.'),
  door: z
    .strictObject({ width: length, height: length })
    .optional()
    .describe(
      'Clear opening on the level of the lowest base hub, metres; must be had, unless the order names "door".',
    ),
  mostParted: z
    .int()
    .min(0)
    .max(1000)
    .optional()
    .describe('Joined groups of panels that may be taken apart, at most.'),
  windFrom: z
    .number()
    .min(-7)
    .max(7)
    .optional()
    .describe(
      'Where the wind mostly comes from, radians anticlockwise seen from above from the datum: mended panels go to the lee.',
    ),
});

/** What the lead wants. */
export type Wishes = z.infer<typeof wishesSection>;

/** What is wanted where nobody said anything. */
export const defaultWishes: Wishes = wishesSection.parse({});

/** Whether an objective is in the order: what it stands for may then be missed. */
export const isRanked = ({ order }: Pick<Wishes, 'order'>, objective: Objective): boolean =>
  order.includes(objective);
