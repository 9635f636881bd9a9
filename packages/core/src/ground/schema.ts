// The part of the project file that the ground owns: site and soil, tapes, levels, anchors chosen,
// test pulls, survey readings. SI: metres, newtons, newton-metres, kilograms, radians; prices in the
// project's own currency for one piece. Defaults marked "common practice" have no published source.

import { z } from 'zod';
import { underlays } from './anchors/ballast.ts';
import type { AnchorChoice } from './anchors/choice.ts';
import type { PullTest } from './anchors/pull-test.ts';
import type { Soil } from './anchors/soil.ts';
import { soilKinds } from './anchors/soil.ts';
import type { LevelSetUp } from './levels.ts';
import { commonPlay } from './survey/misfit.ts';
import { commonTolerances } from './survey/out-of-true.ts';
import type { SurveyReading } from './survey/readings.ts';
import { DATUM_CLEAR, LEVEL_RANGE, TAPE_LENGTH, TAPE_SD } from './tolerances.ts';

// Upper limits catch slips of unit and of the finger; none comes near what a site has.
const metres = z.number().positive().max(100);
const small = z.number().min(0).max(1);
const baseHub = z.int().min(1).max(1000).describe('Base hub by number, clockwise from the datum.');
const name = z.string().trim().min(1).max(60);
const MOST_ROWS = 5000;

const anchor = z.discriminatedUnion('type', [
  z.strictObject({
    type: z.literal('wood pickets'),
    combination: z.enum(['1', '1-1', '1-1-1', '2-1', '3-2-1']),
  }),
  z.strictObject({ type: z.literal('steel pickets'), count: z.int().min(1).max(12) }),
  z.strictObject({ type: z.literal('lawn stake') }),
  z.strictObject({ type: z.literal('gravel bar') }),
  z.strictObject({
    type: z.literal('bar'),
    diameter: z.number().min(0.01).max(0.06),
    depth: z.number().min(0.3).max(2).describe('Length in the ground.'),
  }),
  z.strictObject({
    type: z.literal('deadman'),
    length: z.number().min(0.4).max(6),
    face: z.number().min(0.05).max(1),
    depth: z.number().min(0.3).max(5).describe('Of the middle of its face.'),
    body: z.enum(['timber', 'log']),
  }),
  z.strictObject({
    type: z.literal('helical'),
    torque: z.number().min(20).max(20_000).describe('Of the last turns, N·m.'),
    perTorque: z.number().min(5).max(70).optional(),
    plate: z.number().min(0.05).max(0.6).describe('Diameter of the largest plate.'),
  }),
  z.strictObject({ type: z.literal('other'), name, spacing: metres }),
  z.strictObject({
    type: z.literal('ballast'),
    underlay: z.enum(underlays),
    mass: z.number().positive().max(20_000).describe('Of one piece.'),
  }),
]) satisfies z.ZodType<AnchorChoice>;

const pullTest = z.strictObject({
  pull: z.number().positive().max(200_000),
  held: z.boolean(),
  wet: z.boolean().default(false),
  note: z.string().max(500).optional(),
}) satisfies z.ZodType<PullTest>;

const levelSetUp = z.strictObject({
  method: z.enum(['laser', 'water level', 'heights']),
  readings: z
    .array(
      z.strictObject({
        at: z.union([baseHub, name]).describe('A base hub by number, or a benchmark by name.'),
        reading: z.number().min(-LEVEL_RANGE).max(LEVEL_RANGE),
      }),
    )
    .max(MOST_ROWS),
}) satisfies z.ZodType<LevelSetUp>;

const surveyReading = z.discriminatedUnion('what', [
  z.strictObject({ what: z.literal('radius'), hub: baseHub, length: metres }),
  z.strictObject({ what: z.literal('chord'), from: baseHub, to: baseHub, length: metres }),
  z.strictObject({
    what: z.literal('level'),
    hub: baseHub,
    height: z.number().min(-LEVEL_RANGE).max(LEVEL_RANGE),
  }),
  z.strictObject({
    what: z.literal('height'),
    ring: z.int().min(1).max(100).describe('Ring of hubs above the base ring, from 1.'),
    number: z.int().min(1).max(1000).describe('Hub of the ring, clockwise from the datum.'),
    height: z.number().min(-LEVEL_RANGE).max(LEVEL_RANGE),
  }),
]) satisfies z.ZodType<SurveyReading>;

const soil = z.strictObject({
  kind: z.enum(soilKinds),
  firm: z.boolean().describe('Stiff or dense: a heel leaves no print.'),
  wet: z.boolean().describe('Saturated now, or may be before the shell is down.'),
}) satisfies z.ZodType<Soil>;

const tape = z.strictObject({
  sd: z.number().min(1e-4).max(0.1).default(TAPE_SD),
  length: metres.default(TAPE_LENGTH),
  datum: metres.nullable().default(null),
});

const shimming = z.strictObject({
  aim: z.enum(['total', 'max']).default('total'),
  tilt: z.number().min(0).max(0.05).default(0),
  neighbour: small.default(0),
  overall: small.default(0),
  pieces: z.array(z.number().min(1e-4).max(0.2)).max(20).default([]),
});

const ringBeam = z.strictObject({
  width: z.number().min(0.01).max(1),
  outside: z.number().min(-1).max(1).default(0),
  stock: metres.nullable().default(null),
});

const tolerances = z.strictObject({
  radiusGood: small.default(commonTolerances.radiusGood),
  radiusStop: small.default(commonTolerances.radiusStop),
  neighbour: small.default(commonTolerances.neighbour),
  overall: small.default(commonTolerances.overall),
  hubHeight: small.default(commonTolerances.hubHeight),
});

const play = z.strictObject({
  slack: small.default(commonPlay.slack),
  gap: small.default(commonPlay.gap),
  depth: z.number().min(0.001).max(1).default(commonPlay.depth),
});

/** Site, soil, levels, anchors and survey, as kept in the project file. */
export const groundSection = z.strictObject({
  site: z
    .strictObject({ name: name.optional(), note: z.string().max(2000).optional() })
    .default({}),
  /** Null: nobody looked. */
  soil: soil.nullable().default(null),
  tape: tape
    .default(tape.parse({}))
    .describe(`Tapes; the datum peg stands ${DATUM_CLEAR} m outside the ring where null.`),
  ringBeam: ringBeam.nullable().default(null),
  /** Levels of the ground, or of what the shims go on. */
  levels: z.array(levelSetUp).max(200).default([]),
  shims: shimming.default(shimming.parse({})),
  /** The sort of anchor at hand; null: none chosen. */
  anchor: anchor.nullable().default(null),
  /** The angle from the ground and the height at the shell of the guys; null: pulled straight up. */
  guy: z
    .strictObject({ elevation: z.number().min(0.05).max(1.5), height: metres })
    .nullable()
    .default(null),
  practice: z.enum(['factored', 'working', 'safety', 'worst of all']).default('worst of all'),
  price: z.number().min(0).max(1e6).nullable().default(null).describe('Of one piece.'),
  /** Test pulls of the chosen sort on this site. */
  pullTests: z.array(pullTest).max(100).default([]),
  /** Readings of the base as it stands. */
  survey: z.array(surveyReading).max(MOST_ROWS).default([]),
  tolerances: tolerances.default(tolerances.parse({})),
  play: play.default(play.parse({})),
});

/** Settings and readings of the ground with every default filled in. */
export type GroundSettings = z.output<typeof groundSection>;

/** The ground of a project that says nothing. */
export const defaultGround: GroundSettings = groundSection.parse({});
