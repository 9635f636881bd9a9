// Beaufort force: a mean wind read from smoke, flags and trees.

import { assertBetween } from '../doors.ts';
import { confirmed, fromMemory, type Provenance } from '../provenance.ts';

/** One force: its name, the highest mean wind of its band, m/s, and what is seen on land. */
export interface BeaufortForce {
  readonly force: number;
  readonly name: string;
  /** Upper edge of the band of means, m/s; force 12 has none and is given 36.9 (old force 12). */
  readonly to: number;
  readonly onLand: string;
  readonly source: Provenance;
}

const BANDS: readonly (readonly [string, number, string])[] = [
  ['calm', 0.2, 'smoke rises straight up'],
  ['light air', 1.5, 'smoke drifts, vanes do not turn'],
  ['light breeze', 3.3, 'felt on the face, leaves rustle'],
  ['gentle breeze', 5.4, 'leaves and twigs keep moving, a light flag stands out'],
  ['moderate breeze', 7.9, 'dust and paper fly, small branches move'],
  ['fresh breeze', 10.7, 'small trees in leaf sway'],
  ['strong breeze', 13.8, 'large branches move, wires whistle'],
  ['near gale', 17.1, 'whole trees move, walking is hard'],
  ['gale', 20.7, 'twigs break off'],
  ['strong gale', 24.4, 'slight damage to buildings'],
  ['storm', 28.4, 'trees are uprooted'],
  ['violent storm', 32.6, 'damage all about'],
  ['hurricane', 36.9, 'devastation'],
];

const sourceOf = (force: number): Provenance =>
  (force >= 3 && force <= 8 ? confirmed : fromMemory)(
    `Beaufort scale, mean wind of force ${force} in m/s`,
  );

/** The scale, force 0 to 12. */
export const BEAUFORT: readonly BeaufortForce[] = BANDS.map(([name, to, onLand], force) => ({
  force,
  name,
  to,
  onLand,
  source: sourceOf(force),
}));

/** The force with its band. RangeError where it is no whole number from 0 to 12.
 * Source: Beaufort scale as the weather services print it. */
export function beaufortForce(force: number): BeaufortForce {
  assertBetween('Beaufort force', force, 0, 12);
  const found = BEAUFORT[force];
  if (!found) throw new RangeError(`Beaufort force is ${force}, expected a whole number 0 to 12`);
  return found;
}

/** The middle of a force's band, m/s.
 * Source: V = 0.836 B^1.5, from memory. */
export function beaufortMiddle(force: number): number {
  assertBetween('Beaufort force', force, 0, 12);
  return 0.836 * force ** 1.5;
}
