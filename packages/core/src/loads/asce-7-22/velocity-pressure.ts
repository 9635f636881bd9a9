// Velocity pressure by ASCE 7-22, section 26.10: its own exposure constants, and directionality
// moved from the velocity pressure to the pressure on the surface. SI: metres, m/s, pascals.

import {
  type Exposure,
  type ExposureConstants,
  powerLaw,
  type VelocityPressureGiven,
} from '../asce-7-16/velocity-pressure.ts';
import { assertWind } from '../doors.ts';
import { confirmed, fromMemory, type Provenance } from '../provenance.ts';

const FOOT = 0.3048;

/** Constants of Table 26.11-1. Exposure B's exponent 7.5 is from memory: it gives the table's
 * 0.57 at 15 ft, which 7.0 does not. */
const EXPOSURES_7_22: Readonly<Record<Exposure, ExposureConstants>> = {
  B: { alpha: 7.5, gradientHeight: 3280 * FOOT },
  C: { alpha: 9.8, gradientHeight: 2460 * FOOT },
  D: { alpha: 11.5, gradientHeight: 1935 * FOOT },
};

/** The sources of Kz and q in an exposure.
 * Source: ASCE 7-22, 26.10; what is confirmed of it. */
export const velocityPressureSources722 = (exposure: Exposure): Provenance[] => [
  ...(exposure === 'B'
    ? [fromMemory('ASCE 7-22, Table 26.11-1, exposure B: alpha 7.5')]
    : [confirmed('ASCE 7-22, 26.10 (Kz), exposures C and D')]),
  fromMemory('ASCE 7-22, 26.10 and 27.3: Kd moved from q to the pressure'),
];

/** Exposure coefficient Kz at a height above the ground (m), as at 15 ft below that.
 * Source: ASCE 7-22, Table 26.10-1, note 1 (2.41 (z/zg)^(2/alpha)). */
export const exposureCoefficient722 = (height: number, exposure: Exposure): number =>
  powerLaw(2.41, height, EXPOSURES_7_22[exposure]);

/** Velocity pressure q, Pa, without directionality. RangeError for a wind that is none.
 * Source: ASCE 7-22, Eq. 26.10-1.si (0.613 Kz Kzt Ke V²). */
export function velocityPressure722(given: Omit<VelocityPressureGiven, 'kd'>): number {
  const { gust, kz, kzt, ke } = given;
  assertWind('gust', gust);
  return 0.613 * kz * kzt * ke * gust ** 2;
}

/** Velocity pressure with directionality, Pa: what the pressure on a surface is a multiple of, and
 * the same product as in ASCE 7-16.
 * Source: ASCE 7-22, Eq. 27.3-1 (p = q Kd G Cp …), from memory. */
export const directedPressure722 = (velocityPressure: number, kd: number): number =>
  velocityPressure * kd;
