// What a receiver makes of a dish and a wall: gain, beamwidth, loss by a rough surface, noise, and the
// change of gain over temperature. Powers as shares, temperatures in kelvin.

import { assertBetween } from '../loads/doors.ts';
import { assertFrequency, LIGHT_SPEED, lossDb } from './wave.ts';

/** Temperature that things on the ground are taken at, kelvin (IEEE standard noise temperature). */
export const WARM = 290;

/** Largest dish that is reckoned with, metres. */
export const MOST_DISH = 100;

/** Gain of a dish (a ratio): η (π D / λ)². `diameter` metres, `efficiency` 0 to 1. */
export function dishGain(diameter: number, frequency: number, efficiency: number): number {
  assertFrequency(frequency);
  assertBetween('dish diameter', diameter, 0.05, MOST_DISH, 'm');
  assertBetween('efficiency', efficiency, 0, 1);
  return efficiency * ((Math.PI * diameter * frequency) / LIGHT_SPEED) ** 2;
}

/** Full width of the beam at half power, degrees: 70 λ / D, common practice for a tapered dish. */
export const beamWidthDeg = (diameter: number, frequency: number): number =>
  (70 * LIGHT_SPEED) / (frequency * diameter);

/** Share of the gain that a surface keeps whose path errors are `rms` metres (root mean square, of the
 * surface): exp(−(4 π ε / λ)²). Ruze, Proc. IEEE 54 (1966) 633; for errors small against a wave. */
export const ruze = (rms: number, frequency: number): number =>
  Math.exp(-(((4 * Math.PI * rms * frequency) / LIGHT_SPEED) ** 2));

/** Share of the power on axis that is left where the share `blocked` of an evenly lit aperture is
 * shadowed: (1 − b)². Twice, in decibels, what the missing power alone would say. */
export const leftBehindBlockage = (blocked: number): number => (1 - blocked) ** 2;

/** Noise at the output of a pure attenuator that lets the share `kept` through: T (1 − kept), kelvin. */
export const attenuatorNoise = (kept: number, warm = WARM): number => warm * (1 - kept);

/** A receiver's signal to noise with a wall before it, over that without. */
export interface WallPenalty {
  /** A ratio, 1 or less where the wall is warmer than the system. */
  readonly ratio: number;
  /** Decibels, negative: worse. */
  readonly db: number;
}

/** The change of gain over temperature where the share `kept` of the signal comes through and `added`
 * kelvin of noise are added to a system of `system` kelvin: what the system's own noise was before stays
 * as it is, so that walls cost most where the receiver is quietest. */
export function wallPenalty(kept: number, added: number, system: number): WallPenalty {
  assertBetween('share let through', kept, 0, 1);
  assertBetween('added noise', added, 0, 1000, 'K');
  assertBetween('system temperature', system, 1, 1e5, 'K');
  const ratio = (kept * system) / (system + added);
  return { ratio, db: -lossDb(ratio) };
}

/** Smallest change of temperature that shows, kelvin: T / √(B τ); bandwidth Hz, time seconds. */
export const leastSeen = (system: number, bandwidth: number, time: number): number =>
  system / Math.sqrt(bandwidth * time);
