// Internal pressure by ASCE 7, section 26.13: ± GCpi by how open the shell is.

import { numberOf, type Override } from '../numbers.ts';
import type { Sourced } from '../provenance.ts';

/** How open a shell is: all panels in; a door or a gap; half built. */
export const ENCLOSURES = ['closed', 'open door', 'half open'] as const;

/** One of {@link ENCLOSURES}. */
export type Enclosure = (typeof ENCLOSURES)[number];

/** GCpi, to be taken with either sign: enclosed, partially enclosed, partially open.
 * Source: ASCE 7-16, Table 26.13-1. */
export function internalPressure716(
  enclosure: Enclosure,
  overrides: readonly Override[] = [],
): Sourced {
  if (enclosure === 'closed') return numberOf('asceInternalClosed', overrides);
  if (enclosure === 'open door') return numberOf('asceInternalDoor', overrides);
  return numberOf('asceInternalHalfOpen', overrides);
}

/** Whether openings make a building partially enclosed: those in one wall exceed all others by a
 * tenth, and exceed the smaller of 0.37 m² and 1 % of that wall, and the others are at most 20 % of
 * the rest of the surface. Areas in m²; `wall` the gross area of the wall with the openings.
 * Source: ASCE 7-16, 26.2 (building, partially enclosed), from memory. */
export function isPartiallyEnclosed(areas: {
  readonly openings: number;
  readonly wall: number;
  readonly otherOpenings: number;
  readonly otherSurface: number;
}): boolean {
  const { openings, wall, otherOpenings, otherSurface } = areas;
  for (const [name, value] of Object.entries(areas))
    if (!(value >= 0 && value < Infinity))
      throw new RangeError(`${name} is ${value} m², expected an area from 0`);
  return (
    openings > 1.1 * otherOpenings &&
    openings > Math.min(0.37, 0.01 * wall) &&
    otherOpenings <= 0.2 * otherSurface
  );
}
