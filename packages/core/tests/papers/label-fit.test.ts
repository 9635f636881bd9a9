import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/papers/drawing.ts';
import { fitLabel, labelShape, type Segment, sizeAt } from '../../src/papers/label-fit.ts';

const box = (w: number, h: number): Point[] => [
  [-w, -h],
  [w, -h],
  [w, h],
  [-w, h],
];
const sides = (points: readonly Point[]): Segment[] =>
  points.map((p, i) => [p, points[(i + 1) % points.length] as Point]);
const triangle: Point[] = [
  [0, 0],
  [12, 0],
  [6, -9],
];

/** Whether a box of half sizes w, h scaled by s about a point keeps clear of a segment: sampled. */
const clear = (s: number, w: number, h: number, [x, y]: Point, [p, q]: Segment): boolean =>
  Array.from({ length: 2001 }, (_, i) => i / 2000).every(
    (t) =>
      Math.abs(p[0] + t * (q[0] - p[0]) - x) >= w * s ||
      Math.abs(p[1] + t * (q[1] - p[1]) - y) >= h * s,
  );

describe('the largest label', () => {
  it('about a point is that which just touches an obstacle (seed 7, against sampling)', () => {
    const number = fc.double({ min: -10, max: 10, noNaN: true });
    const property = fc.property(number, number, number, number, (a, b, c, d) => {
      fc.pre(Math.hypot(a - c, b - d) > 0.1);
      const segment: Segment = [
        [a, b],
        [c, d],
      ];
      const size = sizeAt(labelShape(box(1.5, 0.5)), [0, 0], [segment]);
      expect(clear(size * 0.999 - 1e-9, 1.5, 0.5, [0, 0], segment)).toBe(true);
      expect(clear(size * 1.02 + 0.02, 1.5, 0.5, [0, 0], segment)).toBe(false);
    });
    fc.assert(property, { seed: 7, numRuns: 200 });
  });

  it('in an isosceles triangle is where the rectangle of its shape is largest (closed form)', () => {
    // A rectangle 3 wide and 1 high, scaled by s, stands on the base 12 of a triangle 9 high:
    // 12 (1 − s/9) = 3 s, so s = 36/13.
    const found = fitLabel(labelShape(box(1.5, 0.5)), [6, -3], sides(triangle), 3);
    expect(found.size).toBeGreaterThan((36 / 13) * 0.98);
    expect(found.size).toBeLessThanOrEqual((36 / 13) * 1.000001);
    expect(found.at[0]).toBeCloseTo(6, 0);
  });

  it('never leaves its outline, from any start inside (seed 8)', () => {
    const inside = fc.tuple(
      fc.double({ min: 0.05, max: 0.9, noNaN: true }),
      fc.double({ min: 0.05, max: 0.9, noNaN: true }),
    );
    const property = fc.property(inside, ([u, v]) => {
      fc.pre(u + v < 0.95);
      const start: Point = [12 * u + 6 * v, -9 * v];
      const { at } = fitLabel(labelShape(box(1, 1)), start, sides(triangle), 3);
      const [s, t] = [at[1] / -9, (at[0] - (6 * at[1]) / -9) / 12];
      expect(s > 0 && t > 0 && s + t < 1).toBe(true);
    });
    fc.assert(property, { seed: 8, numRuns: 100 });
  });
});
