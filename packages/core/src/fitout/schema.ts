// The part of the project file that the fit-out owns: the wall as a wave meets it, dish and mount, how it
// is sealed, weather, leaks, air, upkeep and what else the shell may be. SI; angles in degrees by name.

import { z } from 'zod';
import { dayNumber } from '../crew/date.ts';
import { forecastTime } from '../crew/schema.ts';
import type { Read } from '../measure/fault.ts';
import { schemaFaults } from '../measure/schemaFaults.ts';
import { thingShape } from '../raise/gear.ts';
import { SEAL_SIDES } from './closing-seams.ts';
import { MOUNT_KINDS } from './dish.ts';
import { RADIO_MATERIAL_NAMES } from './materials.ts';
import { MOST_DISH } from './receiver.ts';
import { SEALANT_PACKS, type SealantPack } from './sealant.ts';
import { FREQUENCIES, MOST_THICKNESS } from './wave.ts';
import { commonSealRules } from './weather.ts';

// Limits catch slips of unit.
const frequency = z
  .number()
  .min(FREQUENCIES.least)
  .max(FREQUENCIES.most)
  .describe('Hertz, 30 MHz to 100 GHz.');
const azimuthDeg = z
  .number()
  .min(-360)
  .max(360)
  .default(0)
  .describe('From the datum, anticlockwise seen from above.');
const part = (most: number) => z.number().min(0).max(most);
const date = z.string().refine((text) => dayNumber(text) !== null, 'a date such as 2026-06-12');
const name = z.string().trim().min(1).max(60);

const layer = z
  .strictObject({
    material: name,
    thickness: z.number().positive().max(MOST_THICKNESS).describe('Metres.'),
    permittivity: z.number().min(1).max(200).optional(),
    lossTangent: part(10).optional(),
  })
  .superRefine(({ material, permittivity, lossTangent }, context) => {
    const known = (RADIO_MATERIAL_NAMES as readonly string[]).includes(material);
    if (known || (permittivity !== undefined && lossTangent !== undefined)) return;
    context.addIssue({
      code: 'custom',
      path: ['material'],
      message: `one of ${RADIO_MATERIAL_NAMES.join(', ')}; or a name with its own permittivity and lossTangent`,
    });
  });

const dish = z.strictObject({
  diameter: z.number().min(0.05).max(MOST_DISH),
  focalRatio: z.number().min(0.2).max(2).default(0.4).describe('Focal length over diameter.'),
  vertexAhead: z
    .number()
    .min(-10)
    .max(10)
    .default(0.2)
    .describe('From where the mount’s axes cross to the vertex, metres.'),
  feed: z
    .strictObject({ beyond: part(10).default(0.1), diameter: part(10).default(0.3) })
    .default({ beyond: 0.1, diameter: 0.3 }),
  back: z
    .strictObject({ behind: part(20).default(0.5), diameter: part(20).default(0.6) })
    .default({ behind: 0.5, diameter: 0.6 }),
});

const mount = z.strictObject({
  kind: z.enum(MOUNT_KINDS).default('azimuth and elevation'),
  height: z.number().min(0).max(60).default(1.8).describe('Of the crossing of its axes, metres.'),
  aside: z
    .tuple([z.number(), z.number()])
    .default([0, 0])
    .describe('From the shell’s axis, metres.'),
  lowestDeg: part(89).default(5),
  highestDeg: part(90).default(90),
  azimuthDeg: azimuthDeg.describe('Of a transit mount’s plane; of north for an equatorial one.'),
  latitudeDeg: z.number().min(-90).max(90).default(45),
  hourAngleDeg: part(180).default(90),
});

const packs = Object.keys(SEALANT_PACKS) as [SealantPack, ...SealantPack[]];

const weatherHour = z.strictObject({
  at: z
    .string()
    .refine((text) => forecastTime(text) !== null, 'a date and time such as 2026-06-12T09:00'),
  temperatureC: z.number().min(-45).max(60),
  humidity: z.number().min(0.01).max(1).describe('Relative, 0.01 to 1.'),
  rainMm: part(200).default(0).describe('In the hour.'),
});

const leak = z.strictObject({
  between: z.tuple([name, name]).describe('Numbers of the places on both sides of the seam.'),
  seen: z.string().max(500).default(''),
});

const box = z.strictObject({
  name,
  length: z.number().min(0.05).max(30),
  depth: z.number().min(0.05).max(30),
  height: z.number().min(0.05).max(30),
});

const airReading = z.strictObject({
  outsideC: z.number().min(-45).max(60),
  insideC: z.number().min(-45).max(60),
  insideHumidity: z.number().min(0.01).max(1),
  hours: part(8784),
});

const carried = z.strictObject({
  name,
  shape: thingShape,
  roughly: z
    .boolean()
    .default(false)
    .describe(
      'Whether the shape only holds the thing, which has hollows: nothing is proved of it.',
    ),
});

const doorFrame = z
  .strictObject({
    width: z.number().min(0.005).max(1).describe('Across, in the panels’ plane, metres.'),
    depth: z.number().min(0.005).max(1).describe('From the skin inwards, metres.'),
    wall: z.number().min(0.0005).max(0.1).nullable().default(null).describe('Null: solid.'),
    young: z.number().min(1e8).max(1e12).describe('Young’s modulus, pascals.'),
    allowable: z
      .number()
      .min(1e5)
      .max(1e10)
      .nullable()
      .default(null)
      .describe('Stress that it may bear in use, pascals; null: nobody said.'),
  })
  .refine(({ width, depth, wall }) => wall === null || 2 * wall < Math.min(width, depth), {
    path: ['wall'],
    message: 'less than half of width and depth; null for a solid bar',
  });

