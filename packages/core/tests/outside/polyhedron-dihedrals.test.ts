// Dihedral angles and sizes of the regular solids, the truncated icosahedron and the pentakis
// dodecahedron: textbook values from memory, computed again apart from this project.

import { expect, test } from 'vitest';
import { add, cross, dot, pointAt, scale, type Vec3 } from '../../src/math/vector.ts';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { mixedNet } from '../../src/nets/mixed.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { Net } from '../../src/nets/net.ts';
import type { SolidName } from '../../src/nets/solid.ts';
import { checked } from './data/checked.ts';
import { factsOf } from './data/net-facts.ts';
import { misfits, type Pair } from './data/pairs.ts';

const regular = (solid: SolidName): Net =>
  namedNet({ solid, b: 1, c: 0, division: 'equal chords' });

const folds: [string, Net, number[]][] = [
  ['tetrahedron', regular('tetrahedron'), [70.528779]],
  ['octahedron', regular('octahedron'), [109.471221]],
  ['icosahedron', regular('icosahedron'), [138.189685]],
  ['cube', mixedNet('cube'), [90]],
  ['dodecahedron', mixedNet('dodecahedron'), [116.565051]],
  ['truncated icosahedron', mixedNet('truncated icosahedron'), [138.189685, 142.622632]],
];
const DEGREES = 1e-6;

test.each(folds)(
  'the %s has these dihedral angles; ten times the tolerance is refused',
  (_, net, expected) => {
    const angles = [...factsOf(net).folds.values()].sort(
      (p, q) => (p[0] as number) - (q[0] as number),
    );
    const pairs = angles.flatMap((seams, i): Pair[] =>
      seams.map((actual) => ({ what: `fold ${i}`, actual, expected: expected[i] as number })),
    );
    expect(angles).toHaveLength(expected.length);
    expect(misfits(pairs, DEGREES)).toEqual([]);
    expect(misfits(pairs, DEGREES, 10 * DEGREES)).toHaveLength(pairs.length);
  },
);

test('the truncated icosahedron has 12 pentagons, 20 hexagons, 60 hubs, 90 seams', () => {
  const { shell, kinds } = shellOfNet(mixedNet('truncated icosahedron'), 1);
  expect(kinds.map(({ sides, count }) => [sides.length, count])).toEqual([
    [5, 12],
    [6, 20],
  ]);
  expect([shell.hubs.length / 3, shell.seams.length / 2]).toEqual([60, 90]);
});

test('its side is 0.40354821 of the radius, as the middle side of the shell in three steps', () => {
  const { kinds } = shellOfNet(mixedNet('truncated icosahedron'), 1);
  const side = kinds[0]?.sides[0] as number;
  checked({ got: side, expected: 0.40354821, within: 5e-9 });
  expect(Math.abs(side - 0.40354821 - 5e-8)).toBeGreaterThan(5e-9);
  expect(Math.abs(1 / side - 2.47801866)).toBeLessThan(5e-9);
  expect(Math.abs(1 / side - 2.47801866 - 5e-8)).toBeGreaterThan(5e-9);
  const three = namedNet({ solid: 'icosahedron', b: 3, c: 0, division: 'equal chords' });
  const lengths = shellOfNet(three, 1).kinds.map((kind) => kind.sides);
  expect(lengths[0]?.[2]).toBeCloseTo(side, 13);
});

test('a pyramid on each face of a dodecahedron, dual to the truncated icosahedron, folds by 156.718554°', () => {
  const angles = [...factsOf(pentakis()).folds.values()].flat();
  const pairs = angles.map((actual, i) => ({ what: `seam ${i}`, actual, expected: 156.718554 }));
  expect(pairs).toHaveLength(90);
  expect(misfits(pairs, DEGREES)).toEqual([]);
  expect(misfits(pairs, DEGREES, 10 * DEGREES)).toHaveLength(90);
});

test.each([
  ['cube', Math.sqrt(3) / 2],
  ['cuboctahedron', 1],
  ['rhombicuboctahedron', Math.sqrt(5 + 2 * Math.SQRT2) / 2],
] as const)('the %s of side 1 has a radius of %f', (name, radius) => {
  const side = shellOfNet(mixedNet(name), 1).kinds[0]?.sides[0] as number;
  expect(1 / side).toBeCloseTo(radius, 12);
});

/** The polar dual of the truncated icosahedron: a hub over the middle of each panel, as far out as
 * the panel is near. Its hubs are on two spheres; only its angles are looked at. */
function pentakis(): Net {
  const { hubs, places } = mixedNet('truncated icosahedron');
  const apexes = places.map((place) => {
    const points = place.map((hub) => pointAt(hubs, hub));
    const middle = scale(points.reduce(add), 1 / points.length);
    return scale(middle, 1 / dot(middle, middle));
  });
  const rounds = Array.from({ length: hubs.length / 3 }, (_, hub) => {
    const [a, b, c] = [...places.keys()].filter((p) => places[p]?.includes(hub)) as [
      number,
      number,
      number,
    ];
    const [p, q, r] = [apexes[a], apexes[b], apexes[c]] as [Vec3, Vec3, Vec3];
    return dot(p, cross(q, r)) > 0 ? [a, b, c] : [a, c, b];
  });
  return { hubs: Float64Array.from(apexes.flat()), places: rounds };
}
