import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Point } from '../../src/papers/drawing.ts';
import { hullOf } from '../../src/papers/hull.ts';

it('leaves out what lies within and on the sides', () => {
  const square: Point[] = [
    [0, 0],
    [2, 0],
    [2, 2],
    [0, 2],
  ];
  expect(hullOf([...square, [1, 1], [1, 0], [2, 1]])).toEqual(square);
});

it('holds every point, and is made of some of them (seed 3)', () => {
  const coordinate = fc.integer({ min: -50, max: 50 });
  fc.assert(
    fc.property(
      fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 30 }),
      (raw) => {
        const points = raw as Point[];
        const hull = hullOf(points);
        for (const corner of hull) expect(points).toContain(corner);
        hull.forEach((a, i) => {
          const b = hull[(i + 1) % hull.length] as Point;
          for (const c of points)
            expect(
              (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]),
            ).toBeGreaterThanOrEqual(0);
        });
      },
    ),
    { seed: 3, numRuns: 200 },
  );
});
