import { describe, expect, it } from 'vitest';
import { grownAfter, growthTime } from '../../src/sheets/shape/growth.ts';

describe('the growth', () => {
  it('takes one and a half to three seconds, longer for more panels', () => {
    expect([20, 75, 320, 1280].map(growthTime)).toEqual([1500, 1500, 3000, 3000]);
    expect(growthTime(150)).toBe(2100);
  });

  it('begins with one panel, never shrinks, and ends with all of them', () => {
    for (const panels of [1, 32, 320, 1280]) {
      const steps = Array.from({ length: 200 }, (_, i) =>
        grownAfter((i / 199) * growthTime(panels), panels),
      );
      expect(steps[0]).toBe(1);
      expect(steps.at(-1)).toBe(panels);
      expect(steps.every((shown, i) => i === 0 || shown >= (steps[i - 1] as number))).toBe(true);
    }
  });

  it('stays with one before it begins and with all after its end', () => {
    expect(grownAfter(-5, 320)).toBe(1);
    expect(grownAfter(1e9, 320)).toBe(320);
  });
});
