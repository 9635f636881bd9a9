// How the soak of a weekend judges memory: what a heap grows by besides what it holds.

import { seededRandom } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { growthOf, type HourWeight, isFlat, weigh } from '../../bench/weekend/weight.ts';

const MB = 1e6;

/** Two days of twelve hours' work and two nights; a heap of 40 MB, 1,500 bytes an entry, some noise, and so
 * much more each hour. */
function heaps(leak: number, isIdle = false): HourWeight[] {
  const random = seededRandom(5);
  return Array.from({ length: 48 }, (_, hour) => {
    const worked = 12 * Math.floor(hour / 24) + Math.min(12, hour % 24);
    const entries = isIdle ? 4000 : Math.round(170 * worked);
    const heap = 40 * MB + 1500 * entries + leak * hour + 20_000 * random.normal();
    return { hour, entries, heap, rss: 0 };
  });
}

describe('the growth of a heap (seed 5)', () => {
  it('is told apart into what entries take and what comes by the hour', () => {
    const { perEntry, perHour, perHourSd } = growthOf(heaps(30_000));
    expect(perEntry).toBeGreaterThan(1450);
    expect(perEntry).toBeLessThan(1550);
    expect(Math.abs(perHour - 30_000)).toBeLessThan(3 * perHourSd);
    expect(perHourSd).toBeLessThan(2000);
  });

  it.each([false, true])(
    'is flat by itself, and not where it grows by more than is let pass (idle: %s)',
    (isIdle) => {
      expect(isFlat(growthOf(heaps(0, isIdle)), 48, 0.05)).toBe(true);
      // 5 % of 40 MB over 48 hours are some 42 kB an hour.
      expect(isFlat(growthOf(heaps(60_000, isIdle)), 48, 0.05)).toBe(false);
      expect(isFlat(growthOf(heaps(420_000, isIdle)), 48, 0.05)).toBe(false);
    },
  );

  it('is not told from too few hours, nor weighed without a collection', () => {
    expect(() => growthOf(heaps(0).slice(0, 4))).toThrow('4 hours are too few');
    expect(() => weigh(0)).toThrow('--expose-gc');
  });
});
