// Velocity pressure by ASCE 7-16, section 26.10. SI: metres, m/s, pascals.

import { ALTITUDE, assertBetween, assertWind, MOST_LENGTH } from '../doors.ts';
import { confirmed, type Provenance } from '../provenance.ts';

/** Surface exposure of ASCE 7, section 26.7: B suburb or wood, C open country, D flat and open, or
 * water. */
export type Exposure = 'B' | 'C' | 'D';

/** Terrain exposure constants: the exponent alpha and the gradient height, metres. */
export interface ExposureConstants {
  readonly alpha: number;
  readonly gradientHeight: number;
}

const FOOT = 0.3048;

/** Constants of Table 26.11-1. */
const EXPOSURES_7_16: Readonly<Record<Exposure, ExposureConstants>> = {
  B: { alpha: 7, gradientHeight: 1200 * FOOT },
  C: { alpha: 9.5, gradientHeight: 900 * FOOT },
  D: { alpha: 11.5, gradientHeight: 700 * FOOT },
};

/** Least height of Kz, metres: 15 ft. */
const LEAST_HEIGHT = 15 * FOOT;

/** The clauses of this file, read in worked values and reckoned again. */
export const VELOCITY_PRESSURE_7_16: Provenance = confirmed(
  'ASCE 7-16, 26.10 (Kz, Ke, velocity pressure)',
);

/** Exposure coefficient Kz at a height above the ground (m), as at 15 ft below that. The 0.70 floor
 * that Table 26.10-1 has for some low buildings in exposure B (from memory) is not applied.
 * Source: ASCE 7-16, Table 26.10-1, note 1. Range: to the gradient height. */
export const exposureCoefficient716 = (height: number, exposure: Exposure): number =>
  powerLaw(2.01, height, EXPOSURES_7_16[exposure]);

/** Kz by the power law with its leading coefficient. RangeError for a height below 0 or over 100 m.
 * Source: ASCE 7-16, Table 26.10-1, note 1 (coefficient 2.01); ASCE 7-22 has the form with 2.41. */
export function powerLaw(coefficient: number, height: number, of: ExposureConstants): number {
  assertBetween('height above ground', height, 0, MOST_LENGTH, 'm');
  const z = Math.max(height, LEAST_HEIGHT);
  return coefficient * (z / of.gradientHeight) ** (2 / of.alpha);
}

/** Ground elevation factor Ke for an altitude above the sea (m); 1 at the sea, less above. The
 * standard allows 1 everywhere. RangeError outside −450 to 6000 m.
 * Source: ASCE 7-16, Table 26.9-1, note 2. */
export function elevationFactor(altitude: number): number {
  assertBetween('altitude', altitude, ALTITUDE.least, ALTITUDE.most, 'm');
  return Math.exp(-0.000119 * altitude);
}

/** What velocity pressure asks: 3-second gust at 10 m in open country, m/s, and the factors. */
export interface VelocityPressureGiven {
  readonly gust: number;
  readonly kz: number;
  readonly kzt: number;
  readonly kd: number;
  readonly ke: number;
}

/** Velocity pressure q, Pa, directionality Kd included. RangeError for a wind that is none.
 * Source: ASCE 7-16, Eq. 26.10-1.si (0.613 Kz Kzt Kd Ke V²). */
export function velocityPressure716({ gust, kz, kzt, kd, ke }: VelocityPressureGiven): number {
  assertWind('gust', gust);
  return 0.613 * kz * kzt * kd * ke * gust ** 2;
}
