// A side of a panel as a chord of the sphere and as the arc above it. Angles at the sphere's
// centre in radians, lengths in the unit of the radius.

import { asin } from '../math/angle.ts';

/** Central angle (0 … π) under a chord; a chord longer than the diameter counts as the diameter. */
export const chordToArc = (chord: number, radius: number): number => 2 * asin(chord / (2 * radius));

/** Chord under a central angle (0 … π); inverse of {@link chordToArc}. */
export const arcToChord = (arc: number, radius: number): number => 2 * radius * Math.sin(arc / 2);

/** Angle between a side and the line from either end to the sphere's centre: 90° less half the
 * central angle. Half a flange's bevel follows from it where the flange stands along the radius. */
export const axialAngle = (chord: number, radius: number): number =>
  Math.PI / 2 - asin(chord / (2 * radius));
