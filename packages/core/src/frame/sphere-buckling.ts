// Buckling pressure of smooth spheres and of fine single-layer grids, and how far real shells stay
// below it. Metres, pascals.

import { assertNumber } from '../math/doors.ts';

/** Pressure at which a perfect thin sphere buckles, pascals: 2 E/√(3 (1 − ν²)) (t/R)² (R. Zoelly,
 * thesis, Zürich 1915). */
export function sphereClassicalPressure(
  young: number,
  poisson: number,
  thickness: number,
  radius: number,
): number {
  assertNumber('the thickness', thickness, 0);
  assertNumber('the radius', radius, 0);
  return (2 * young * (thickness / radius) ** 2) / Math.sqrt(3 * (1 - poisson * poisson));
}

/** Part of the classical pressure to design a clamped spherical cap for, 0.14 + 3.2/λ² with
 * λ = [12 (1 − ν²)]^¼ √(R/t) 2 sin(φ/2), φ half the angle the cap takes up at the centre, radians
 * (NASA SP-8032, Buckling of Thin-Walled Doubly Curved Shells, 1969, eq. 4). Throws RangeError where λ
 * is not over 2, for which it holds. */
export function capKnockdown(
  poisson: number,
  thickness: number,
  radius: number,
  halfAngle: number,
): number {
  const lambda =
    (12 * (1 - poisson * poisson)) ** 0.25 *
    Math.sqrt(radius / thickness) *
    2 *
    Math.sin(halfAngle / 2);
  if (!(lambda > 2)) throw new RangeError(`λ is ${lambda}, the rule holds above 2`);
  return 0.14 + 3.2 / (lambda * lambda);
}

/** Pressure at which a fine triangular grid of stiff-jointed beams on a sphere buckles as a whole,
 * pascals: 2√6 E A r/(L R²), r the radius of gyration out of the surface (as a sphere of equivalent
 * thickness 2√3 r with ν = 1/3, torsion neglected; own derivation after D. T. Wright, ASCE J. Struct.
 * Div. 91 (1965)). Times 0.3 for real ones (K. P. Buchert 1965 by von Kármán and Tsien; from
 * memory). */
export function gridClassicalPressure(
  young: number,
  area: number,
  gyration: number,
  length: number,
  radius: number,
): number {
  assertNumber('the length of the beams', length, 0);
  return (2 * Math.sqrt(6) * young * area * gyration) / (length * radius * radius);
}
