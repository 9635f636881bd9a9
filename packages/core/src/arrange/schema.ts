// The lead's decisions about places, as the project file keeps them. Crown and cut are told in
// words that do not depend on how the net happens to be numbered.

import { z } from 'zod';

const wayUp = z
  .strictObject({
    at: z.enum(['hub', 'place', 'seam']).describe('What is uppermost.'),
    kinds: z
      .array(z.string().min(1))
      .min(1)
      .describe(
        'Kinds around the hub anticlockwise seen from outside, of the place, or of the seam.',
      ),
    orbit: z.int().min(0).describe('Which of the ways up with these kinds at the crown, from 0.'),
    lean: z
      .strictObject({
        by: z
          .number()
          .min(0)
          .max(1.6)
          .describe('Angle from that crown to what is uppermost, radians.'),
        towards: z
          .number()
          .min(-7)
          .max(7)
          .describe('Which way, radians anticlockwise seen from above from its datum.'),
      })
      .optional()
      .describe('How far the shell leans from that crown; absent: not at all.'),
  })
  .describe('What is uppermost, by its kinds.');

const cut = z
  .strictObject({
    places: z.int().min(1).describe('Number of places that stand.'),
    height: z.number().positive().describe('From the lowest base hub to the topmost, metres.'),
  })
  .describe('Where the shell meets the ground.');

const datumTurn = z
  .number()
  .min(-7)
  .max(7)
  .default(0)
  .describe('Datum turned on anticlockwise seen from above, radians.');

const number = z.string().min(1).max(20);

const opening = z.strictObject({
  use: z.enum(['door', 'hatch', 'gap']).describe('What it is for; a gap is for want of panels.'),
  places: z.array(number).min(1).max(200).describe('Places that are left out.'),
});

const broken = z.strictObject({
  place: number.describe('Place whose panel broke.'),
  moves: z
    .array(
      z.strictObject({
        from: number.nullable().describe('Place that the panel comes from; null: a spare.'),
        to: number,
        kind: z.string().min(1),
        turn: z.int().min(0).describe('Its side that lies on the place’s first seam.'),
      }),
    )
    .max(50)
    .describe('Panels moved, in the order in which it is done; none: one is bought or made.'),
  lacks: z.string().min(1).nullable().describe('Kind of which a panel is then to be got.'),
});

const second = z.strictObject({
  name: z.string().min(1).max(80),
  what: z.enum(['cap', 'ring']).describe('A ring is a band of courses, open above.'),
  wayUp,
  cut: cut.describe('Where it meets the ground; of a ring: the cap that it is the lower part of.'),
  panels: z
    .array(z.strictObject({ kind: z.string().min(1), count: z.int().min(1) }))
    .min(1)
    .describe('What it is made of; also panels that are yet to be got.'),
  height: z.number().positive().describe('From the lowest base hub to its top, metres.'),
});

/** The part `places` of the project file. */
export const placesSection = z.strictObject({
  wayUp,
  cut,
  repaired: z.boolean().default(false).describe('Whether panels to be mended count as stock.'),
  datumTurn,
  openings: z
    .array(opening)
    .max(50)
    .optional()
    .describe('Places left out on purpose, by their numbers with the datum not turned on.'),
  broken: z
    .array(broken)
    .max(200)
    .optional()
    .describe('Panels that broke and what was done, by numbers with the datum not turned on.'),
  seconds: z.array(second).max(20).optional().describe('Lesser shells out of what is left over.'),
  frozen: z
    .strictObject({ wayUp, cut, datumTurn })
    .optional()
    .describe('The decision whose place numbers were painted on the panels: they are kept.'),
});

/** The lead's decisions about places. */
export type PlacesDecision = z.infer<typeof placesSection>;

/** Places left out on purpose. */
export type DecidedOpening = NonNullable<PlacesDecision['openings']>[number];

/** A panel that broke and what was done about it. */
export type DecidedBreak = NonNullable<PlacesDecision['broken']>[number];

/** A lesser shell out of what is left over. */
export type DecidedSecond = NonNullable<PlacesDecision['seconds']>[number];

/** The decision whose place numbers were painted. */
export type FrozenDecision = NonNullable<PlacesDecision['frozen']>;
