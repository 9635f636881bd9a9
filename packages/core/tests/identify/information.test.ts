import { expect, test } from 'vitest';
import { oddsAt, readingBits, sharpeningBits, sightBits } from '../../src/identify/information.ts';
import { seededRandom } from '../../src/math/random.ts';

test('a reading that parts four equal cases tells two bits, one that parts none tells nothing', () => {
  const apart = [0, 1, 2, 3].map((mean) => ({ mean, variance: 1e-4 }));
  expect(readingBits([1, 1, 1, 1], apart)).toBeCloseTo(2, 4);
  expect(readingBits([1, 1], [apart[0], apart[0]] as typeof apart)).toBeCloseTo(0, 9);
});

test('the bits of a reading are what it lowers the entropy by on average, seed 1', () => {
  const random = seededRandom(1);
  const odds = [0.6, 0.3, 0.1];
  const cases = [
    { mean: 0, variance: 1 },
    { mean: 1.5, variance: 0.5 },
    { mean: 3, variance: 2 },
  ];
  const entropy = (list: readonly number[]): number =>
    list.reduce((bits, p) => (p > 0 ? bits - p * Math.log2(p) : bits), 0);
  let left = 0;
  const tries = 40_000;
  for (let i = 0; i < tries; i++) {
    const u = random.uniform();
    const own = cases[u < 0.6 ? 0 : u < 0.9 ? 1 : 2] as (typeof cases)[number];
    const x = own.mean + Math.sqrt(own.variance) * random.normal();
    left += entropy(oddsAt(odds, cases, x)) / tries;
  }
  expect(Math.abs(readingBits(odds, cases) - (entropy(odds) - left))).toBeLessThan(0.015);
});

test('a look that is so in one of two cases tells a bit, one that is so in both tells nothing', () => {
  const [yes, no] = [
    [1, 0],
    [0, 1],
  ];
  expect(sightBits([1, 1], [yes as number[], no as number[]])).toBeCloseTo(1, 12);
  expect(sightBits([1, 1], [yes as number[], yes as number[]])).toBe(0);
});

test('a variance quartered gains a bit, and nothing far within the tolerance', () => {
  expect(sharpeningBits(4, 1, 0)).toBe(1);
  expect(sharpeningBits(4e-8, 1e-8, 1)).toBeLessThan(1e-7);
});
