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

/** The part `places` of the project file. */
export const placesSection = z.strictObject({
  wayUp,
  cut,
  repaired: z.boolean().default(false).describe('Whether panels to be mended count as stock.'),
  datumTurn,
  frozen: z
    .strictObject({ wayUp, cut, datumTurn })
    .optional()
    .describe('The decision whose place numbers were painted on the panels: they are kept.'),
});

/** The lead's decisions about places. */
export type PlacesDecision = z.infer<typeof placesSection>;

/** The decision whose place numbers were painted. */
export type FrozenDecision = NonNullable<PlacesDecision['frozen']>;
