// Convex solids with regular faces: N. W. Johnson, Convex polyhedra with regular faces, Canadian
// Journal of Mathematics 18 (1966), and the Archimedean solids. Names and face counts from memory.
// The panels of one such solid often close into others: the identification must list them all.

import { expect, test } from 'vitest';
import { identify } from '../../src/identify/identify.ts';
import type { Shape } from '../../src/identify/shape.ts';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { type MixedNetName, mixedNet } from '../../src/nets/mixed.ts';
import { cornerCount, placeAt } from '../../src/shell/shell.ts';
import { starsOf } from '../../src/shell/stars.ts';

const radius = 2.7;

/** Every shape that the solid's panels close into. */
function shapesOf(name: MixedNetName): readonly Shape[] {
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
  return identify({ kinds, groups: [] }).shapes;
}

/** Radius and number of places of each, sorted. */
const listed = (name: MixedNetName): { places: number; radius: number }[] =>
  shapesOf(name)
    .map(({ shell, radius: r }) => ({ places: shell.kind.length, radius: r }))
    .sort((a, b) => a.places - b.places);

/** How many hubs of a shell have each run of panels around them, by numbers of sides, read either way
 * from the lowest turn on: '3.4.3.4: 12'. */
function figures({ shell }: Shape): string {
  const counts = new Map<string, number>();
  for (const { corners } of starsOf(shell)) {
    const run = corners.map((side) => cornerCount(shell, placeAt(shell, side)));
    const turns = [run, [...run].reverse()].flatMap((way) =>
      way.map((_, i) => [...way.slice(i), ...way.slice(0, i)].join('.')),
    );
    const lowest = turns.sort()[0] as string;
    counts.set(lowest, (counts.get(lowest) ?? 0) + 1);
  }
  return [...counts]
    .map(([run, count]) => `${run}: ${count}`)
    .sort()
    .join(', ');
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

test('vertex figures (from memory): J27 six and six, J34 twenty and ten, J37 as its brother', () => {
  const small = shapesOf('cuboctahedron');
  const of = (places: number): string[] =>
    small.filter(({ shell }) => shell.kind.length === places).map(figures);
  expect(of(14).sort()).toEqual(['3.3.4.4: 6, 3.4.3.4: 6', '3.4.3.4: 12']);
  expect(of(26)).toEqual(['3.4.4.4: 24', '3.4.4.4: 24']);
  expect(of(38)).toEqual(['3.3.3.3.4: 24', '3.3.3.3.4: 24']);
  const large = shapesOf('icosidodecahedron').filter(({ shell }) => shell.kind.length === 32);
  expect(large.map(figures).sort()).toEqual(['3.3.5.5: 10, 3.5.3.5: 20', '3.5.3.5: 30']);
});

test('vertex figures (from memory): each cupola turned in J72 to J75 changes ten hubs', () => {
  expect(shapesOf('rhombicosidodecahedron').map(figures).sort()).toEqual([
    '3.4.4.5: 10, 3.4.5.4: 50',
    '3.4.4.5: 20, 3.4.5.4: 40',
    '3.4.4.5: 20, 3.4.5.4: 40',
    '3.4.4.5: 30, 3.4.5.4: 30',
    '3.4.5.4: 60',
  ]);
});
