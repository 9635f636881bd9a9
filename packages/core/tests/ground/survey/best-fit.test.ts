import { expect, test } from 'vitest';
import { fitPlane, fitSphere, layPlan } from '../../../src/ground/survey/best-fit.ts';
import { seededRandom } from '../../../src/math/random.ts';
import { distance, type Vec3 } from '../../../src/math/vector.ts';

const random = seededRandom(21);
const cloud = (n: number): Vec3[] =>
  Array.from({ length: n }, () => [random.normal(), random.normal(), random.normal()]);

test('points on a plane give it back', () => {
  const fit = fitPlane(cloud(9).map(([x, y]) => [x, y, 0.3 + 0.02 * x - 0.05 * y]));
  expect(fit?.height).toBeCloseTo(0.3, 12);
  expect(fit?.slope[0]).toBeCloseTo(0.02, 12);
  expect(fit?.slope[1]).toBeCloseTo(-0.05, 12);
});

test('points on a sphere give it back, its radius told or not', () => {
  const points = cloud(12).map((p): Vec3 => {
    const d = Math.hypot(...p);
    return [1 + (2.7 * p[0]) / d, -2 + (2.7 * p[1]) / d, 0.5 + (2.7 * p[2]) / d];
  });
  for (const fit of [fitSphere(points, [0, 0, 0]), fitSphere(points, [0, 0, 0], 2.7)]) {
    expect(fit?.radius).toBeCloseTo(2.7, 9);
    expect(distance(fit?.centre ?? [9, 9, 9], [1, -2, 0.5])).toBeLessThan(1e-9);
    expect(fit?.rms).toBeLessThan(1e-9);
  }
});

test('no sphere near the fitted one fits rough points better', () => {
  const points = cloud(30).map((p): Vec3 => {
    const d = Math.hypot(...p) / (3 + 0.05 * random.normal());
    return [p[0] / d, p[1] / d, p[2] / d];
  });
  const fit = fitSphere(points, [0.1, 0, 0]);
  if (fit === null) throw new Error('no fit');
  const cost = (centre: Vec3, r: number): number =>
    points.reduce((sum, p) => sum + (distance(p, centre) - r) ** 2, 0);
  const best = cost(fit.centre, fit.radius);
  for (let t = 0; t < 200; t++) {
    const [dx, dy, dz, dr] = Array.from({ length: 4 }, () => 0.01 * random.normal());
    const [x, y, z] = fit.centre;
    expect(
      cost(
        [x + (dx as number), y + (dy as number), z + (dz as number)],
        fit.radius + (dr as number),
      ),
    ).toBeGreaterThan(best);
  }
});

test('a flat ring leaves the sphere open unless the radius is told', () => {
  const flat = Array.from(
    { length: 8 },
    (_, k): Vec3 => [2 * Math.cos(k * 0.785), 2 * Math.sin(k * 0.785), -1],
  );
  expect(fitSphere(flat, [0, 0, 0])).toBeNull();
  const known = fitSphere(flat, [0, 0, 0.2], 2.5);
  expect(known?.centre[2]).toBeCloseTo(0.5, 4);
  expect(fitSphere(flat.slice(0, 2), [0, 0, 0], 2.5)).toBeNull();
  expect(() => fitSphere(flat, [0, 0, 0], -1)).toThrow(/radius is -1/);
});

test('a plan moved and turned is laid back on itself', () => {
  const plan = cloud(7).map(([x, y]): readonly [number, number] => [x, y]);
  const [c, s] = [Math.cos(0.4), Math.sin(0.4)];
  const stands = plan.map(([x, y]): readonly [number, number] => [
    1 + c * x - s * y,
    2 + s * x + c * y,
  ]);
  const laid = layPlan(plan, stands);
  expect(laid.turned).toBeCloseTo(0.4, 12);
  expect(laid.moved[0]).toBeCloseTo(1, 12);
  expect(laid.moved[1]).toBeCloseTo(2, 12);
  laid.points.forEach(([x, y], k) => {
    expect(Math.hypot(x - (stands[k]?.[0] ?? 9), y - (stands[k]?.[1] ?? 9))).toBeLessThan(1e-12);
  });
});
