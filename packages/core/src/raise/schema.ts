// The part of the project file that keeps what the lead has fixed of the order of work, by the numbers
// that the panels bear, so that it outlives a new computation.

import { z } from 'zod';

const number = z.string().trim().min(1).max(20);
const lift = z.array(number).min(1).max(400);

const before = z.strictObject({
  place: number,
  than: number.describe('The piece with `place` goes up before the piece with this place.'),
});

/** What the lead has fixed of the order of work, as kept in the project file. */
export const raisingSection = z.strictObject({
  before: z.array(before).max(500).default([]).describe('What goes up before what.'),
  order: z
    .array(lift)
    .max(1000)
    .nullable()
    .default(null)
    .describe(
      'The lead’s own order, each the places of one lift; null: the program looks for one.',
    ),
  wayOut: z
    .array(number)
    .max(50)
    .nullable()
    .default(null)
    .describe('Places that go in last; null: found by the program.'),
  groups: z
    .array(z.array(number).min(2).max(400))
    .max(200)
    .default([])
    .describe('Places that go up in one piece, still joined or made up on the ground.'),
  props: z
    .array(z.array(number).min(1).max(20))
    .max(200)
    .default([])
    .describe('Hubs that stay propped to the end, each by the places that meet there.'),
});

/** What the lead has fixed of the order of work, with every default filled in. */
export type RaisingSettings = z.output<typeof raisingSection>;

/** Nothing fixed. */
export const defaultRaising: RaisingSettings = raisingSection.parse({});