/** What the shell is for, as kept in the project file. */
export const fitoutSection = z.strictObject({
  wall: z.array(layer).max(20).default([]).describe('Of a panel, the outermost layer first.'),
  frequencies: z.array(frequency).max(12).default([]),
  measured: z
    .array(z.strictObject({ frequency, lossDb: part(40) }))
    .max(12)
    .default([])
    .describe('Loss measured square on through a dry panel; takes the place of the reckoned one.'),
  paint: z
    .strictObject({
      coats: z.int().min(0).max(20).default(1),
      dryFilm: z.number().min(1e-6).max(2e-3).describe('Of one coat, metres.'),
      year: z.int().min(1950).max(2200).nullable().default(null),
      everyYears: z.number().min(1).max(50).default(8).describe('Common practice.'),
    })
    .nullable()
    .default(null),
  rainMmHour: part(300).default(10),
  seams: z
    .strictObject({
      width: part(1).default(0.01),
      depth: part(1).default(0.04).describe('Of the flanges inward, metres.'),
      plateDiameter: part(2).default(0),
      opacity: part(1).default(1).describe('Share that they stop: 1 for metal.'),
    })
    .default({ width: 0.01, depth: 0.04, plateDiameter: 0, opacity: 1 }),
  dish: dish.nullable().default(null),
  mount: mount.default({
    kind: 'azimuth and elevation',
    height: 1.8,
    aside: [0, 0],
    lowestDeg: 5,
    highestDeg: 90,
    azimuthDeg: 0,
    latitudeDeg: 45,
    hourAngleDeg: 90,
  }),
  margin: part(5).default(0.05).describe('To stay clear about the dish, metres.'),
  systemK: z.number().min(1).max(1e5).nullable().default(null).describe('Noise of the receiver.'),
  horizon: z
    .strictObject({
      ringHeight: part(5).default(0),
      door: z
        .strictObject({
          azimuthDeg,
          width: z.number().min(0.1).max(10),
          height: z.number().min(0.1).max(10),
        })
        .nullable()
        .default(null),
      skylineDeg: z.array(part(89)).max(360).default([]).describe('In even steps from the datum.'),
    })
    .default({ ringHeight: 0, door: null, skylineDeg: [] }),
  seal: z
    .strictObject({
      side: z.enum(SEAL_SIDES).default('between'),
      joint: z.number().min(0.006).max(0.05).nullable().default(null).describe('Width, metres.'),
      pack: z.enum(packs).default('cartridge 310 ml'),
      tapeRoll: z.number().positive().max(200).nullable().default(null),
      foamRoll: z.number().positive().max(200).nullable().default(null),
      waste: part(2).default(0.1),
      reach: part(30).default(2.4).describe('Height that is reached outside later, metres.'),
    })
    .default({
      side: 'between',
      joint: null,
      pack: 'cartridge 310 ml',
      tapeRoll: null,
      foamRoll: null,
      waste: 0.1,
      reach: 2.4,
    }),
  sealRules: z
    .strictObject({
      surfaceBelowAir: part(15).default(commonSealRules.surfaceBelowAir),
      overDewPoint: part(15).default(commonSealRules.overDewPoint),
      least: z.number().min(-30).max(40).default(commonSealRules.least),
      most: z.number().min(0).max(80).default(commonSealRules.most),
      dryAfter: z.int().min(0).max(72).default(commonSealRules.dryAfter),
      dryBefore: z.int().min(0).max(72).default(commonSealRules.dryBefore),
    })
    .default({ ...commonSealRules }),
  weather: z.array(weatherHour).max(2000).default([]),
  leaks: z.array(leak).max(200).default([]),
  air: z
    .strictObject({
      changesPerHour: part(100).default(2),
      warmer: part(60).default(3).describe('Inside over outside, kelvin.'),
      outsideC: z.number().min(-45).max(60).default(15),
      readings: z.array(airReading).max(8784).default([]),
    })
    .default({ changesPerHour: 2, warmer: 3, outsideC: 15, readings: [] }),
  door: z
    .array(name)
    .max(60)
    .default([])
    .describe('Numbers of the places of the door, besides what the decision leaves out.'),
  doorFrame: doorFrame
    .nullable()
    .default(null)
    .describe('Bars of header and jambs, as the lead names them.'),
  carry: z
    .array(carried)
    .max(20)
    .default([])
    .describe('What must pass the door: the largest first.'),
  standsFrom: date.nullable().default(null),
  use: z
    .strictObject({
      headroom: part(30).default(2),
      boxes: z.array(box).max(30).default([]),
      bareAbsorption: part(0.99).default(0.05).describe('Share of sound that the wall takes.'),
      coverAbsorption: part(1).default(0.8),
      clearArea: part(1e4).default(0).describe('Of clear panels, square metres.'),
      soundOff: part(20)
        .default(0.5)
        .describe('How far from the sphere’s centre somebody speaks, metres.'),
    })
    .default({
      headroom: 2,
      boxes: [],
      bareAbsorption: 0.05,
      coverAbsorption: 0.8,
      clearArea: 0,
      soundOff: 0.5,
    }),
});

/** The fit-out of a project with every default filled in. */
export type FitoutSettings = z.output<typeof fitoutSection>;

/** The fit-out of a project that says nothing. */
export const defaultFitout: FitoutSettings = fitoutSection.parse({});

/** A fit-out as typed, with its defaults filled in, or every fault with its path. */
export function readFitout(input: unknown): Read<FitoutSettings> {
  const parsed = fitoutSection.safeParse(input);
  return parsed.success
    ? { ok: true, value: parsed.data }
    : { ok: false, faults: schemaFaults(parsed.error, input, fitoutSection, 'fitout') };
}
