// The part of the project file that the loads own: what the lead chose, and which numbers he put in
// the place of a code's, with his reasons. SI: metres, m/s, pascals, kilograms.

import { z } from 'zod';
import { ALTITUDE, LEAST_WIND, MOST_LENGTH, MOST_WIND } from './doors.ts';
import { LAW_CHOICES } from './laws.ts';
import { LOAD_NUMBER_KEYS, LOAD_NUMBERS, type LoadNumberKey } from './numbers.ts';
import { TERRAIN_WORDS, WIND_CODES } from './peak-pressure.ts';

/** Codes for snow. */
export const SNOW_CODES = ['asce 7-16', 'en 1991-1-3', 'worst of all'] as const;

const override = z
  .strictObject({
    number: z.enum(LOAD_NUMBER_KEYS as [LoadNumberKey, ...LoadNumberKey[]]),
    value: z.number(),
    reason: z.string().trim().min(1).max(500),
  })
  .superRefine(({ number, value }, context) => {
    const { least, most, unit } = LOAD_NUMBERS[number];
    if (value >= least && value <= most) return;
    const tail = unit === '' ? '' : ` ${unit}`;
    context.addIssue({
      code: 'custom',
      path: ['value'],
      message: `a number of ${least} to ${most}${tail} for ${number}`,
    });
  });

/** What the lead chose about loads, as kept in the project file. */
export const loadsSection = z.strictObject({
  /** Code for velocity pressure and internal pressure. */
  code: z.enum([...WIND_CODES, 'worst of all']).default('worst of all'),
  /** Law for the pressure on the outside. */
  law: z.enum(LAW_CHOICES).default('worst of all'),
  /** Design wind at 10 m in open country, m/s; null: not given, and no design load is reckoned. */
  wind: z
    .strictObject({
      as: z.enum(['gust', 'ten-minute mean']),
      speed: z.number().min(LEAST_WIND).max(MOST_WIND),
    })
    .nullable()
    .default(null),
  terrain: z.enum(TERRAIN_WORDS).default('open'),
  /** Of the ground above the sea, metres. */
  altitude: z.number().min(ALTITUDE.least).max(ALTITUDE.most).default(0),
  /** Days that the shell stands; null: for good. */
  daysStanding: z.number().min(0.01).max(36_500).nullable().default(null),
  /** Height of the base ring above the ground, metres. */
  baseHeight: z.number().min(0).max(MOST_LENGTH).default(0),
  snowCode: z.enum(SNOW_CODES).default('worst of all'),
  /** Snow on the ground, pascals; null: not given, and no snow load is reckoned. */
  groundSnow: z.number().min(0).max(20_000).nullable().default(null),
  /** Whether snow slides off: smooth panels with nothing that holds it. */
  slippery: z.boolean().default(false),
  /** Whether a door may stand open in the design wind. */
  doorOpen: z.boolean().default(false),
  /** Whether a person may go up on the shell. */
  person: z.boolean().default(false),
  /** Mass of a square metre of panel with its flanges, kg, for panels nobody weighed; null: unknown. */
  panelMass: z.number().min(0.1).max(200).nullable().default(null),
  /** Numbers of the lead's own, each with its reason; of two of one number the last counts. */
  overrides: z.array(override).max(200).default([]),
});

/** What the lead chose about loads, with every default filled in. */
export type LoadsSettings = z.output<typeof loadsSection>;

/** The settings of a project that says nothing. */
export const defaultLoads: LoadsSettings = loadsSection.parse({});
