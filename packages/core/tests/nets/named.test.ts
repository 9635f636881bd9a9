import { expect, test } from 'vitest';
import { cross, distance, dot, norm, pointAt, subtract } from '../../src/math/vector.ts';
import type { Division } from '../../src/nets/division.ts';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { namedNet, placesPerFace } from '../../src/nets/named.ts';
import type { Net } from '../../src/nets/net.ts';
import type { SolidName } from '../../src/nets/solid.ts';
import { hubCount, placeCount, seamCount } from '../../src/shell/shell.ts';

const net = (
  b: number,
  c: number,
  division: Division = 'equal chords',
  solid: SolidName = 'icosahedron',
): Net => namedNet({ solid, b, c, division });

const solids: [SolidName, number, number][] = [
  ['icosahedron', 20, 5],
  ['octahedron', 8, 4],
  ['tetrahedron', 4, 3],
];
const steps = [
  [1, 0],
  [2, 0],
  [3, 0],
  [0, 3],
  [5, 0],
  [8, 0],
  [1, 1],
  [2, 2],
  [3, 3],
  [2, 1],
  [1, 2],
  [3, 1],
  [1, 3],
  [3, 2],
  [4, 1],
  [4, 2],
  [7, 3],
] as const;

/** How many places meet at each hub. */
const valences = (n: Net): number[] => {
  const count = new Array<number>(n.hubs.length / 3).fill(0);
  for (const hub of n.places.flat()) count[hub] = (count[hub] as number) + 1;
  return count;
};

test.each(solids)(
  'every net of the %s is a closed sphere of T places a face, six at each new hub',
  (solid, faces, valence) => {
    for (const [b, c] of steps) {
      const n = net(b, c, 'equal chords', solid);
      const t = placesPerFace(b, c);
      const { shell } = shellOfNet(n, 1);
      expect(placeCount(shell)).toBe(faces * t);
      expect(seamCount(shell)).toBe((faces * t * 3) / 2);
      expect(shell.mate.every((mate) => mate >= 0)).toBe(true);
      expect(hubCount(shell) - seamCount(shell) + placeCount(shell)).toBe(2);
      const counts = valences(n);
      expect(counts.filter((v) => v === valence)).toHaveLength(
        counts.length - counts.filter((v) => v === 6).length,
      );
      expect(counts.filter((v) => v !== 6)).toHaveLength((faces * 3) / valence);
    }
  },
);

test('all hubs stand on the unit sphere and all places turn anticlockwise seen from outside', () => {
  for (const [b, c] of steps) {
    const n = net(b, c);
    for (let h = 0; h < n.hubs.length / 3; h++) expect(norm(pointAt(n.hubs, h))).toBeCloseTo(1, 14);
    for (const [p, q, r] of n.places as [number, number, number][]) {
      const [a, d, e] = [pointAt(n.hubs, p), pointAt(n.hubs, q), pointAt(n.hubs, r)];
      expect(dot(cross(subtract(d, a), subtract(e, a)), a)).toBeGreaterThan(0);
    }
  }
});

test('the first hub is a corner of the solid at the zenith', () => {
  for (const [b, c] of steps) expect(pointAt(net(b, c).hubs, 0)).toEqual([0, 0, 1]);
});

test('(c, b) is the mirror image of (b, c)', () => {
  const mirrored = net(3, 1);
  const other = net(1, 3);
  const flipped = Array.from({ length: mirrored.hubs.length / 3 }, (_, h) => {
    const [x, y, z] = pointAt(mirrored.hubs, h);
    return [x, -y, z] as const;
  });
  for (const point of flipped) {
    const gaps = flipped.map((_, h) => distance(point, pointAt(other.hubs, h)));
    expect(Math.min(...gaps)).toBeLessThan(1e-12);
  }
});

test('(0, b) is (b, 0), whose own mirror image it is', () => {
  const points = (n: Net): string[] =>
    Array.from({ length: n.hubs.length / 3 }, (_, h) =>
      pointAt(n.hubs, h)
        .map((x) => (Math.round(x * 1e9) / 1e9 + 0).toString())
        .join(),
    ).sort();
  expect(points(net(0, 4))).toEqual(points(net(4, 0)));
});

test('the equator of an even net by equal chords is a flat ring of hubs', () => {
  const { hubs } = net(4, 0);
  const onEquator = [...Array(162).keys()].filter(
    (h) => Math.abs(hubs[3 * h + 2] as number) < 1e-14,
  );
  expect(onEquator).toHaveLength(20);
});

test('equal arcs put the hubs of a solid’s edge at equal arcs', () => {
  for (const division of ['equal arcs', 'equal arcs by great circles'] as const) {
    const { hubs } = net(5, 0, division);
    const step = Math.atan(2) / 5;
    const alongEdge = [1, 2, 3, 4].filter((m) =>
      Array.from({ length: hubs.length / 3 }, (_, h) => pointAt(hubs, h)).some(
        (p) => distance(p, [Math.sin(m * step), 0, Math.cos(m * step)]) < 1e-12,
      ),
    );
    expect(alongEdge).toEqual([1, 2, 3, 4]);
  }
});

test('steps that make no net are refused with what is allowed', () => {
  expect(() => net(0, 0)).toThrow('(0, 0) has 0 places on a face, expected 1 to 4096');
  expect(() => net(65, 0)).toThrow(RangeError);
  expect(() => net(1.5, 0)).toThrow('b is 1.5, expected a whole number from 0');
  expect(() => net(2, -1)).toThrow('c is -1, expected a whole number from 0');
  expect(() => net(2, 2, 'equal arcs')).toThrow(
    '(2, 2) by equal arcs: only (b, 0) is divided so, (b, c) by equal chords',
  );
  expect(() => net(2, 1, 'equal arcs by great circles')).toThrow(RangeError);
});
