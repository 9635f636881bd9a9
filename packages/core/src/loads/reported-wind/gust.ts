// The gust to expect from what somebody reports: a gust, a mean, or a Beaufort force.

import { beaufortForce } from '../beaufort/beaufort.ts';
import { assertBetween, assertWind } from '../doors.ts';
import { type Provenance, type Sourced, withSources } from '../provenance.ts';

/** A wind as reported at the site or in a forecast: m/s, or a Beaufort force. */
export type ReportedWind =
  | { readonly as: 'gust'; readonly speed: number }
  | { readonly as: 'mean'; readonly speed: number }
  | { readonly as: 'Beaufort'; readonly force: number };

/** The mean that the report stands for, or null for a gust: of a Beaufort force the top of its band.
 * Source: Beaufort scale for a force; else the report itself. */
function reportedMean(wind: ReportedWind): Sourced | null {
  if (wind.as === 'gust') return null;
  if (wind.as === 'mean') return { value: wind.speed, sources: [] };
  const band = beaufortForce(wind.force);
  return { value: band.to, sources: [band.source as Provenance] };
}

/** The gust to reckon with, m/s: the reported gust itself, or the mean times `gustOverMean`.
 * RangeError for a wind that is none (a calm too) or a factor outside 1 to 3.
 * Source: gust over mean 1.5 by NFRC's limits (26/17 and 35/23 mph), 2 by a telecom sheet. */
export function gustOf(wind: ReportedWind, gustOverMean: Sourced): Sourced {
  const mean = reportedMean(wind);
  assertWind(mean ? 'mean wind' : 'gust', mean ? mean.value : (wind as { speed: number }).speed);
  if (!mean) return { value: (wind as { speed: number }).speed, sources: [] };
  assertBetween('gust over mean', gustOverMean.value, 1, 3);
  const gust = mean.value * gustOverMean.value;
  assertWind('gust', gust);
  return withSources({ value: gust, sources: mean.sources }, ...gustOverMean.sources);
}

/** Pressure of a gust, Pa: what the speed itself says, with no terrain or height in it.
 * `airDensity` in kg/m³. RangeError for a wind that is none.
 * Source: Bernoulli, q = ½ ρ V². */
export function gustPressure(gust: number, airDensity: number): number {
  assertWind('gust', gust);
  return 0.5 * airDensity * gust ** 2;
}

/** The gust whose pressure this is, m/s; inverse of {@link gustPressure}. RangeError for a
 * pressure below 0.
 * Source: Bernoulli, q = ½ ρ V². */
export function gustOfPressure(pressure: number, airDensity: number): number {
  assertBetween('pressure', pressure, 0, 1e5, 'Pa');
  return Math.sqrt((2 * pressure) / airDensity);
}
