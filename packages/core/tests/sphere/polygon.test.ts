import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cross, dot, normalize, subtract, type Vec3 } from '../../src/math/vector.ts';
import { polygonOnSphere, type SpherePolygon } from '../../src/sphere/polygon.ts';

const polygon = (sides: readonly number[], radius: number): SpherePolygon => {
  const found = polygonOnSphere(sides, radius);
  if (!found.ok) throw new Error(JSON.stringify(found.why));
  return found;
};

/** Corners on a circle of radius `rho` on the unit sphere at the given turns round its axis. */
const onCircle = (rho: number, turns: readonly number[]): Vec3[] =>
  turns.map((t) => [rho * Math.cos(t), rho * Math.sin(t), Math.sqrt(1 - rho * rho)]);

/** Angle at `at` between the great circles to `a` and `b`, by their planes' normals. */
const arcAngle = (at: Vec3, a: Vec3, b: Vec3): number =>
  Math.acos(dot(normalize(cross(at, a)), normalize(cross(at, b))));

const turns = fc
  .array(fc.double({ min: 0.05, max: 1, noNaN: true }), { minLength: 3, maxLength: 8 })
  .map((parts) => {
    const total = parts.reduce((sum, part) => sum + part, 0);
    let at = 0;
    return parts.map((part) => {
      at += (2 * Math.PI * part) / total;
      return at;
    });
  });
const rho = fc.double({ min: 0.01, max: 0.95, noNaN: true });

const sidesOf = (points: readonly Vec3[]): number[] =>
  points.map((p, i) => Math.hypot(...subtract(points[(i + 1) % points.length] as Vec3, p)));

test('law, seed 3: corners are the angles between the great circles over the sides; ten times the tolerance is refused', () => {
  fc.assert(
    fc.property(turns, rho, (t, r) => {
      const points = onCircle(r, t);
      const found = polygon(sidesOf(points), 1);
      const n = points.length;
      points.forEach((p, i) => {
        const expected = arcAngle(p, points[(i + n - 1) % n] as Vec3, points[(i + 1) % n] as Vec3);
        expect(found.corners[i]).toBeCloseTo(expected, 6);
        expect(found.corners[i]).not.toBeCloseTo(expected + 5e-6, 6);
      });
    }),
    { seed: 3, numRuns: 500 },
  );
});

test('law, seed 4: the solid angle is the sum of the corners less (n − 2) π', () => {
  fc.assert(
    fc.property(turns, rho, (t, r) => {
      const found = polygon(sidesOf(onCircle(r, t)), 1);
      const sum = found.corners.reduce((total, corner) => total + corner, 0);
      expect(found.solidAngle).toBeCloseTo(sum - (t.length - 2) * Math.PI, 9);
      const flat = found.planeCorners.reduce((total, corner) => total + corner, 0);
      expect(flat).toBeCloseTo((t.length - 2) * Math.PI, 9);
    }),
    { seed: 4, numRuns: 500 },
  );
});

test('law, seed 5: angles do not depend on the unit, from 1e-9 to 1e9', () => {
  fc.assert(
    fc.property(turns, rho, fc.integer({ min: -9, max: 9 }), (t, r, power) => {
      const sides = sidesOf(onCircle(r, t));
      const one = polygon(sides, 1);
      const scaled = polygon(
        sides.map((side) => side * 10 ** power),
        10 ** power,
      );
      expect(scaled.solidAngle / one.solidAngle).toBeCloseTo(1, 8);
      expect(scaled.area / 100 ** power / one.area).toBeCloseTo(1, 8);
      one.corners.forEach((corner, i) => {
        expect(scaled.corners[i]).toBeCloseTo(corner, 8);
      });
    }),
    { seed: 5, numRuns: 300 },
  );
});

test('turning the sides turns the corners, turning them round turns the corners round', () => {
  const sides = [0.3, 0.5, 0.4, 0.6];
  const { corners } = polygon(sides, 1);
  const turned = polygon([0.5, 0.4, 0.6, 0.3], 1).corners;
  const back = polygon([...sides].reverse(), 1).corners;
  for (let i = 0; i < 4; i++) {
    expect(turned[i]).toBeCloseTo(corners[(i + 1) % 4] as number, 13);
    expect(back[i]).toBeCloseTo(corners[(4 - i) % 4] as number, 13);
  }
});

test('on a sphere a million times its size a panel has its plane corners and area', () => {
  const { corners, planeCorners, solidAngle, area } = polygon([3, 4, 5], 1e6);
  expect(area).toBeCloseTo(6, 12);
  expect((solidAngle * 1e12) / 6).toBeCloseTo(1, 10);
  expect(planeCorners.map((corner) => Math.cos(corner))).toEqual([
    expect.closeTo(0.6, 12),
    expect.closeTo(0, 12),
    expect.closeTo(0.8, 12),
  ]);
  corners.forEach((corner, i) => {
    expect(corner).toBeCloseTo(planeCorners[i] as number, 10);
  });
});

test('an octant has three right corners and π/2 steradians', () => {
  const { corners, solidAngle, axialAngles } = polygon([Math.SQRT2, Math.SQRT2, Math.SQRT2], 1);
  for (const corner of corners) expect(corner).toBeCloseTo(Math.PI / 2, 14);
  for (const angle of axialAngles) expect(angle).toBeCloseTo(Math.PI / 4, 14);
  expect(solidAngle).toBeCloseTo(Math.PI / 2, 14);
});

test('a polygon on a great circle is a hemisphere with straight corners', () => {
  const { corners, solidAngle } = polygon([1, 1, 1, 1, 1, 1], 1);
  expect(solidAngle).toBeCloseTo(2 * Math.PI, 6);
  for (const corner of corners) expect(corner).toBeCloseTo(Math.PI, 6);
});

test('an obtuse panel has its centre beyond the longest side and sharper ends there than in the plane', () => {
  const found = polygon([0.5, 0.5, 0.95], 1);
  expect(found.centreInside).toBe(false);
  expect(found.longest).toBe(2);
  expect(found.planeCorners[1]).toBeCloseTo(2 * Math.asin(0.95), 12);
  expect(found.corners[0]).toBeLessThan(found.planeCorners[0] as number);
});

test('a panel whose circle is wider than the sphere is refused with its longest side and how much', () => {
  const heron = Math.sqrt(3.35 * 1.35 * 0.85 * 1.15);
  const by = expect.closeTo((2 * 2.5 * 2.2) / (4 * heron) - 1, 12);
  expect(polygonOnSphere([2, 2.5, 2.2], 1)).toEqual({
    ok: false,
    why: { reason: 'larger than the sphere', side: 1, by },
  });
});

test('a radius that is no length is refused, and so are sides that do not close', () => {
  for (const radius of [0, -1, Number.NaN, Infinity])
    expect(polygonOnSphere([1, 1, 1], radius)).toMatchObject({ why: { reason: 'no radius' } });
  expect(polygonOnSphere([1, 1, 3], 9)).toMatchObject({
    ok: false,
    why: { reason: 'side too long', side: 2, by: 1 },
  });
});
