// What is odd in a forecast as the project keeps it, in metres per second: hours that are missing, and
// winds that look like another unit. Asked, never changed: only who typed it knows.

import { clockTime } from './date.ts';
import type { ForecastHour } from './schema.ts';

/** Units that a forecast is often typed in, and what one of each is in m/s. */
export const WIND_UNITS = { 'm/s': 1, 'km/h': 1 / 3.6, mph: 0.44704, kn: 1852 / 3600 } as const;

/** One of {@link WIND_UNITS}. */
export type WindUnit = keyof typeof WIND_UNITS;

/** Half of the means over this: a strong wind, Beaufort 6, day and night; m/s. */
const STRONG = 10.8;

/** Whether the winds look like another unit, as a question with what they would then be and the least
 * change that helps; null where they do not. */
export function unitDoubt(forecast: readonly ForecastHour[]): string | null {
  const means = forecast.map(({ mean }) => mean).sort((a, b) => a - b);
  const middle = means[Math.floor(means.length / 2)];
  if (middle === undefined || middle < STRONG) return null;
  const most = Math.max(...forecast.map(({ gust }) => gust));
  const as = (['km/h', 'kn'] as const)
    .map((unit) => `${(most * WIND_UNITS[unit]).toFixed(1)} m/s if they are ${unit}`)
    .join(', ');
  return `The forecast has means of ${middle.toFixed(0)} m/s and more in half of its hours, gusts up to ${most.toFixed(0)} m/s: are these m/s? (The highest gust is ${as}.) If not, paste it anew with its unit, or give the command --wind-unit km/h or kn.`;
}

/** A forecast whose numbers were typed in another unit, in m/s. */
export const inUnit = (forecast: readonly ForecastHour[], unit: WindUnit): ForecastHour[] =>
  forecast.map((hour) => ({
    ...hour,
    mean: hour.mean * WIND_UNITS[unit],
    gust: hour.gust * WIND_UNITS[unit],
  }));

/** Slots of a day by the spans that they make: `13:00 to 15:00 and 17:00 to 18:00`. `starts`: seconds of
 * the day at which each begins, ascending; `length` of each, seconds. */
export function spansText(starts: readonly number[], length: number): string {
  const spans: [number, number][] = [];
  for (const start of starts) {
    const last = spans.at(-1);
    if (last && last[1] === start) last[1] = start + length;
    else spans.push([start, start + length]);
  }
  const words = spans.map(([from, to]) => `${clockTime(from)} to ${clockTime(to)}`);
  const end = words.pop();
  return words.length === 0 ? (end ?? '') : `${words.join(', ')} and ${end}`;
}
