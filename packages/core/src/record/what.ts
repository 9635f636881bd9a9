// What an entry can say, one shape for each kind. Places, seams and hubs go by their names (names.ts),
// panels by their tags, so that an entry means the same after any replanning. SI: metres, newtons,
// newton-metres, metres per second.

import { z } from 'zod';
import { sidesSchema } from '../pile/schema.ts';
import { LONGEST_HUB_NAME, LONGEST_NOTE, LONGEST_RECORD_NAME } from './tolerances.ts';

const name = z
  .string()
  .min(1)
  .max(LONGEST_RECORD_NAME)
  .refine((text) => text.trim() === text, 'text without blanks around it');
const tag = name.describe('The label that names one single panel.');
const place = z.string().regex(/^\d{1,3}-\d{1,5}$/, 'a place such as 3-07');
const seam = z.string().regex(/^\d{1,3}-\d{1,5}\/\d{1,3}-\d{1,5}$/, 'a seam such as 3-07/3-08');
const hub = z.string().min(1).max(LONGEST_HUB_NAME);
const turn = z.int().min(0).max(63).describe('Its side that lies on the place’s first side.');
const hands = z.int().min(1).max(50).optional().describe('People at this piece of work.');
const newtons = z.number().positive().max(500_000);
const baseHub = z.int().min(1).max(1000).describe('Base hub by number, clockwise from the datum.');
const metres = z.number().positive().max(100);
const height = z.number().min(-100).max(100);
const stage = z.int().min(1).max(10_000).describe('Stage of the raising plan by number.');
const pass = z.enum(['none', 'finger', 'snug', 'final']);
const text = z.string().max(LONGEST_NOTE);

const surveyed = z.discriminatedUnion('what', [
  z.strictObject({ what: z.literal('radius'), hub: baseHub, length: metres }),
  z.strictObject({ what: z.literal('chord'), from: baseHub, to: baseHub, length: metres }),
  z.strictObject({ what: z.literal('level'), hub: baseHub, height }),
  z.strictObject({
    what: z.literal('height'),
    ring: z.int().min(1).max(100),
    number: z.int().min(1).max(1000),
    height,
  }),
]);

const photo = z.strictObject({
  hash: z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 in hexadecimal'),
  type: z.enum(['image/jpeg', 'image/png', 'image/webp']),
  bytes: z.int().min(1).max(50_000_000),
});

const about = z.discriminatedUnion('what', [
  z.strictObject({ what: z.literal('panel'), name: tag }),
  z.strictObject({ what: z.literal('place'), name: place }),
  z.strictObject({ what: z.literal('seam'), name: seam }),
  z.strictObject({ what: z.literal('hub'), name: hub }),
]);

/** Everything that an entry can say. */
export const whatSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('panel measured'),
    tag,
    sides: sidesSchema,
    seenFrom: z.enum(['outside', 'inside', 'unknown']),
    mark: name.optional(),
  }),
  z.strictObject({ kind: z.literal('panel found'), tag }),
  z.strictObject({ kind: z.literal('panel cleaned'), tag }),
  z.strictObject({
    kind: z.literal('panel condition'),
    tag,
    condition: z.enum(['good', 'repair', 'scrap']),
  }),
  z.strictObject({
    kind: z.literal('panel placed'),
    place,
    tag: tag.nullable().describe('Null: nobody read it.'),
    turn: turn.nullable(),
    hands,
  }),
  z.strictObject({ kind: z.literal('panel taken out'), place }),
  z.strictObject({ kind: z.literal('seam pass'), seam, pass, hands }),
  z.strictObject({ kind: z.literal('seam sealed'), seam, sealed: z.boolean() }),
  z
    .strictObject({
      kind: z.literal('seam sampled'),
      seam,
      bolts: z.int().min(1).max(1000),
      failed: z.int().min(0).max(1000),
      torque: z.number().positive().max(1000).optional(),
    })
    .refine(({ bolts, failed }) => failed <= bolts, 'no more failed than sampled'),
  z.strictObject({ kind: z.literal('hub plate'), hub, on: z.boolean(), hands }),
  z.strictObject({ kind: z.literal('hub bolt'), hub, pass, hands }),
  z.strictObject({ kind: z.literal('prop'), hub, set: z.boolean(), hands }),
  z.strictObject({
    kind: z.literal('anchor driven'),
    anchor: z.int().min(1).max(1000),
    driven: z.boolean(),
  }),
  z.strictObject({
    kind: z.literal('anchor pulled'),
    anchor: z.int().min(1).max(1000),
    pull: newtons,
    held: z.boolean(),
  }),
  z.strictObject({ kind: z.literal('surveyed'), reading: surveyed }),
  z.strictObject({
    kind: z.literal('bolts counted'),
    thread: name.describe('As on the Pile sheet, such as 5/16-18 or M8.'),
    length: z.number().positive().max(1).describe('Metres.'),
    count: z.int().min(0).max(100_000).describe('Loose ones, not those in the shell.'),
  }),
  z.strictObject({
    kind: z.literal('note'),
    text,
    photo: photo.optional(),
    about: about.optional(),
  }),
  z.strictObject({
    kind: z.literal('weather'),
    gust: z.number().min(0).max(100).optional(),
    mean: z.number().min(0).max(60).optional(),
    temperatureC: z.number().min(-60).max(60).optional(),
    sky: z.enum(['dry', 'rain', 'snow', 'fog', 'thunder']).optional(),
    text: text.optional(),
  }),
  z.strictObject({
    kind: z.literal('person'),
    person: name.describe('First name or initials.'),
    here: z.boolean(),
  }),
  z.strictObject({ kind: z.literal('stage done'), stage, done: z.boolean() }),
  z.strictObject({ kind: z.literal('closed down'), stage, closed: z.boolean() }),
  z.strictObject({ kind: z.literal('stop'), why: z.enum(['lightning', 'wind']), on: z.boolean() }),
  z.strictObject({
    kind: z.literal('undo'),
    of: z.string().regex(/^[0-9a-z]{8,32}-\d{1,9}$/, 'the id of an entry'),
  }),
]);

/** What one entry says. */
export type What = z.infer<typeof whatSchema>;

/** A kind of entry. */
export type WhatKind = What['kind'];

/** How far bolts are, as people say it; `none`: not bolted, or loosened. */
export type RecordPass = z.infer<typeof pass>;

/** Passes from the least to the most. */
export const RECORD_PASSES: readonly RecordPass[] = pass.options;
