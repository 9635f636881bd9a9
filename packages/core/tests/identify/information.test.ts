// Expected information against closed forms, and against a simulation with a fixed seed.

import { expect, test } from 'vitest';
import {
  entropy,
  inProportion,
  oddsAt,
  readingBits,
  sharpeningBits,
  sightBits,
} from '../../src/identify/information.ts';
import { seededRandom } from '../../src/math/random.ts';

const at = (mean: number, sd = 1) => ({ mean, variance: sd ** 2 });

test('a fair choice of two is one bit, of four two, a certainty none', () => {
  expect(entropy([1, 1])).toBeCloseTo(1, 12);
  expect(entropy([2, 2, 2, 2])).toBeCloseTo(2, 12);
  expect(entropy([1, 0])).toBe(0);
});

test('a reading tells all where cases lie far apart, and nothing where they are alike', () => {
  expect(readingBits([1, 3], [at(0), at(40)])).toBeCloseTo(entropy([1, 3]), 6);
  expect(readingBits([1, 3], [at(5, 2), at(5, 2)])).toBeCloseTo(0, 12);
  expect(readingBits([1, 0], [at(0), at(3)])).toBeCloseTo(0, 12);
});

test('scale and zero do not matter: metres or millimetres', () => {
  const inMetres = readingBits([0.3, 0.7], [at(1.128, 0.001), at(1.131, 0.0012)]);
  const inMillimetres = readingBits([3, 7], [at(0, 1), at(3, 1.2)]);
  expect(inMetres).toBeCloseTo(inMillimetres, 9);
});

test('a reading of two cases one deviation either side tells what a simulation finds, seed 5', () => {
  const random = seededRandom(5);
  const [odds, cases] = [
    [0.4, 0.6],
    [at(-1), at(1, 1.5)],
  ] as const;
  let left = 0;
  const draws = 100_000;
  for (let i = 0; i < draws; i++) {
    const one = cases[random.uniform() < odds[0] ? 0 : 1];
    left += entropy(oddsAt(odds, cases, one.mean + Math.sqrt(one.variance) * random.normal()));
  }
  const simulated = entropy(odds) - left / draws;
  const told = readingBits(odds, cases);
  expect(Math.abs(told - simulated)).toBeLessThan(0.004);
  expect(Math.abs(told - (simulated + 0.04))).toBeGreaterThan(0.004);
});

test('the odds after a reading follow Bayes', () => {
  const [a, b] = oddsAt([1, 1], [at(0), at(2)], 0) as [number, number];
  expect(a / b).toBeCloseTo(Math.exp(2), 9);
  expect(oddsAt([1, 1], [at(0), at(1)], 1e4).every(Number.isFinite)).toBe(true);
});

test('a look tells all where each case shows another thing, and nothing where all show the same', () => {
  expect(
    sightBits(
      [1, 1],
      [
        [5, 0],
        [0, 3],
      ],
    ),
  ).toBeCloseTo(1, 12);
  expect(
    sightBits(
      [1, 1],
      [
        [2, 6],
        [1, 3],
      ],
    ),
  ).toBeCloseTo(0, 12);
});

test('a look that one case shows half of the time: the channel that errs one way, 0.3113 bits', () => {
  expect(
    sightBits(
      [1, 1],
      [
        [1, 0],
        [1, 1],
      ],
    ),
  ).toBeCloseTo(0.3113, 4);
});

test('halving a variance far above what matters gains half a bit, far below it nothing', () => {
  expect(sharpeningBits(1e6, 5e5, 1)).toBeCloseTo(0.5, 5);
  expect(sharpeningBits(1e-6, 5e-7, 1)).toBeLessThan(1e-5);
  expect(sharpeningBits(1, 2, 1)).toBe(0);
});

test('shares add up to 1', () => {
  expect(inProportion([1, 3])).toEqual([0.25, 0.75]);
});
