// The peak pressure of the wind at a height above the ground, by the code that the lead picks: what
// a pressure coefficient is multiplied by. One design wind and one word for the terrain serve every
// code, so that "worst of all" compares like with like.

import {
  type Exposure,
  elevationFactor,
  exposureCoefficient716,
  VELOCITY_PRESSURE_7_16,
  velocityPressure716,
} from './asce-7-16/velocity-pressure.ts';
import {
  directedPressure722,
  exposureCoefficient722,
  velocityPressure722,
  velocityPressureSources722,
} from './asce-7-22/velocity-pressure.ts';
import { assertBetween, assertWind } from './doors.ts';
import {
  EXECUTION_PERIODS,
  executionReturnPeriod,
  PROBABILITY,
  probabilityFactor,
} from './en-1991-1-4/probability.ts';
import {
  PEAK_PRESSURE,
  peakVelocityPressure,
  type TerrainCategory,
} from './en-1991-1-4/velocity-pressure.ts';
import { numberOf, type Override } from './numbers.ts';
import {
  commonPractice,
  mergeSources,
  type Provenance,
  productOf,
  reckonedFrom,
  type Sourced,
  withSources,
} from './provenance.ts';

/** A code for velocity pressure. */
export const WIND_CODES = ['asce 7-16', 'asce 7-22', 'en 1991-1-4'] as const;

/** One of {@link WIND_CODES}. */
export type WindCode = (typeof WIND_CODES)[number];

/** The land around, roughest last. */
export const TERRAIN_WORDS = ['sea', 'lake', 'open', 'suburb', 'town'] as const;

/** One of {@link TERRAIN_WORDS}. */
export type Terrain = (typeof TERRAIN_WORDS)[number];

/** The terrain as each family of codes names it. */
const TERRAIN_NAMES: Readonly<
  Record<Terrain, { readonly asce: Exposure; readonly en: TerrainCategory }>
> = {
  sea: { asce: 'D', en: '0' },
  lake: { asce: 'D', en: 'I' },
  open: { asce: 'C', en: 'II' },
  suburb: { asce: 'B', en: 'III' },
  town: { asce: 'B', en: 'IV' },
};

const TERRAIN_MATCH: Provenance = commonPractice(
  'one terrain word for ASCE exposure and EN category',
);

/** The wind to design for, at 10 m in open country, m/s: a 3-second gust (as ASCE 7 maps) or a
 * 10-minute mean (as EN 1991-1-4 maps). Its return period is that of the map it was read from: it
 * is not changed from one code's to another's. */
export interface DesignWind {
  readonly as: 'gust' | 'ten-minute mean';
  readonly speed: number;
}

/** Where the shell stands. */
export interface Site {
  readonly terrain: Terrain;
  /** Of the ground above the sea, m. */
  readonly altitude: number;
  /** How long the shell, or this stage, stands so, days; absent or null: for good. */
  readonly daysStanding?: number | null;
}

/** Peak pressure at a height above the ground (m) by a code, Pa. RangeError for a wind, height or
 * altitude that is none. ASCE 7: its velocity pressure with directionality; the map's gust, or 1.43
 * times the mean. EN 1991-1-4: qp with cdir and cseason 1; the map's mean, or the gust over 1.43.
 * A short exposure lowers the wind by the code's own practice.
 * Source: the clauses of each code's folder. */
export function peakPressure(
  code: WindCode,
  wind: DesignWind,
  site: Site,
  height: number,
  overrides: readonly Override[] = [],
): Sourced {
  const speed = codeWind(code, wind, site, overrides);
  const terrain = TERRAIN_NAMES[site.terrain];
  const own =
    code === 'en 1991-1-4'
      ? enPeak(speed, terrain.en, height, overrides)
      : ascePeak(code, speed, terrain.asce, height, site.altitude, overrides);
  return withSources(own, TERRAIN_MATCH);
}

/** The wind that a code's formula takes, m/s: gust or mean as it asks, lowered for a short exposure.
 * RangeError for a wind that is none or days that are none.
 * Source: ASCE 37 and EN 1991-1-6 for short exposures; see the rows of the table for the rest. */
export function codeWind(
  code: WindCode,
  wind: DesignWind,
  site: Pick<Site, 'daysStanding'>,
  overrides: readonly Override[] = [],
): Sourced {
  assertWind(wind.as === 'gust' ? 'design gust' : 'design mean wind', wind.speed);
  const asks = code === 'en 1991-1-4' ? 'ten-minute mean' : 'gust';
  const given: Sourced = { value: wind.speed, sources: [] };
  return productOf(
    wind.as === asks ? given : converted(given, asks, overrides),
    exposureFactor(code, site.daysStanding ?? null, overrides),
  );
}

function converted(wind: Sourced, to: DesignWind['as'], overrides: readonly Override[]): Sourced {
  const ratio = numberOf('gustOverTenMinutes', overrides);
  assertBetween('gust over 10-minute mean', ratio.value, 1, 3);
  return reckonedFrom(
    to === 'gust' ? wind.value * ratio.value : wind.value / ratio.value,
    wind,
    ratio,
  );
}

const SIX_WEEKS = 42;

function exposureFactor(
  code: WindCode,
  days: number | null,
  overrides: readonly Override[],
): Sourced {
  if (days === null) return { value: 1, sources: [] };
  const years = executionReturnPeriod(days);
  if (code === 'en 1991-1-4')
    return { value: probabilityFactor(years), sources: [PROBABILITY, EXECUTION_PERIODS] };
  return days < SIX_WEEKS ? numberOf('shortExposureSpeed', overrides) : { value: 1, sources: [] };
}

function ascePeak(
  code: 'asce 7-16' | 'asce 7-22',
  gust: Sourced,
  exposure: Exposure,
  height: number,
  altitude: number,
  overrides: readonly Override[],
): Sourced {
  const kzt = numberOf('topography', overrides);
  const kd = numberOf('asceDirectionality', overrides);
  const factors = { gust: gust.value, kzt: kzt.value, ke: elevationFactor(altitude) };
  const newer = code === 'asce 7-22';
  const pressure = newer
    ? directedPressure722(
        velocityPressure722({ ...factors, kz: exposureCoefficient722(height, exposure) }),
        kd.value,
      )
    : velocityPressure716({
        ...factors,
        kd: kd.value,
        kz: exposureCoefficient716(height, exposure),
      });
  const clauses = newer ? velocityPressureSources722(exposure) : [VELOCITY_PRESSURE_7_16];
  return {
    value: pressure,
    sources: mergeSources(clauses, gust.sources, kzt.sources, kd.sources),
  };
}

function enPeak(
  basicWind: Sourced,
  category: TerrainCategory,
  height: number,
  overrides: readonly Override[],
): Sourced {
  const density = numberOf('airDensity', overrides);
  const topography = numberOf('topography', overrides);
  const structural = numberOf('enStructural', overrides);
  const pressure = peakVelocityPressure({
    basicWind: basicWind.value,
    category,
    height,
    orography: Math.sqrt(topography.value),
    airDensity: density.value,
  });
  const parts = [basicWind, topography, density, structural];
  return withSources(reckonedFrom(pressure * structural.value, ...parts), PEAK_PRESSURE);
}
