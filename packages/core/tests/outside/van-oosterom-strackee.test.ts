// A. van Oosterom & J. Strackee, "The solid angle of a plane triangle", IEEE Transactions on
// Biomedical Engineering BME-30 (1983) 125: tan(Ω/2) = a·(b × c) / (abc + (a·b)c + (a·c)b + (b·c)a).
// Formula published; example values computed apart from this project, π/2, π/3, π/6, π/5 and π exact.

import { describe, expect, test } from 'vitest';
import {
  cross,
  distance,
  dot,
  norm,
  normalize,
  pointAt,
  type Vec3,
} from '../../src/math/vector.ts';
import { mixedNet } from '../../src/nets/mixed.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { Net } from '../../src/nets/net.ts';
import { polygonOnSphere } from '../../src/sphere/polygon.ts';
import { misfits } from './data/pairs.ts';

const published: [string, Vec3, Vec3, Vec3, number][] = [
  ['an octant', [1, 0, 0], [0, 1, 0], [0, 0, 1], Math.PI / 2],
  ['an octant from afar', [2, 0, 0], [0, 3, 0], [0, 0, 0.5], Math.PI / 2],
  ['half a cube face and more', [1, 0, 1], [0, 1, 1], [-1, -1, 1], 1.0471975511966],
  ['a quarter of a cube face', [1, 1, 1], [-1, 1, 1], [0, 0, 1], Math.PI / 6],
  ['any triangle', [1, 2, 3], [3, 1, -1], [-1, 2, 1], 0.7938527971017],
  ['the same the other way round', [1, 2, 3], [-1, 2, 1], [3, 1, -1], -0.7938527971017],
  ['more than π', [1, 0, -0.2], [-0.5, 0.866, -0.2], [-0.5, -0.866, -0.2], -4.3184329801],
];
const STERADIANS = 1e-10;

function solidAngle(p: Vec3, q: Vec3, r: Vec3): number {
  const [a, b, c] = [norm(p), norm(q), norm(r)];
  const below = a * b * c + dot(p, q) * c + dot(p, r) * b + dot(q, r) * a;
  return 2 * Math.atan2(dot(p, cross(q, r)), below);
}

/** Ours, from nothing but the chords between the three directions. */
function fromSides(points: readonly Vec3[]): number {
  const corners = points.map(normalize);
  const sides = corners.map((p, i) => distance(p, corners[(i + 1) % corners.length] as Vec3));
  const polygon = polygonOnSphere(sides, 1);
  return polygon.ok ? polygon.solidAngle : Number.NaN;
}

test('the published examples; ten times the tolerance is refused', () => {
  const pairs = published.map(([what, a, b, c, expected]) => ({
    what,
    actual: solidAngle(a, b, c),
    expected,
  }));
  expect(misfits(pairs, STERADIANS)).toEqual([]);
  expect(misfits(pairs, STERADIANS, 10 * STERADIANS)).toHaveLength(pairs.length);
});

test('the panel with these directions as corners; ten times the tolerance is refused', () => {
  const pairs = published.map(([what, a, b, c, expected]) => ({
    what,
    actual: fromSides([a, b, c]),
    expected: Math.abs(expected),
  }));
  expect(misfits(pairs, STERADIANS)).toEqual([]);
  expect(misfits(pairs, STERADIANS, 10 * STERADIANS)).toHaveLength(pairs.length);
});

const nets: [string, Net][] = [
  ...(
    [
      [1, 0],
      [4, 0],
      [3, 3],
      [3, 1],
    ] as const
  ).map(([b, c]): [string, Net] => [
    `(${b}, ${c})`,
    namedNet({ solid: 'icosahedron', b, c, division: 'equal chords' }),
  ]),
  ['tetrahedron', namedNet({ solid: 'tetrahedron', b: 1, c: 0, division: 'equal chords' })],
  ['tetrahedral (3, 0)', namedNet({ solid: 'tetrahedron', b: 3, c: 0, division: 'equal chords' })],
  ['truncated icosahedron', mixedNet('truncated icosahedron')],
  ['rhombicosidodecahedron', mixedNet('rhombicosidodecahedron')],
];

describe.each(nets)('%s', (_, net) => {
  const panels = net.places.map((place) => place.map((hub) => pointAt(net.hubs, hub)));
  const byFormula = panels.map(([first, ...others]) =>
    others.slice(1).reduce((sum, p, i) => sum + solidAngle(first as Vec3, others[i] as Vec3, p), 0),
  );
  test('every panel; ten times the tolerance is refused', () => {
    const pairs = panels.map((points, p) => ({
      what: `place ${p}`,
      actual: fromSides(points),
      expected: byFormula[p] as number,
    }));
    expect(misfits(pairs, STERADIANS)).toEqual([]);
    expect(misfits(pairs, STERADIANS, 10 * STERADIANS)).toHaveLength(pairs.length);
  });
  test('all panels together see 4π', () => {
    expect(byFormula.reduce((sum, angle) => sum + angle, 0)).toBeCloseTo(4 * Math.PI, 10);
  });
});

test('a face of the icosahedron is π/5, of the tetrahedron π', () => {
  expect(fromSides(faceOf(nets[0]?.[1] as Net))).toBeCloseTo(Math.PI / 5, 12);
  expect(fromSides(faceOf(nets[4]?.[1] as Net))).toBeCloseTo(Math.PI, 12);
});

function faceOf({ hubs, places }: Net): Vec3[] {
  return (places[0] as readonly number[]).map((hub) => pointAt(hubs, hub));
}
