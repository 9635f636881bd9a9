// The part of the project file that the take-off owns: hole patterns, hub plates, spares, what
// counts as usable. SI: lengths in metres, prices in the project's own currency for one piece.
// Defaults marked "common practice" have no published source.

import { z } from 'zod';
import { MAX_SIDES } from '../pile/limits.ts';
import { SIDE_LENGTHS } from '../pile/tolerances.ts';
import { commonPacks, readThread } from './threads.ts';

// Upper limits catch slips of unit and of the finger; none comes near what a shell has.
const metres = z.number().positive().max(200);
const boltLength = z.number().positive().max(1);
const share = z.number().min(0).max(10);
const few = z.int().min(0).max(20);
const packSize = z.int().min(1).max(100_000);
const state = z.enum(['new', 'used', 'rusted', 'unknown']);

/** Most rules: one for each side of the most kinds that a pile may have. */
const MAX_RULES = 12_000;

const thread = z.string().superRefine((text, context) => {
  const read = readThread(text);
  if (!read.ok)
    for (const fault of read.faults) context.addIssue({ code: 'custom', message: fault.expected });
});

/** A bolt by size: thread and length under the head, metres. */
const boltSize = z.strictObject({ thread, length: boltLength });

const sideRule = z
  .strictObject({
    kind: z.string().min(1).optional(),
    side: z
      .int()
      .min(0)
      .max(MAX_SIDES - 1)
      .optional(),
    sideLength: z.number().positive().max(SIDE_LENGTHS.max).optional(),
    within: z.number().positive().max(1).default(0.002),
    holes: z.int().min(0).max(200),
    thread,
    length: boltLength,
  })
  .refine(
    (rule) =>
      rule.sideLength === undefined
        ? rule.kind !== undefined && rule.side !== undefined
        : rule.kind === undefined && rule.side === undefined,
    { message: 'either kind and side, or sideLength alone' },
  );

/** Settings of the take-off, as kept in the project file. */
export const takeoffSection = z.strictObject({
  /** Holes along a side and the bolt through them: by kind and side (counted by hand; goes first)
   * or by side length within `within` metres (the nearest goes first). */
  sides: z.array(sideRule).max(MAX_RULES).default([]),
  /** The bolt of sides whose holes were counted on the panels and that no rule speaks for. */
  seamBolt: boltSize.nullable().default(null),
  /** Bolts through the open sides of the base ring; null where they take none. */
  baseBolt: boltSize.nullable().default(null),
  /** Bolts through the open sides round openings (a door frame); null where they take none. */
  openingBolt: boltSize.nullable().default(null),
  nut: z.enum(['nylon-insert', 'plain', 'none']).default('nylon-insert'),
  washersPerBolt: few.default(2),
  /** Hub plates; null where the shell has none. */
  plates: z
    .strictObject({
      perHub: few.min(1).default(1),
      atRim: z.boolean().default(true),
      boltsPerCorner: few.default(1),
      bolt: boltSize.nullable().default(null),
    })
    .nullable()
    .default({ perHub: 1, atRim: true, boltsPerCorner: 1, bolt: null }),
  /** Sealing tape laid along each seam: how many runs, and metres in a roll (null: unknown). */
  tape: z
    .strictObject({
      runs: few.min(1).default(1),
      rollLength: metres.nullable().default(null),
      price: z.number().min(0).max(1e6).nullable().default(null),
    })
    .nullable()
    .default(null),
  /** Spare share of what is needed, 0.1 = 10 %: common practice, no source. */
  spares: z
    .strictObject({
      bolts: share.default(0.1),
      nuts: share.default(0.1),
      washers: share.default(0.1),
      plates: share.default(0),
      tape: share.default(0.1),
    })
    .default({ bolts: 0.1, nuts: 0.1, washers: 0.1, plates: 0, tape: 0.1 }),
  /** States of hardware that count as in hand. */
  usable: z.array(state).default(['new', 'used']),
  /** Nylon-insert nuts grip once: only new ones count (common practice, no source). */
  lockNutsNew: z.boolean().default(true),
  /** Pieces in a pack where no lot says: common practice, no source. */
  packs: z
    .strictObject({
      bolt: packSize.default(commonPacks.bolt),
      nut: packSize.default(commonPacks.nut),
      washer: packSize.default(commonPacks.washer),
      plate: packSize.default(commonPacks.plate),
    })
    .default({
      bolt: commonPacks.bolt,
      nut: commonPacks.nut,
      washer: commonPacks.washer,
      plate: commonPacks.plate,
    }),
});

/** Settings of the take-off with every default filled in. */
export type TakeoffSettings = z.output<typeof takeoffSection>;

/** One hole pattern of the settings. */
export type SideRule = TakeoffSettings['sides'][number];

/** A bolt by thread (as written) and length under the head, metres. */
export type BoltSize = z.output<typeof boltSize>;

/** The settings of a project that says nothing. */
export const defaultTakeoff: TakeoffSettings = takeoffSection.parse({});
