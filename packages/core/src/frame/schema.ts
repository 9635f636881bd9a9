// The part of the project file that the frame owns: what the lead knows of the parts. Null means
// unknown: what rests on it is told as unknown, or reckoned with a supposed value that is named.
// SI: metres, pascals, kilograms per cubic metre.

import { z } from 'zod';
import { readThread } from '../takeoff/threads.ts';
import { BOLT_GRADES } from './bolts.ts';
import { MATERIALS, type MaterialName } from './materials.ts';

// Limits catch slips of unit; every known material and section lies well inside.
const pressure = z.number().positive().max(1e12).nullable().default(null);
const metres = z.number().positive().max(1).nullable().default(null);
const materialNames = Object.keys(MATERIALS) as [MaterialName, ...MaterialName[]];

const thread = z
  .string()
  .superRefine((text, context) => {
    const read = readThread(text);
    if (!read.ok)
      for (const fault of read.faults)
        context.addIssue({ code: 'custom', message: fault.expected });
  })
  .nullable()
  .default(null);

const panel = z.strictObject({
  material: z
    .enum(materialNames)
    .nullable()
    .default(null)
    .describe('What the skin is of; gives the stiffness and density that are not entered.'),
  thickness: metres.describe('Of the skin, metres.'),
  bendingThickness: metres.describe(
    'Thickness of a plain sheet that would bend as little, metres: for a sandwich. Null: as thick as it is.',
  ),
  young: pressure.describe('Young’s modulus, pascals.'),
  poisson: z.number().min(0).max(0.49).nullable().default(null),
  density: z.number().positive().max(20_000).nullable().default(null),
  strength: pressure.describe('Stress that it may bear, pascals. There is no value for unknown.'),
});

const flange = z.strictObject({
  depth: metres.describe('From the skin inwards, metres.'),
  thickness: metres.describe('Of one flange, metres. Null: as thick as the skin.'),
});

const bolt = z.strictObject({
  thread: thread.describe('Thread of the seam bolts, if one size holds for all.'),
  grade: z
    .enum(Object.keys(BOLT_GRADES) as [string, ...string[]])
    .nullable()
    .default(null)
    .describe('Grade or class, as marked on the heads.'),
});

const hubPlate = z.strictObject({
  thickness: metres.describe('Metres. Null: plates keep corners together and bend freely.'),
  boltCircle: metres.describe('Diameter of the circle of its bolts, metres. Null: likewise.'),
  material: z.enum(materialNames).nullable().default(null),
  young: pressure.describe('Young’s modulus, pascals. Null: by the material.'),
  poisson: z.number().min(0).max(0.49).nullable().default(null),
});

/** What the lead knows of the parts, as kept in the project file. */
export const partsSection = z.strictObject({
  panel: panel.default(panel.parse({})),
  flange: flange.default(flange.parse({})),
  bolt: bolt.default(bolt.parse({})),
  hubPlate: hubPlate.default(hubPlate.parse({})).describe('The round plates over the hubs.'),
});

/** What the lead knows of the parts, null where unknown. */
export type PartsKnown = z.output<typeof partsSection>;

/** The parts of a project that says nothing: all unknown. */
export const unknownParts: PartsKnown = partsSection.parse({});
