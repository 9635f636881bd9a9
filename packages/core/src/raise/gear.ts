// The part of the project file that says what there is to reach, lift and light with, and what stands
// inside the shell and must come out of it. SI: metres, kilograms, newtons; null is unknown and told so.

import { z } from 'zod';

// Limits catch slips of unit; nothing that a small crew owns comes near them.
const name = z.string().min(1).max(100);
const metres = z.number().positive().max(60);
const kilograms = z.number().positive().max(100_000).nullable().default(null);
const count = z.int().min(1).max(100).default(1);
const point = z.tuple([z.number(), z.number(), z.number()]);

const ladder = z.strictObject({
  name,
  form: z
    .enum(['leaning', 'self-standing'])
    .default('self-standing')
    .describe('Leaning: against something that bears it. Self-standing: a stepladder.'),
  length: metres.describe('Along the rails as used, metres.'),
  bears: kilograms.describe('Person with tools, kilograms.'),
  count,
});

const platform = z.strictObject({
  name,
  height: metres.describe('Of the boards above the ground, metres.'),
  bears: kilograms,
  count,
});

const tower = z.strictObject({
  name,
  height: metres.describe('Of the highest boards above the ground, metres.'),
  base: z
    .tuple([metres, metres])
    .describe('Between the outermost feet, outriggers fitted, metres.'),
  bears: kilograms,
  count,
});

const lift = z.strictObject({
  name,
  hookHeight: metres.describe('Of the hook above the ground, metres, at the reach that is needed.'),
  bears: kilograms.describe('At that reach, by the plate of the machine, kilograms.'),
});

const ginPole = z.strictObject({
  name,
  height: metres.describe('Of the head above the ground, metres.'),
  headBears: z
    .number()
    .positive()
    .max(1e6)
    .nullable()
    .default(null)
    .describe('Load that the head with its stays bears, newtons.'),
});

const box = z.strictObject({
  form: z.literal('box'),
  size: z.tuple([metres, metres, metres]).describe('Along x, y and z of the thing, metres.'),
});
const cylinder = z.strictObject({
  form: z.literal('cylinder'),
  diameter: metres,
  length: metres.describe('Along z of the thing, metres.'),
});
const dish = z.strictObject({
  form: z.literal('dish'),
  diameter: metres,
  depth: metres.describe('From the rim’s plane to the bottom, metres.'),
  thickness: metres.default(0.05).describe('Of the reflector with its ribs, metres.'),
});
const hull = z.strictObject({
  form: z.literal('hull'),
  points: z.array(point).min(4).max(200).describe('Their convex hull is the body, metres.'),
});
const simple = z.discriminatedUnion('form', [box, cylinder, dish, hull]);
const parts = z.strictObject({
  form: z.literal('parts'),
  parts: z
    .array(z.strictObject({ shape: simple, at: point.default([0, 0, 0]) }))
    .min(1)
    .max(50)
    .describe('Simple bodies that hold together, each moved to `at`, metres.'),
});

/** The shape of a thing, as kept in the project file. */
export const thingShape = z.discriminatedUnion('form', [box, cylinder, dish, hull, parts]);

const inside = z.strictObject({
  name,
  shape: thingShape,
  mass: kilograms,
  must: z
    .enum(['come out', 'go in', 'both', 'stay'])
    .default('come out')
    .describe('Come out before the shell is closed, go in while it is open, both, or stay.'),
});

const powerTool = z.strictObject({
  name,
  wattHoursPerBolt: z.number().positive().max(100).nullable().default(null),
});
const light = z.strictObject({
  name,
  watts: z.number().positive().max(5000),
  count,
  hours: z
    .number()
    .min(0)
    .max(24)
    .nullable()
    .default(null)
    .describe('Hours that it burns in each stage; null: nobody knows, none is counted.'),
});
const battery = z.strictObject({
  name,
  wattHours: z.number().positive().max(100_000).describe('Of one, full, in watt hours.'),
  count,
});

/** What there is to reach, lift and light with, and what is inside, as kept in the project file. */
export const gearSection = z.strictObject({
  ladders: z.array(ladder).max(50).default([]),
  platforms: z.array(platform).max(50).default([]),
  towers: z.array(tower).max(20).default([]),
  lifts: z.array(lift).max(20).default([]).describe('Cranes, telehandlers, hoists.'),
  ginPole: ginPole.nullable().default(null),
  inside: z.array(inside).max(50).default([]),
  powerTools: z.array(powerTool).max(20).default([]),
  lights: z.array(light).max(20).default([]),
  batteries: z.array(battery).max(20).default([]),
  personLifts: z
    .number()
    .min(5)
    .max(60)
    .default(25)
    .describe('What one person lifts close in at waist height, kilograms: common practice.'),
  cardAbove: z
    .number()
    .min(0.5)
    .max(20)
    .default(2)
    .describe('Lifts that end higher than this above the ground get a lift card, metres.'),
});

/** The gear of a project with every default filled in. */
export type Gear = z.output<typeof gearSection>;
/** One thing inside the shell. */
export type ThingInside = Gear['inside'][number];
/** The shape of a thing inside. */
export type ThingShape = ThingInside['shape'];

/** The gear of a project that says nothing: none. */
export const noGear: Gear = gearSection.parse({});
