// The part of the project file that the crew owns: where and when, who comes, breaks, forecast, rates.
// Dates as 2026-06-12, times of day as 08:30 by the site's clock; metres per second, seconds, degrees.

import { z } from 'zod';
import { BREAKS, CLOSE_DOWN, GUST_SD, NO_SHOW } from './common.ts';
import { dayNumber, secondsOfDay } from './date.ts';
import { type CrewRates, commonRates, type Rate, WORKS, type Work } from './rates.ts';

const date = z.string().refine((text) => dayNumber(text) !== null, 'a date such as 2026-06-12');
const time = z
  .string()
  .refine(
    (text) => /^\d\d:\d\d$/.test(text) && secondsOfDay(text) !== null,
    'a time of day such as 08:30',
  );
const name = z.string().trim().min(1).max(60);

const span = z
  .strictObject({ from: time, to: time })
  .refine(({ from, to }) => (secondsOfDay(from) ?? 0) < (secondsOfDay(to) ?? 0), 'from before to');

const shift = z
  .strictObject({ date, from: time, to: time })
  .refine(({ from, to }) => (secondsOfDay(from) ?? 0) < (secondsOfDay(to) ?? 0), 'from before to');

const person = z.strictObject({
  name,
  climbs: z.boolean().default(false).describe('May and will work at height.'),
  leads: z.boolean().default(false).describe('Can lead a lift.'),
  sure: z.boolean().default(false).describe('Comes for certain: no-shows are not reckoned with.'),
  shifts: z.array(shift).max(60).default([]),
});

const forecastHour = z.strictObject({
  at: z
    .string()
    .refine((text) => forecastTime(text) !== null, 'a date and time such as 2026-06-12T09:00'),
  mean: z.number().min(0).max(60),
  gust: z.number().min(0).max(100),
  temperatureC: z.number().min(-40).max(55).nullable().default(null),
  humidity: z.number().min(0.01).max(1).optional().describe('Relative: for sealing.'),
  rainMm: z.number().min(0).max(200).optional().describe('In the hour: for sealing.'),
});

const rate = z.strictObject({
  median: z.number().positive().max(86_400).describe('Person-seconds for one.'),
  logSd: z.number().min(0.01).max(1.5).optional(),
  scatter: z.number().min(0.01).max(1.5).optional(),
});

/** Where and when, who comes, breaks, forecast and rates, as kept in the project file. */
export const crewSection = z.strictObject({
  /** Null: nobody said where the site is; its daylight is supposed. */
  site: z
    .strictObject({
      latitudeDeg: z.number().min(-90).max(90),
      longitudeDeg: z.number().min(-180).max(180).describe('East positive.'),
      utcOffsetHours: z.number().min(-15).max(15).describe('Summer time included.'),
    })
    .nullable()
    .default(null),
  dates: z.array(date).max(60).default([]).describe('Days of work.'),
  people: z.array(person).max(200).default([]),
  breaks: z
    .array(span)
    .max(20)
    .default([...BREAKS]),
  noShow: z.number().min(0).max(0.95).default(NO_SHOW),
  forecast: z.array(forecastHour).max(2000).default([]),
  gustSd: z.number().min(0).max(1).default(GUST_SD),
  closeDown: z
    .strictObject({
      seconds: z.number().min(0).max(14_400).default(CLOSE_DOWN.seconds),
      hands: z.int().min(0).max(50).default(CLOSE_DOWN.hands),
    })
    .default({ ...CLOSE_DOWN }),
  rates: z
    .strictObject({
      panel: rate.optional(),
      bolt: rate.optional(),
      tighten: rate.optional(),
      plate: rate.optional(),
      prop: rate.optional(),
      base: rate.optional(),
      anchor: rate.optional(),
      learning: z.number().min(0.5).max(1).default(commonRates.learning),
      perMetre: z.number().min(0).max(1).default(commonRates.perMetre),
    })
    .default({ learning: commonRates.learning, perMetre: commonRates.perMetre }),
});

/** The crew of a project, with every default filled in. */
export type CrewSettings = z.output<typeof crewSection>;

/** A person of the crew. */
export type Person = CrewSettings['people'][number];

/** One hour of a forecast: mean and gust, m/s, and the temperature where it was told. */
export type ForecastHour = CrewSettings['forecast'][number];

/** The crew of a project that says nothing. */
export const defaultCrew: CrewSettings = crewSection.parse({});

/** The rates that a project works with: its own where it has them, else the common ones. */
export function ratesOf({ rates }: CrewSettings): CrewRates {
  const work = Object.fromEntries(
    WORKS.map((name): [Work, Rate] => {
      const common = commonRates.work[name];
      const own = rates[name];
      if (own === undefined) return [name, common];
      const { median, logSd = common.logSd, scatter = common.scatter } = own;
      return [name, { median, logSd, scatter, observed: 0 }];
    }),
  ) as Record<Work, Rate>;
  return { work, learning: rates.learning, perMetre: rates.perMetre };
}

/** Seconds from 1970-01-01 00:00 of the site's clock to a time as 2026-06-12T09:00; null where it is
 * none. */
export function forecastTime(text: string): number | null {
  const [day, clock, ...rest] = text.split('T');
  const [days, seconds] = [dayNumber(day ?? ''), secondsOfDay(clock ?? '')];
  return rest.length > 0 || days === null || seconds === null ? null : days * 86_400 + seconds;
}
