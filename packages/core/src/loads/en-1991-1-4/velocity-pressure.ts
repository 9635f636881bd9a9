// Peak velocity pressure by EN 1991-1-4:2005, section 4, with the recommended values. SI: metres,
// m/s, pascals.

import { assertBetween, assertWind, MOST_LENGTH } from '../doors.ts';
import { confirmed, type Provenance } from '../provenance.ts';

/** Terrain category of Table 4.1: 0 sea, I lake or flat, II open country, III suburb or wood, IV
 * town. */
export type TerrainCategory = '0' | 'I' | 'II' | 'III' | 'IV';

/** Roughness length and least height, metres. */
export interface Roughness {
  readonly length: number;
  readonly leastHeight: number;
}

/** Table 4.1. */
const TERRAINS: Readonly<Record<TerrainCategory, Roughness>> = {
  '0': { length: 0.003, leastHeight: 1 },
  I: { length: 0.01, leastHeight: 1 },
  II: { length: 0.05, leastHeight: 2 },
  III: { length: 0.3, leastHeight: 5 },
  IV: { length: 1, leastHeight: 10 },
};

/** The clauses of this file, read in worked examples and reckoned again. */
export const PEAK_PRESSURE: Provenance = confirmed(
  'EN 1991-1-4:2005, 4.3 to 4.5 (peak velocity pressure)',
);

/** Terrain factor kr.
 * Source: EN 1991-1-4:2005, Eq. 4.5. */
export const terrainFactor = (category: TerrainCategory): number =>
  0.19 * (TERRAINS[category].length / TERRAINS.II.length) ** 0.07;

/** Roughness factor cr at a height above the ground (m), as at the least height below that.
 * RangeError for a height below 0 or over 100 m.
 * Source: EN 1991-1-4:2005, Eq. 4.4. */
export const roughnessFactor = (height: number, category: TerrainCategory): number =>
  terrainFactor(category) * logHeight(height, category);

/** Turbulence intensity Iv at a height above the ground (m); turbulence factor kI 1.
 * Source: EN 1991-1-4:2005, Eq. 4.7. */
export const turbulence = (height: number, category: TerrainCategory, orography: number): number =>
  1 / (orography * logHeight(height, category));

function logHeight(height: number, category: TerrainCategory): number {
  assertBetween('height above ground', height, 0, MOST_LENGTH, 'm');
  const { length, leastHeight } = TERRAINS[category];
  return Math.log(Math.max(height, leastHeight) / length);
}

/** What peak velocity pressure asks: basic wind (10-minute mean at 10 m in open country), m/s. */
export interface PeakPressureGiven {
  readonly basicWind: number;
  readonly category: TerrainCategory;
  /** Above the ground, metres. */
  readonly height: number;
  /** co: 1 on flat ground. */
  readonly orography: number;
  /** kg/m³; 1.25 recommended. */
  readonly airDensity: number;
}

/** Mean wind vm at a height, m/s.
 * Source: EN 1991-1-4:2005, Eq. 4.3. */
export const meanWind = (given: Omit<PeakPressureGiven, 'airDensity'>): number =>
  roughnessFactor(given.height, given.category) * given.orography * given.basicWind;

/** Peak velocity pressure qp, Pa. RangeError for a wind that is none.
 * Source: EN 1991-1-4:2005, Eq. 4.8. */
export function peakVelocityPressure(given: PeakPressureGiven): number {
  assertWind('basic wind', given.basicWind);
  const gusts = 1 + 7 * turbulence(given.height, given.category, given.orography);
  return gusts * 0.5 * given.airDensity * meanWind(given) ** 2;
}
