import { expect, test } from 'vitest';
import { cross, dot, norm, pointAt, subtract, type Vec3 } from '../../src/math/vector.ts';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { type MixedNetName, mixedNet, mixedNetNames } from '../../src/nets/mixed.ts';
import { polygonOnSphere } from '../../src/sphere/polygon.ts';

// Hubs, panels by number of sides: [3-sided, 4-sided, 5-sided, 6-sided].
const counts: Record<MixedNetName, [number, number[]]> = {
  cube: [8, [0, 6, 0, 0]],
  dodecahedron: [20, [0, 0, 12, 0]],
  'truncated tetrahedron': [12, [4, 0, 0, 4]],
  'truncated octahedron': [24, [0, 6, 0, 8]],
  'truncated icosahedron': [60, [0, 0, 12, 20]],
  cuboctahedron: [12, [8, 6, 0, 0]],
  icosidodecahedron: [30, [20, 0, 12, 0]],
  rhombicuboctahedron: [24, [8, 18, 0, 0]],
  rhombicosidodecahedron: [60, [20, 30, 12, 0]],
};

test.each(mixedNetNames)('the %s has its hubs, its panels and one side length', (name) => {
  const { shell, kinds } = shellOfNet(mixedNet(name), 1);
  const [hubs, panels] = counts[name];
  expect(shell.hubs.length / 3).toBe(hubs);
  const bySides = [3, 4, 5, 6].map((n) =>
    kinds.filter((kind) => kind.sides.length === n).reduce((sum, kind) => sum + kind.count, 0),
  );
  expect(bySides).toEqual(panels);
  const sides = kinds.flatMap((kind) => kind.sides);
  expect(Math.max(...sides) - Math.min(...sides)).toBeLessThan(1e-12);
});

test.each(mixedNetNames)('the %s is closed, on the sphere, flat and turned outward', (name) => {
  const net = mixedNet(name);
  const { shell } = shellOfNet(net, 1);
  expect(shell.mate.every((mate) => mate >= 0)).toBe(true);
  expect(shell.hubs.length / 3 - shell.seams.length / 2 + net.places.length).toBe(2);
  for (const place of net.places) {
    const [a, b, c, ...others] = place.map((h) => pointAt(net.hubs, h)) as [Vec3, Vec3, Vec3];
    const normal = cross(subtract(b, a), subtract(c, a));
    expect(dot(normal, a)).toBeGreaterThan(0);
    for (const p of [a, b, c, ...others]) {
      expect(norm(p)).toBeCloseTo(1, 14);
      expect(dot(normal, subtract(p, a))).toBeCloseTo(0, 14);
    }
  }
});

test.each(mixedNetNames)(
  'the panels of the %s, known by their sides alone, close the sphere',
  (name) => {
    const { kinds } = shellOfNet(mixedNet(name), 2.7);
    const solidAngle = kinds.reduce((sum, kind) => {
      const polygon = polygonOnSphere(kind.sides, 2.7);
      return polygon.ok ? sum + kind.count * polygon.solidAngle : Number.NaN;
    }, 0);
    expect(solidAngle).toBeCloseTo(4 * Math.PI, 11);
  },
);
