// A straight beam by six natural strains: lengthening, twist, and at both ends the rotation against
// the chord about its axes z and y; natural forces are pull, torque and the end moments. Flexibility
// by Bernoulli, with shear strain (S. P. Timoshenko) and springs at the ends added where given.
//
//        φ₁ ⌒        ⌒ φ₂        v across, x along; φ = θ − (v₂ − v₁)/L
//      ●───────────────●
//      1       L       2

import {
  cross,
  distance,
  dot,
  norm,
  normalize,
  scale,
  subtract,
  type Vec3,
} from '../../math/vector.ts';
import type { Beam, Natural } from './element.ts';

/** Axes of a beam: x along it, y as told, z square to both. Throws RangeError where its ends are one
 * point or axisY lies along it. */
export function beamAxes({ nodes, axisY }: Beam, a: Vec3, b: Vec3): readonly [Vec3, Vec3, Vec3] {
  if (!(distance(a, b) > 0))
    throw new RangeError(`nodes ${nodes[0]} and ${nodes[1]} of a beam stand at one point`);
  const x = normalize(subtract(b, a));
  const across = subtract(axisY, scale(x, dot(axisY, x)));
  if (!(norm(across) > 1e-9 * norm(axisY)))
    throw new RangeError(`axis y of the beam from node ${nodes[0]} to ${nodes[1]} lies along it`);
  const y = normalize(across);
  return [x, y, cross(x, y)];
}

/** A beam between two points by its natural strains. */
export function beamNatural(beam: Beam, a: Vec3, b: Vec3): Natural {
  const [x, y, z] = beamAxes(beam, a, b);
  const length = distance(a, b);
  const rows = new Float64Array(72);
  const put = (row: number, at: number, by: Vec3, times: number): void => {
    for (let k = 0; k < 3; k++) rows[row * 12 + at + k] += times * by[k];
  };
  put(0, 0, x, -1);
  put(0, 6, x, 1);
  put(1, 3, x, -1);
  put(1, 9, x, 1);
  for (const [row, at] of [
    [2, 3],
    [3, 9],
  ]) {
    put(row, at, z, 1);
    put(row, 0, y, 1 / length);
    put(row, 6, y, -1 / length);
    put(row + 2, at, y, 1);
    put(row + 2, 0, z, -1 / length);
    put(row + 2, 6, z, 1 / length);
  }
  return { width: 12, rows, moduli: beamModuli(beam, length) };
}

function beamModuli({ section, young, shear, ends }: Beam, length: number): Float64Array {
  const moduli = new Float64Array(36);
  moduli[0] = (young * section.area) / length;
  moduli[7] = (shear * section.torsion) / length;
  const z = bending(length, young * section.iz, shear * (section.shearY ?? Infinity), [
    ends?.[0].z ?? Infinity,
    ends?.[1].z ?? Infinity,
  ]);
  const y = bending(length, young * section.iy, shear * (section.shearZ ?? Infinity), [
    ends?.[0].y ?? Infinity,
    ends?.[1].y ?? Infinity,
  ]);
  [z, y].forEach(([first, both, second], plane) => {
    const at = 7 * (2 + 2 * plane);
    moduli[at] = first;
    moduli[at + 1] = moduli[at + 6] = both;
    moduli[at + 7] = second;
  });
  return moduli;
}

/** End moments by end rotations against the chord: the inverse of the flexibility. */
function bending(
  length: number,
  ei: number,
  shearStiffness: number,
  joints: readonly [number, number],
): readonly [first: number, both: number, second: number] {
  const byShear = 1 / (shearStiffness * length);
  const own = length / (3 * ei) + byShear;
  const other = -length / (6 * ei) + byShear;
  if (joints[0] === 0 && joints[1] === 0) return [0, 0, 0];
  if (joints[0] === 0) return [0, 0, 1 / (own + 1 / joints[1])];
  if (joints[1] === 0) return [1 / (own + 1 / joints[0]), 0, 0];
  const f1 = own + 1 / joints[0];
  const f2 = own + 1 / joints[1];
  const determinant = f1 * f2 - other * other;
  return [f2 / determinant, -other / determinant, f1 / determinant];
}

/** What a pull in a beam does to its stiffness across: 12 × 12, by rows, for a pull of 1 newton; by
 * the cubic shape of a beam held at both ends (J. S. Przemieniecki, Theory of Matrix Structural
 * Analysis, 1968, ch. 15, from memory; tests hold it to Euler's column). */
export function beamGeometric(beam: Beam, a: Vec3, b: Vec3): Float64Array {
  const [, y, z] = beamAxes(beam, a, b);
  const l = distance(a, b);
  // Of (v₁, θ₁, v₂, θ₂) with θ = dv/dx.
  const shape = [
    [6 / (5 * l), 0.1, -6 / (5 * l), 0.1],
    [0.1, (2 * l) / 15, -0.1, -l / 30],
    [-6 / (5 * l), -0.1, 6 / (5 * l), -0.1],
    [0.1, -l / 30, -0.1, (2 * l) / 15],
  ];
  const block = new Float64Array(144);
  for (const [across, about] of [
    [y, z],
    [z, scale(y, -1)],
  ] as const) {
    const directions = [across, about, across, about];
    for (let p = 0; p < 4; p++)
      for (let q = 0; q < 4; q++)
        for (let i = 0; i < 3; i++)
          for (let j = 0; j < 3; j++)
            block[(3 * p + i) * 12 + 3 * q + j] +=
              shape[p][q] * directions[p][i] * directions[q][j];
  }
  return block;
}
