import { describe, expect, it } from 'vitest';
import { trims } from '../../../src/arrange/make/trim.ts';

describe('cutting a panel down', () => {
  it('keeps a flange: a 3-4-5 panel comes out of a 6-8-10 one on each of its sides', () => {
    const found = trims([6, 8, 10], [3, 4, 5], 0);
    for (const side of [0, 1, 2])
      expect(found.some((one) => one.keptSide === side && one.becomes === side)).toBe(true);
  });

  it('leaves the room that a ruler finds: an equilateral of 1 in one of 2 has a quarter of its height left', () => {
    // Slid to the middle of the side, the corner points are 0.5 from the ends: room 0.5 · sin 60° at
    // the foot; the tip stands 2 · sin 60° / 2 below the crown.
    const [best] = trims([2, 2, 2], [1, 1, 1], 0);
    expect(best?.from).toBeCloseTo(0.5, 12);
    expect(best?.margin).toBeCloseTo(0.5 * Math.sin(Math.PI / 3), 12);
  });

  it('is not possible with less room than asked, nor from a smaller panel', () => {
    expect(trims([2, 2, 2], [1, 1, 1], 0.44)).toEqual([]);
    expect(trims([1, 1, 1], [2, 2, 2], 0)).toEqual([]);
    expect(trims([1, 1, 3], [1, 1, 1], 0)).toEqual([]);
  });

  it('lies with the same face up: the other hand of a lean panel does not come out of its own size', () => {
    const lean = [1, 1.4, 1.8];
    expect(trims(lean, lean, -1e-9).length).toBeGreaterThan(0);
    expect(trims(lean, [...lean].reverse(), -1e-9)).toEqual([]);
  });

  it('gives corners that lie inside by the margin, on the kept side', () => {
    for (const { corners, margin } of trims([1.1, 1.2, 1.3], [0.9, 1, 1.05], 0)) {
      expect(margin).toBeGreaterThanOrEqual(0);
      expect(corners[0]?.[1]).toBeCloseTo(0, 12);
      expect(corners[1]?.[1]).toBeCloseTo(0, 12);
      const sides = corners.map(([x, y], i) => {
        const [u, v] = corners[(i + 1) % 3] as readonly [number, number];
        return Math.hypot(u - x, v - y);
      });
      expect([...sides].sort()).toEqual([0.9, 1, 1.05].map((side) => expect.closeTo(side, 9)));
    }
  });
});
