// The part of the project file that stages own: what the lead knows of props and hubs, and what there
// is of guys and masts to take their place. Null means unknown, or that there are none: no wind limit
// is told from it. SI: metres, newtons, radians.

import { z } from 'zod';
import { GUY_SLOPES } from './tolerances.ts';

// Half a meganewton is more than any prop that people carry bears: over it is a slip of unit.
const newtons = z.number().positive().max(500_000).nullable().default(null);

// Limits catch slips of unit and of the finger.
const metres = z.number().positive().max(100);
const elevation = z.number().min(0.05).max(1.5);

const guys = z
  .strictObject({
    radii: z
      .array(metres)
      .min(1)
      .max(4)
      .describe('Level distances from the centre at which guys may be anchored, metres.'),
    count: z.int().min(1).max(48).describe('Anchor points on each, evenly spaced.'),
    bearing: z
      .number()
      .min(0)
      .max(2 * Math.PI)
      .default(0)
      .describe('Of the first of each, clockwise from the datum, radians.'),
    least: elevation.default(GUY_SLOPES.least).describe('Least slope of a guy from the ground.'),
    most: elevation.default(GUY_SLOPES.most).describe('Greatest slope of a guy from the ground.'),
    bears: newtons.describe('What a guy with its anchor bears, along itself.'),
  })
  .refine(({ least, most }) => least <= most, {
    path: ['most'],
    message: 'a slope no less than the least',
  });

const mast = z.strictObject({
  height: metres.describe('Of its head above the lowest base hub.'),
  chains: z.int().min(1).max(24).describe('How many it has.'),
  guyed: z.boolean().default(false).describe('Whether guys of its own hold its head.'),
  chainBears: newtons.describe('What one chain bears.'),
  bears: newtons.describe('What may press down on its head.'),
});

/** What the lead knows of props and hubs, as kept in the project file. */
export const stagesSection = z.strictObject({
  propBears: newtons.describe('What a prop with its ties bears in any direction.'),
  hubBears: newtons.describe('What may be brought into the shell at one hub.'),
  guys: guys.nullable().default(null),
  mast: mast.nullable().default(null),
});

/** What the lead knows of props and hubs, null where unknown. */
export type StagesKnown = z.output<typeof stagesSection>;

/** The stages of a project that says nothing: all unknown. */
export const unknownStages: StagesKnown = stagesSection.parse({});
