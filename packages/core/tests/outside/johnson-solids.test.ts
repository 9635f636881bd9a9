// Convex solids with regular faces: N. W. Johnson, Convex polyhedra with regular faces, Canadian
// Journal of Mathematics 18 (1966), and the Archimedean solids. Names and face counts from memory.
// The panels of one such solid often close into others: the identification must list them all.

import { expect, test } from 'vitest';
import { identify } from '../../src/identify/identify.ts';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { type MixedNetName, mixedNet } from '../../src/nets/mixed.ts';

const radius = 2.7;

/** Radius and number of places of every shape that the solid's panels close into, sorted. */
function listed(name: MixedNetName): { places: number; radius: number }[] {
  const kinds = shellOfNet(mixedNet(name), radius).kinds.map(({ sides }, i) => ({
    id: `${i}`,
    marks: [],
    sides,
    sideSds: sides.map(() => 2e-4),
    hand: null,
    good: 0,
    repair: 0,
    scrap: 0,
    counted: false,
    mass: null,
  }));
  return identify({ kinds, groups: [] })
    .shapes.map(({ shell, radius: r }) => ({ places: shell.kind.length, radius: r }))
    .sort((a, b) => a.places - b.places);
}

test('triangles and squares: cuboctahedron and J27, rhombicuboctahedron and J37, two snub cubes', () => {
  expect(listed('cuboctahedron').map(({ places }) => places)).toEqual([14, 14, 26, 26, 38, 38]);
});

test('triangles and pentagons: icosidodecahedron and J34, two snub dodecahedra', () => {
  expect(listed('icosidodecahedron').map(({ places }) => places)).toEqual([32, 32, 92, 92]);
});

test('the rhombicosidodecahedron and its gyrate forms J72 to J75, all of one radius', () => {
  const shapes = listed('rhombicosidodecahedron');
  expect(shapes.map(({ places }) => places)).toEqual([62, 62, 62, 62, 62]);
  for (const shape of shapes) expect(shape.radius).toBeCloseTo(radius, 3);
});

test('circumradius over edge: rhombicuboctahedron 1.39897, snub cube 1.34371 (from memory)', () => {
  const edge = radius / 1; // the cuboctahedron's edge is its circumradius
  const radii = listed('cuboctahedron').map((shape) => shape.radius / edge);
  expect(radii[2]).toBeCloseTo(1.39897, 4);
  expect(radii[4]).toBeCloseTo(1.34371, 4);
  expect(Math.abs((radii[2] as number) - 1.34371)).toBeGreaterThan(1e-3);
});
