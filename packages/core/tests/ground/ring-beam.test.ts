import { expect, test } from 'vitest';
import type { PlanPoint } from '../../src/ground/base.ts';
import { beamCuts, cutFromStock, ringBeam } from '../../src/ground/ring-beam.ts';
import { seededRandom } from '../../src/math/random.ts';
import { baseThere, dome, ring } from './bases.ts';

/** Area by the corners. */
const area = (points: readonly PlanPoint[]): number =>
  Math.abs(
    points.reduce((sum, [x, y], i) => {
      const [u, v] = points[(i + 1) % points.length] as PlanPoint;
      return sum + x * v - y * u;
    }, 0) / 2,
  );

test('the pieces of a ragged ring turn once round and cover the ground between its faces', () => {
  const base = baseThere(dome(3, 0, -0.2, 2.5));
  const width = 0.1;
  const pieces = ringBeam(base, { width });
  const turned = pieces.reduce((sum, piece) => sum + 2 * piece.mitreFrom, 0);
  expect(turned).toBeCloseTo(2 * Math.PI, 9);
  const covered = pieces.reduce((sum, p) => sum + ((p.outer + p.inner) / 2) * width, 0);
  // Between polygons offset by w/2 either way: perimeter × w, exactly, whatever the mitres.
  const perimeter = base.hubs.reduce((sum, hub) => sum + hub.levelChord, 0);
  expect(covered).toBeCloseTo(perimeter * width, 9);
});

test('a beam outside the hubs is longer by what the offset polygon is', () => {
  const base = ring(7, 2);
  const off = 0.08;
  const grown = base.hubs.map(({ at }): PlanPoint => {
    const k = 1 + off / (2 * Math.cos(Math.PI / 7));
    return [at[0] * k, at[1] * k];
  });
  const pieces = ringBeam(base, { width: 0.05, outside: off });
  const [a, b] = grown as [PlanPoint, PlanPoint];
  for (const piece of pieces)
    expect(piece.middle).toBeCloseTo(Math.hypot(a[0] - b[0], a[1] - b[1]), 12);
  expect(area(grown)).toBeGreaterThan(area(base.hubs.map((hub) => hub.at)));
});

test('alike pieces are one cut, each base side in one of them', () => {
  const cuts = beamCuts(ringBeam(baseThere(dome(4, 0, 0, 3.6)), { width: 0.1 }));
  expect(cuts.length).toBeLessThan(20);
  expect(cuts.flatMap(({ from }) => from).sort((a, b) => a - b)).toEqual(
    [...Array(20).keys()].map((k) => k + 1),
  );
});

test('a beam wider than the ring allows is refused', () => {
  expect(() => ringBeam(ring(6, 0.5), { width: 2 })).toThrow(/a beam 2 m wide leaves no piece/);
  expect(() => ringBeam(ring(6, 0.5), { width: 0 })).toThrow(/width is 0/);
});

test('no stock is overfull, every piece is cut once, and the plan is near the least, seed 2', () => {
  const random = seededRandom(2);
  for (let t = 0; t < 50; t++) {
    const pieces = Array.from({ length: 15 }, () => 0.4 + 1.4 * random.uniform());
    const plan = cutFromStock(pieces, 3.6);
    for (const cut of plan.lengths) {
      const used = cut.reduce((sum, i) => sum + (pieces[i] as number) + 0.004, -0.004);
      expect(used).toBeLessThanOrEqual(3.6 + 1e-9);
    }
    expect(plan.lengths.flat().sort((a, b) => a - b)).toEqual([...pieces.keys()]);
    expect(plan.lengths.length).toBeLessThanOrEqual(Math.ceil((11 * plan.least) / 9) + 1);
  }
});

test('a piece longer than the stock is told, not cut', () => {
  expect(cutFromStock([1, 4], 3)).toEqual({ lengths: [[0]], tooLong: [1], least: 1 });
});
