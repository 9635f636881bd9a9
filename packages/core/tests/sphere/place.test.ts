import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  cross,
  distance,
  dot,
  norm,
  rotateAbout,
  scale,
  type Vec3,
} from '../../src/math/vector.ts';
import { placeCorners, placeNextCorner } from '../../src/sphere/place.ts';

const share = fc.double({ min: 0.1, max: 1, noNaN: true });
const polygons = fc.record({
  shares: fc.array(share, { minLength: 3, maxLength: 7 }),
  rho: fc.double({ min: 0.02, max: 0.95, noNaN: true }),
  tilt: fc.double({ min: 0, max: 6, noNaN: true }),
  power: fc.integer({ min: -9, max: 9 }),
});

/** Corners anticlockwise seen from outside on a tilted circle of a sphere of radius 10^power. */
const points = (p: {
  shares: readonly number[];
  rho: number;
  tilt: number;
  power: number;
}): Vec3[] => {
  const total = p.shares.reduce((sum, s) => sum + s, 0);
  let at = 0;
  return p.shares.map((s) => {
    at += (2 * Math.PI * s) / total;
    const z = Math.sqrt(1 - p.rho * p.rho);
    const point: Vec3 = [p.rho * Math.cos(at), p.rho * Math.sin(at), z];
    return scale(rotateAbout(point, [0.6, 0, 0.8], p.tilt), 10 ** p.power);
  });
};
const sidesOf = (corners: readonly Vec3[]): number[] =>
  corners.map((corner, i) => distance(corner, corners[(i + 1) % corners.length] as Vec3));

test('law, seed 6: a polygon laid against its own first side returns to its corners, at any scale', () => {
  fc.assert(
    fc.property(polygons, (p) => {
      const corners = points(p);
      const radius = 10 ** p.power;
      const placed = placeCorners(corners[0] as Vec3, corners[1] as Vec3, sidesOf(corners), radius);
      if (!placed.ok) throw new Error(JSON.stringify(placed.why));
      expect(placed.corners).toHaveLength(corners.length);
      placed.corners.forEach((corner, i) => {
        expect(distance(corner, corners[i] as Vec3) / radius).toBeLessThan(1e-9);
        expect(Math.abs(norm(corner) / radius - 1)).toBeLessThan(1e-12);
      });
    }),
    { seed: 6, numRuns: 500 },
  );
});

test('law, seed 7: the fast third corner of a triangle is that of the general way', () => {
  fc.assert(
    fc.property(polygons, (p) => {
      const corners = points({ ...p, shares: p.shares.slice(0, 3) });
      const [a, b, c] = corners as [Vec3, Vec3, Vec3];
      const third = placeNextCorner(a, b, distance(b, c), distance(c, a));
      expect(third && distance(third, c) / 10 ** p.power).toBeLessThan(1e-9);
    }),
    { seed: 7, numRuns: 500 },
  );
});

test('the panel lies to the left of the way along its seam, seen from outside', () => {
  const third = placeNextCorner([1, 0, 0], [0, 1, 0], Math.SQRT2, Math.SQRT2) as Vec3;
  expect(third[2]).toBeCloseTo(1, 14);
  const other = placeNextCorner([0, 1, 0], [1, 0, 0], Math.SQRT2, Math.SQRT2) as Vec3;
  expect(other[2]).toBeCloseTo(-1, 14);
  const placed = placeCorners([1, 0, 0], [0, 1, 0], [0, 1, 1, 1], 1);
  expect(placed.ok && (placed.corners[2] as Vec3)[2]).toBeGreaterThan(0);
});

test('a seam that is not as long as the panel’s side changes only that side', () => {
  const from: Vec3 = [1, 0, 0];
  const to: Vec3 = [Math.cos(0.31), Math.sin(0.31), 0];
  const placed = placeCorners(from, to, [0.3, 0.25, 0.28, 0.27], 1);
  if (!placed.ok) throw new Error('not placed');
  const [, b, c, d] = placed.corners as [Vec3, Vec3, Vec3, Vec3];
  expect([distance(b, c), distance(c, d), distance(d, from)]).toEqual([
    expect.closeTo(0.25, 13),
    expect.closeTo(0.28, 13),
    expect.closeTo(0.27, 13),
  ]);
  const normal = cross([to[0] - 1, to[1], to[2]], [c[0] - 1, c[1], c[2]]);
  expect(dot(normal, [d[0] - 1, d[1], d[2]])).toBeCloseTo(0, 14);
});

test('a millimetre panel on a kilometre sphere keeps its sides', () => {
  const from: Vec3 = [1000, 0, 0];
  const to: Vec3 = [Math.sqrt(1e6 - 1e-6), 0.001, 0];
  const third = placeNextCorner(from, to, 0.0012, 0.0009) as Vec3;
  expect(distance(third, to) / 0.0012).toBeCloseTo(1, 8);
  expect(distance(third, from) / 0.0009).toBeCloseTo(1, 8);
});

test('no corner where the sides do not reach each other or the sphere is too small', () => {
  expect(placeNextCorner([1, 0, 0], [0, 1, 0], 0.5, 0.5)).toBeNull();
  expect(placeNextCorner([1, 0, 0], [0, 1, 0], 2, 2)).toBeNull();
  expect(placeCorners([1, 0, 0], [0, 1, 0], [1, 0.5, 0.5], 1)).toMatchObject({
    why: { reason: 'side too long', side: 0 },
  });
});

test('no polygon against a seam across the whole sphere, whose plane is free', () => {
  expect(placeCorners([1, 0, 0], [-1, 0, 0], [2, 1, 1, 1], 1).ok).toBe(false);
  expect(placeNextCorner([1, 0, 0], [-1, 0, 0], Math.SQRT2, Math.SQRT2)).toBeNull();
});
