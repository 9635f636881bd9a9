// Which hand the panel under the tape is, as soon as its three sides are there.

import { handOf } from '@shellraise/core';

/** Which hand a half-measured row is. */
export type HandFound = 'L' | 'R' | 'none' | 'face' | null;

/** Sides nearer to each other than this are taken as alike, metres: three tape errors and a bit. */
const ALIKE = 0.004;

/** The hand of sides as measured from a face; null while they are not whole. */
export function handUnder(sides: readonly (number | null)[], face: string): HandFound {
  const whole = sides.filter((side) => side !== null);
  if (whole.length !== sides.length || whole.length !== 3) return null;
  const sorted = [...whole].sort((a, b) => a - b) as [number, number, number];
  if (sorted[1] - sorted[0] < ALIKE || sorted[2] - sorted[1] < ALIKE) return 'none';
  if (face === 'unknown') return 'face';
  return handOf(face === 'inside' ? [...whole].reverse() : whole);
}
