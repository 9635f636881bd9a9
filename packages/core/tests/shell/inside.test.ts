import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distanceToSegment, isInside, type Point, pointInside } from '../../src/shell/inside.ts';

const SEED = 12;
/** An L, one wide, along both axes from the origin. */
const ell: readonly Point[] = [
  [0, 0],
  [5, 0],
  [5, 1],
  [1, 1],
  [1, 5],
  [0, 5],
];

describe('a point of an outline', () => {
  test(`is inside an L where either arm holds it (seed ${SEED})`, () => {
    // Between the quarters, so that none lies on an edge.
    const coordinate = fc.integer({ min: -4, max: 23 }).map((n) => n / 4 + 1 / 8);
    fc.assert(
      fc.property(coordinate, coordinate, (u, v) => {
        const arm = (x: number, y: number): boolean => x > 0 && x < 5 && y > 0 && y < 1;
        expect(isInside(ell, [u, v])).toBe(arm(u, v) || arm(v, u));
        expect(isInside([...ell].reverse(), [u, v])).toBe(arm(u, v) || arm(v, u));
      }),
      { seed: SEED },
    );
  });

  test('is the one wished for where that lies inside, else one deep inside', () => {
    expect(pointInside(ell, [4, 0.5])).toEqual([4, 0.5]);
    const at = pointInside(ell, [3, 3]);
    expect(isInside(ell, at)).toBe(true);
    const depth = Math.min(
      ...ell.map((a, i) => distanceToSegment(at, a, ell[(i + 1) % 6] as Point)),
    );
    // The deepest point of this L is 2 − √2 from its sides.
    expect(depth).toBeGreaterThan(0.45);
    expect(depth).toBeLessThan(2 - Math.SQRT2);
  });

  test('is as far from a segment as from its nearest point', () => {
    expect(distanceToSegment([1, 2], [0, 0], [4, 0])).toBe(2);
    expect(distanceToSegment([-3, 4], [0, 0], [4, 0])).toBe(5);
    expect(distanceToSegment([7, 4], [0, 0], [4, 0])).toBe(5);
    expect(distanceToSegment([3, 4], [0, 0], [0, 0])).toBe(5);
  });
});
