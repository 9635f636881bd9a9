// The forecast along the days: gust and temperature of any time, the greatest gust of a night, and what
// is not known. Between two hours of a forecast the greater gust counts; where they are further apart
// than three hours, or beyond its ends, nothing is known: NaN.

import { FORECAST_GAP } from './common.ts';
import { type ForecastHour, forecastTime } from './schema.ts';

/** A forecast in order of time: seconds from 1970 by the site's clock, m/s, °C (NaN: not told). */
export interface Forecast {
  readonly at: Float64Array;
  readonly gust: Float64Array;
  readonly temperatureC: Float64Array;
}

/** A forecast from its hours, in any order; of two for one time the later in the list counts. */
export function forecastOf(hours: readonly ForecastHour[]): Forecast {
  const byTime = new Map(hours.map((hour) => [forecastTime(hour.at) as number, hour]));
  const sorted = [...byTime].sort(([a], [b]) => a - b);
  return {
    at: Float64Array.from(sorted, ([at]) => at),
    gust: Float64Array.from(sorted, ([, { gust }]) => gust),
    temperatureC: Float64Array.from(sorted, ([, hour]) => hour.temperatureC ?? Number.NaN),
  };
}

/** The greatest gust from one time to another, m/s; NaN where part of that time is not forecast. */
export const gustBetween = (forecast: Forecast, from: number, to: number): number =>
  mostBetween(forecast, forecast.gust, from, to);

/** The highest temperature likewise, °C. */
export const temperatureBetween = (forecast: Forecast, from: number, to: number): number =>
  mostBetween(forecast, forecast.temperatureC, from, to);

function mostBetween({ at }: Forecast, values: Float64Array, from: number, to: number): number {
  let first = at.length - 1;
  while (first >= 0 && at[first] > from) first--;
  if (first < 0) return Number.NaN;
  let most = values[first];
  for (let k = first; at[k] < to; k++) {
    if (k + 1 >= at.length) {
      // The last hour of a forecast stands for itself.
      return to <= at[k] + 3600 ? most : Number.NaN;
    }
    if (at[k + 1] - at[k] > FORECAST_GAP) return Number.NaN;
    if (!(values[k + 1] <= most)) most = values[k + 1];
  }
  return most;
}
