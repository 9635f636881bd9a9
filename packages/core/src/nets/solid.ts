// The three regular solids with triangular faces, on the unit sphere: a corner at the zenith,
// z up, the next corner in the half plane of x > 0. Faces run anticlockwise seen from outside.

import type { Vec3 } from '../math/vector.ts';

/** A solid that named nets subdivide. */
export type SolidName = 'icosahedron' | 'octahedron' | 'tetrahedron';

/** Corners on the unit sphere and triangular faces of them. */
export interface Solid {
  readonly corners: readonly Vec3[];
  readonly faces: readonly (readonly [number, number, number])[];
}

/** The solid of this name. */
export const solidOf = (name: SolidName): Solid => solids[name];

const at = (z: number, azimuthDeg: number): Vec3 => {
  const r = Math.sqrt(1 - z * z);
  const azimuth = (azimuthDeg * Math.PI) / 180;
  return [r * Math.cos(azimuth), r * Math.sin(azimuth), z];
};

const ring = (z: number, count: number, first: number): Vec3[] =>
  Array.from({ length: count }, (_, i) => at(z, first + (360 * i) / count));

const up: Vec3 = [0, 0, 1];
const down: Vec3 = [0, 0, -1];

// Icosahedron: 0 zenith, 1–5 upper ring, 6–10 lower ring half a step on, 11 nadir.
const icosahedron: Solid = {
  corners: [up, ...ring(1 / Math.sqrt(5), 5, 0), ...ring(-1 / Math.sqrt(5), 5, 36), down],
  faces: [0, 1, 2, 3, 4].flatMap((i): [number, number, number][] => {
    const next = (i + 1) % 5;
    return [
      [0, 1 + i, 1 + next],
      [1 + i, 6 + i, 1 + next],
      [6 + i, 6 + next, 1 + next],
      [11, 6 + next, 6 + i],
    ];
  }),
};

// Octahedron: 0 zenith, 1–4 equator, 5 nadir; exact coordinates.
const octahedron: Solid = {
  corners: [up, [1, 0, 0], [0, 1, 0], [-1, 0, 0], [0, -1, 0], down],
  faces: [0, 1, 2, 3].flatMap((i): [number, number, number][] => [
    [0, 1 + i, 1 + ((i + 1) % 4)],
    [5, 1 + ((i + 1) % 4), 1 + i],
  ]),
};

// Tetrahedron: 0 zenith, 1–3 the ring below.
const tetrahedron: Solid = {
  corners: [up, ...ring(-1 / 3, 3, 0)],
  faces: [
    [0, 1, 2],
    [0, 2, 3],
    [0, 3, 1],
    [1, 3, 2],
  ],
};

const solids: Record<SolidName, Solid> = { icosahedron, octahedron, tetrahedron };
