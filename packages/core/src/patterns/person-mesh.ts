// A person to stand beside the model: a turned figure like a skittle, of a given height. Millimetres,
// feet at z = 0, upright about the z axis.

import type { Mesh } from './mesh.ts';

/** Height of the person, metres: about an adult's, our own round number. */
export const PERSON = 1.75;

/** Radius and height of the rings, over the whole height: base, waist, shoulders, neck, head. */
const profile = [
  [0.11, 0],
  [0.09, 0.3],
  [0.1, 0.5],
  [0.085, 0.62],
  [0.125, 0.78],
  [0.1, 0.82],
  [0.04, 0.845],
  [0.04, 0.87],
  [0.065, 0.9],
  [0.07, 0.94],
  [0.05, 0.98],
] as const;
const AROUND = 24;

/** A figure `height` millimetres tall. */
export function personMesh(height: number): Mesh {
  const points: number[] = [0, 0, 0];
  for (const [r, z] of profile)
    for (let i = 0; i < AROUND; i++) {
      const angle = (2 * Math.PI * i) / AROUND;
      points.push(r * height * Math.cos(angle), r * height * Math.sin(angle), z * height);
    }
  const top = points.length / 3;
  points.push(0, 0, height);
  const at = (ring: number, i: number): number => 1 + ring * AROUND + (i % AROUND);
  const triangles: number[] = [];
  for (let i = 0; i < AROUND; i++) {
    triangles.push(0, at(0, i + 1), at(0, i));
    for (let ring = 0; ring + 1 < profile.length; ring++) {
      const [a, b, c, d] = [at(ring, i), at(ring, i + 1), at(ring + 1, i + 1), at(ring + 1, i)];
      triangles.push(a, b, c, a, c, d);
    }
    triangles.push(at(profile.length - 1, i), at(profile.length - 1, i + 1), top);
  }
  return { points: Float64Array.from(points), triangles: Int32Array.from(triangles) };
}
