// A pressure law: what the wind does to the outside of a shell at each point of it.
//
// Frame of the shell: origin at the sphere's centre, z up. A point of the sphere is named by its
// unit direction n from the centre, which is the outward normal there. In the wind's own frame n has
//   u  towards the wind (1 at the windward point, −1 at the leeward one),
//   s  across it (to the left of one who faces the wind), z  up.
// A pressure coefficient is positive where the air presses on the outside, negative where it sucks.

import type { Vec3 } from '../math/vector.ts';
import { assertBetween, MOST_LENGTH } from './doors.ts';
import type { Provenance } from './provenance.ts';

/** Where a shell stands: its sphere, the level it stands on and what it stands above. */
export interface ShellForm {
  /** Radius of the sphere, m. */
  readonly radius: number;
  /** Height of the base in the shell's frame, m: −radius < baseZ < radius; 0 a half sphere, below 0
   * more than half. */
  readonly baseZ: number;
  /** Height of the base above the ground, m: a wall or a plinth under it. 0 unless told. */
  readonly baseHeight?: number;
}

/** A law as the pressure on a shell is reckoned by. */
export interface PressureLaw {
  /** What it is called on screens. */
  readonly name: string;
  /** External pressure coefficient at a point, in the wind's frame; u² + s² + z² = 1. Total over the
   * whole sphere, and so below the ground too. */
  readonly coefficient: (u: number, s: number, z: number) => number;
  /** What the velocity pressure is multiplied by besides (the gust effect factor); 1 for none. */
  readonly factor: number;
  readonly sources: readonly Provenance[];
}

/** Throws RangeError where a form is no shell: radius 0.1 to 100 m, base within the sphere, base
 * height 0 to 100 m.
 * Source: none, limits catch slips. */
export function assertForm({ radius, baseZ, baseHeight = 0 }: ShellForm): void {
  assertBetween('radius', radius, 0.1, MOST_LENGTH, 'm');
  if (!(baseZ > -radius && baseZ < radius))
    throw new RangeError(
      `base is at ${baseZ} m above the centre, expected more than ${-radius} and less than ${radius} m`,
    );
  assertBetween('height of the base above the ground', baseHeight, 0, MOST_LENGTH, 'm');
}

/** Height of the crown above the ground, m.
 * Source: geometry. */
export const crownHeight = ({ radius, baseZ, baseHeight = 0 }: ShellForm): number =>
  radius - baseZ + baseHeight;

/** Rise over the width at the base: 0.5 for a half sphere, more beyond it.
 * Source: geometry. */
export const riseRatio = ({ radius, baseZ }: ShellForm): number =>
  (radius - baseZ) / (2 * Math.sqrt(radius ** 2 - baseZ ** 2));

/** The point n in the frame of a wind from `windFrom` (radians from the datum, anticlockwise seen
 * from above): u towards the wind, s across it, z up.
 * Source: geometry. */
export function inWindFrame(n: Vec3, windFrom: number): Vec3 {
  const [c, s] = [Math.cos(windFrom), Math.sin(windFrom)];
  return [n[0] * c + n[1] * s, n[1] * c - n[0] * s, n[2]];
}

/** External pressure at a point of the shell, Pa, positive inward: velocity pressure × factor ×
 * coefficient. Of n only the direction counts. RangeError for a zero or infinite n.
 * Source: p = q c, every code's form. */
export function externalPressure(
  law: PressureLaw,
  velocityPressure: number,
  n: Vec3,
  windFrom: number,
): number {
  const length = Math.hypot(n[0], n[1], n[2]);
  if (!(length > 0 && length < Infinity))
    throw new RangeError(`direction is (${n.join(', ')}), expected a vector with a length`);
  const [u, s, z] = inWindFrame([n[0] / length, n[1] / length, n[2] / length], windFrom);
  return velocityPressure * law.factor * law.coefficient(u, s, z);
}
