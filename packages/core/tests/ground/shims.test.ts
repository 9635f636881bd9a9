import { expect, test } from 'vitest';
import type { Base } from '../../src/ground/base.ts';
import { type ShimOptions, shims } from '../../src/ground/shims.ts';
import { seededRandom } from '../../src/math/random.ts';
import { baseThere, dome, ring } from './bases.ts';

const heightsOf = (values: readonly number[]): Map<number, number> =>
  new Map(values.map((value, i) => [i + 1, value]));
function planned(base: Base, values: readonly number[], options: ShimOptions = {}) {
  const read = shims(base, heightsOf(values), options);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}
const bumpy = (n: number, seed: number, by = 0.03): number[] => {
  const random = seededRandom(seed);
  return Array.from({ length: n }, () => by * random.uniform());
};

test('the highest ground gets no shim, and every top is level', () => {
  const ground = bumpy(16, 1);
  const plan = planned(ring(16, 3), ground);
  const top = Math.max(...ground);
  plan.shims.forEach(({ thickness, off }, i) => {
    expect(thickness).toBeCloseTo(top - (ground[i] as number), 12);
    expect(off).toBeCloseTo(0, 12);
  });
  expect(plan.highest).toEqual([ground.indexOf(top) + 1]);
});

test('what a ragged ring rises by itself is not shimmed', () => {
  const base = baseThere(dome(3, 0, -0.2, 2.5));
  expect(base.spread).toBeGreaterThan(0.03);
  const plan = planned(
    base,
    base.hubs.map((hub) => hub.rise + 0.2),
  );
  expect(plan.max).toBeLessThan(1e-12);
  expect(
    planned(
      base,
      base.hubs.map(() => 0),
    ).max,
  ).toBeCloseTo(base.spread, 12);
});

test.each([1, 2, 3, 4, 5])('no shim is negative, whatever is asked, seed %i', (seed) => {
  const ground = bumpy(20, seed);
  for (const aim of ['total', 'max'] as const)
    for (const tilt of [0, 0.002, 0.02])
      for (const step of [0, 0.003]) {
        const plan = planned(ring(20, 4), ground, {
          aim,
          tilt,
          neighbour: step,
          overall: 2 * step,
        });
        for (const { thickness } of plan.shims) expect(thickness).toBeGreaterThanOrEqual(0);
        expect(plan.highest.length).toBeGreaterThan(0);
        expect(Math.hypot(...plan.slope)).toBeLessThanOrEqual(tilt * (1 + 1e-9));
        expect(plan.neighbourStep).toBeLessThanOrEqual(step + 1e-9);
        expect(plan.overallStep).toBeLessThanOrEqual(2 * step + 1e-9);
      }
});

test('ground that slopes evenly within the tilt needs no shims', () => {
  const base = ring(12, 3);
  const slope = base.hubs.map(({ at }) => 0.004 * at[0] - 0.003 * at[1]);
  expect(planned(base, slope, { tilt: 0.0051 }).max).toBeLessThan(1e-6);
  expect(planned(base, slope, { tilt: 0.004 }).max).toBeGreaterThan(1e-3);
});

test('a tilt lessens what it is to lessen, and the two aims part', () => {
  const ground = bumpy(16, 8);
  const base = ring(16, 3);
  const level = planned(base, ground);
  const total = planned(base, ground, { aim: 'total', tilt: 0.005 });
  const max = planned(base, ground, { aim: 'max', tilt: 0.005 });
  expect(total.total).toBeLessThan(level.total);
  expect(max.max).toBeLessThan(level.max);
  expect(total.total).toBeLessThan(max.total - 1e-4);
  expect(max.max).toBeLessThan(total.max - 1e-4);
});

test('shims in hand come as near as they can, with as few as do', () => {
  const plan = planned(ring(4, 2), [0, 0.0034, 0.0101, 0.013], {
    pieces: [0.001, 0.002, 0.005, 0.01],
  });
  expect(plan.shims.map(({ pieces }) => pieces?.map((t) => Math.round(t * 1e4) / 10))).toEqual([
    [10, 2, 1],
    [10],
    [2, 1],
    [],
  ]);
  expect(plan.overallStep).toBeLessThan(0.001);
});

test('a base hub without a level is a fault, and nothing is reckoned', () => {
  const read = shims(ring(4, 2), heightsOf([0, 0, 0]));
  expect(read).toEqual({
    ok: false,
    faults: [{ path: 'levels, hub 4', found: 'no height', expected: 'a level at every hub' }],
  });
});

test('a negative tilt and a shim of no thickness are refused', () => {
  expect(() => planned(ring(4, 2), [0, 0, 0, 0], { tilt: -1 })).toThrow(/tilt is -1/);
  expect(() => planned(ring(4, 2), [0, 0, 0, 0], { pieces: [0] })).toThrow(/shim in hand is 0/);
});
