// The mass matrix of a structure, from the densities of its elements and masses added at its nodes.

import { addBlockInto, type SymmetricMatrix } from '../math/sparse/symmetric.ts';
import { distance, pointAt, type Vec3 } from '../math/vector.ts';
import { assembled } from './assemble.ts';
import { beamAxes } from './elements/beam.ts';
import type { Bar, Beam, Element, Facet, Membrane } from './elements/element.ts';
import { flatTriangle } from './elements/triangle.ts';
import type { Numbering } from './numbering.ts';
import type { Structure } from './structure.ts';

/** How an element's mass is shared among its nodes. 'consistent': by the shapes it moves in; 'lumped':
 * equally, with none on rotations; 'cubic': like 'consistent', but bars move across as beams do. */
export type MassSharing = 'consistent' | 'lumped' | 'cubic';

/** The mass matrix, kilograms (kilogram square metres on rotations). `added`: masses at nodes,
 * kilograms, in the order of the nodes. */
export function massMatrix(
  structure: Structure,
  numbering: Numbering,
  sharing: MassSharing = 'consistent',
  added: ArrayLike<number> = [],
): SymmetricMatrix {
  const matrix = assembled(structure, numbering, (element) => block(structure, element, sharing));
  for (let node = 0; node < added.length; node++)
    for (let k = 0; k < 3; k++)
      addBlockInto(matrix.value, matrix, [numbering.unknown[6 * node + k]], [added[node]]);
  return matrix;
}

function block({ nodes }: Structure, element: Element, sharing: MassSharing): Float64Array | null {
  const at = (k: number): Vec3 => pointAt(nodes, element.nodes[k] as number);
  switch (element.kind) {
    case 'bar':
      return barMass(element, at(0), at(1), sharing);
    case 'beam':
      return beamMass(element, at(0), at(1), sharing);
    case 'membrane':
    case 'facet':
      return triangleMass(element, [at(0), at(1), at(2)], sharing);
    case 'spring':
    case 'prop':
    case 'joint':
      return null;
  }
}

/** Share of a bar's mass on its own node and on the other, along it and across. */
const BAR_SHARES = {
  consistent: { along: [1 / 3, 1 / 6], across: [1 / 3, 1 / 6] },
  lumped: { along: [1 / 2, 0], across: [1 / 2, 0] },
  cubic: { along: [1 / 3, 1 / 6], across: [13 / 35, 9 / 70] },
} as const;

function barMass({ area, density = 0 }: Bar, a: Vec3, b: Vec3, sharing: MassSharing): Float64Array {
  const length = distance(a, b);
  const mass = density * area * length;
  const { along, across } = BAR_SHARES[sharing];
  const matrix = new Float64Array(36);
  const e = [0, 1, 2].map((k) => (b[k] - a[k]) / length);
  for (let p = 0; p < 2; p++)
    for (let q = 0; q < 2; q++) {
      const which = p === q ? 0 : 1;
      for (let i = 0; i < 3; i++)
        for (let j = 0; j < 3; j++)
          matrix[(3 * p + i) * 6 + 3 * q + j] =
            mass * ((along[which] - across[which]) * e[i] * e[j] + (i === j ? across[which] : 0));
    }
  return matrix;
}

function beamMass(beam: Beam, a: Vec3, b: Vec3, sharing: MassSharing): Float64Array {
  const { section, density = 0 } = beam;
  const l = distance(a, b);
  const mass = density * section.area * l;
  const matrix = new Float64Array(144);
  if (sharing === 'lumped') {
    for (const i of [0, 1, 2, 6, 7, 8]) matrix[i * 13] = mass / 2;
    return matrix;
  }
  const [x, y, z] = beamAxes(beam, a, b);
  const put = (p: number, q: number, u: Vec3, v: Vec3, value: number): void => {
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < 3; j++) matrix[(3 * p + i) * 12 + 3 * q + j] += value * u[i] * v[j];
  };
  const polar = density * (section.iy + section.iz) * l;
  for (const [of, share] of [
    [0, mass],
    [1, polar],
  ])
    for (const p of [0, 2])
      for (const q of [0, 2]) put(p + of, q + of, x, x, share * (p === q ? 1 / 3 : 1 / 6));
  const shape = [
    [156, 22 * l, 54, -13 * l],
    [22 * l, 4 * l * l, 13 * l, -3 * l * l],
    [54, 13 * l, 156, -22 * l],
    [-13 * l, -3 * l * l, -22 * l, 4 * l * l],
  ];
  const minusY: Vec3 = [-y[0], -y[1], -y[2]];
  for (const [across, about] of [
    [y, z],
    [z, minusY],
  ] as const) {
    const directions = [across, about, across, about];
    for (let p = 0; p < 4; p++)
      for (let q = 0; q < 4; q++)
        put(p, q, directions[p], directions[q], (mass * shape[p][q]) / 420);
  }
  return matrix;
}

function triangleMass(
  element: Membrane | Facet,
  points: readonly [Vec3, Vec3, Vec3],
  sharing: MassSharing,
): Float64Array {
  const per = element.kind === 'facet' ? 6 : 3;
  const mass =
    (element.density ?? 0) * element.thickness * flatTriangle(element.nodes, points).area;
  const matrix = new Float64Array(9 * per * per);
  for (let p = 0; p < 3; p++)
    for (let q = 0; q < 3; q++) {
      const share = sharing === 'lumped' ? (p === q ? 1 / 3 : 0) : p === q ? 1 / 6 : 1 / 12;
      for (let k = 0; k < 3; k++) matrix[(per * p + k) * 3 * per + per * q + k] = mass * share;
    }
  return matrix;
}
