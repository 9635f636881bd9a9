// Dew point, and the hours in which sealing can be done: no rain, a dry surface warmer than the dew
// point by a margin, in the range of temperature that the sealant wants, and no rain for a while after.

import { assertBetween } from '../loads/doors.ts';
import { commonPractice, confirmed, fromMemory, type Provenance } from '../loads/provenance.ts';

/** What the rules below rest on. */
export const SEAL_WEATHER_SOURCES: readonly Provenance[] = [
  confirmed('dew point: WMO Annex 4.B as in the Vaisala AWS330 manual'),
  fromMemory('surface 3 K above the dew point: practice of ISO 8502-4'),
  fromMemory('sealant from 5 to 32 °C: practice of ASTM C1193'),
  commonPractice('4 hours without rain after; a surface 2 K below the air'),
];

/** Vapour pressure over water, hectopascals: 6.112 exp(17.62 t / (243.12 + t)), t in °C, −45 to 60. */
export function saturation(temperatureC: number): number {
  assertBetween('temperature', temperatureC, -45, 60, '°C');
  return 6.112 * Math.exp((17.62 * temperatureC) / (243.12 + temperatureC));
}

/** Dew point, °C, of air at a temperature (°C) with a relative humidity of 0.01 to 1. WMO form. */
export function dewPoint(temperatureC: number, humidity: number): number {
  assertBetween('relative humidity', humidity, 0.01, 1);
  const x = Math.log((humidity * saturation(temperatureC)) / 6.112);
  return (243.12 * x) / (17.62 - x);
}

/** An hour of weather. */
export interface WeatherHour {
  /** Hours from the first hour told, whole; a gap is not reckoned over. */
  readonly hour: number;
  readonly temperatureC: number;
  /** Relative, 0 to 1. */
  readonly humidity: number;
  /** Millimetres in the hour. */
  readonly rainMm: number;
}

/** When sealing can be done. */
export interface SealRules {
  /** Of the surface under the air, kelvin: a wall loses heat to a clear sky. */
  readonly surfaceBelowAir: number;
  /** Surface over dew point, kelvin. */
  readonly overDewPoint: number;
  readonly least: number;
  readonly most: number;
  /** Hours without rain that must follow, and hours dry that must have gone before. */
  readonly dryAfter: number;
  readonly dryBefore: number;
}

/** The rules of common practice. */
export const commonSealRules: SealRules = {
  surfaceBelowAir: 2,
  overDewPoint: 3,
  least: 5,
  most: 32,
  dryAfter: 4,
  dryBefore: 2,
};

/** Whether sealing can be done in an hour; if not, the first thing in the way. */
export interface SealHour {
  readonly hour: number;
  readonly can: boolean;
  readonly why:
    | 'rain'
    | 'rain before'
    | 'rain after'
    | 'dew'
    | 'cold'
    | 'hot'
    | 'not known after'
    | null;
  /** Surface over dew point, kelvin. */
  readonly over: number;
}

/** Every hour told, in order of time. RangeError for weather out of its range, or an hour told twice. */
export function sealHours(weather: readonly WeatherHour[], rules = commonSealRules): SealHour[] {
  const byHour = new Map<number, WeatherHour>();
  for (const one of weather) {
    if (byHour.has(one.hour))
      throw new RangeError(`hour ${one.hour} of the weather is entered twice`);
    byHour.set(one.hour, one);
  }
  return [...byHour.values()]
    .sort((a, b) => a.hour - b.hour)
    .map((one) => {
      const over =
        one.temperatureC - rules.surfaceBelowAir - dewPoint(one.temperatureC, one.humidity);
      const why = inTheWay(one, over, byHour, rules);
      return { hour: one.hour, can: why === null, why, over };
    });
}

function inTheWay(
  { hour, temperatureC, rainMm }: WeatherHour,
  over: number,
  byHour: ReadonlyMap<number, WeatherHour>,
  rules: SealRules,
): SealHour['why'] {
  if (rainMm > 0) return 'rain';
  for (let k = 1; k <= rules.dryBefore; k++)
    if ((byHour.get(hour - k)?.rainMm ?? 0) > 0) return 'rain before';
  for (let k = 1; k <= rules.dryAfter; k++)
    if ((byHour.get(hour + k)?.rainMm ?? 0) > 0) return 'rain after';
  const surface = temperatureC - rules.surfaceBelowAir;
  if (surface < rules.least) return 'cold';
  if (surface > rules.most) return 'hot';
  if (over < rules.overDewPoint) return 'dew';
  for (let k = 1; k <= rules.dryAfter; k++) if (!byHour.has(hour + k)) return 'not known after';
  return null;
}

/** Runs of hours in which sealing can be done: from the hour, to the end of the last. */
export function sealWindows(hours: readonly SealHour[]): { from: number; to: number }[] {
  const runs: { from: number; to: number }[] = [];
  for (const { hour, can } of hours) {
    if (!can) continue;
    const last = runs.at(-1);
    if (last !== undefined && last.to === hour) last.to = hour + 1;
    else runs.push({ from: hour, to: hour + 1 });
  }
  return runs;
}
