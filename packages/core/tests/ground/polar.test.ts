import { expect, test } from 'vitest';
import { polarPlan } from '../../src/ground/polar.ts';
import { baseThere, dome, ring } from './bases.ts';

test('from the centre the readings are the bearings and radii of the hubs', () => {
  const base = baseThere(dome(4, 0, 0, 3.6));
  polarPlan(base).forEach((row, k) => {
    expect(row.hub).toBe(k + 1);
    expect(row.bearing).toBeCloseTo(base.hubs[k]?.bearing as number, 12);
    expect(row.distance).toBeCloseTo(base.hubs[k]?.radius as number, 12);
  });
});

test('from anywhere, turned to any peg, the readings lead back to the plan', () => {
  const base = baseThere(dome(3, 1, -0.3, 5));
  const at = [-7.5, 2.25] as const;
  const zero = [1, -9] as const;
  const start = Math.atan2(zero[1] - at[1], zero[0] - at[0]);
  polarPlan(base, { at, zero }).forEach(({ bearing, distance }, k) => {
    const [x, y] = (base.hubs[k] as (typeof base.hubs)[number]).at;
    expect(at[0] + distance * Math.cos(start - bearing)).toBeCloseTo(x, 9);
    expect(at[1] + distance * Math.sin(start - bearing)).toBeCloseTo(y, 9);
  });
});

test('a station on its own zero, or at no number, is refused', () => {
  const base = ring(6, 2);
  expect(() => polarPlan(base, { at: [1, 1], zero: [1, 1] })).toThrow(/set zero on another/);
  expect(() => polarPlan(base, { at: [Number.NaN, 0], zero: [1, 0] })).toThrow(/station.at is NaN/);
});
