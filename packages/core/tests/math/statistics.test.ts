// Critical values of the chi-square distribution: NIST/SEMATECH e-Handbook of Statistical Methods,
// 1.3.6.7.4 (values from memory). Logarithm of the gamma function: factorials.

import { expect, test } from 'vitest';
import { chiSquareTail, logGamma } from '../../src/math/statistics.ts';

test('the tail beyond a tabled critical value is its level, to the table’s three decimals', () => {
  for (const [dof, level, critical] of [
    [1, 0.05, 3.841],
    [2, 0.05, 5.991],
    [5, 0.01, 15.086],
    [10, 0.05, 18.307],
    [10, 0.1, 15.987],
    [30, 0.05, 43.773],
    [100, 0.05, 124.342],
  ] as const) {
    expect(Math.abs(chiSquareTail(critical, dof) - level)).toBeLessThan(2e-5);
    expect(Math.abs(chiSquareTail(critical * 1.005, dof) - level)).toBeGreaterThan(2e-5);
  }
});

test('with two degrees of freedom the tail is exp(−x / 2)', () => {
  for (const x of [1e-3, 0.5, 3, 20, 100])
    expect(chiSquareTail(x, 2) / Math.exp(-x / 2)).toBeCloseTo(1, 12);
});

test('nothing is below zero, and no degrees of freedom exceed nothing', () => {
  expect(chiSquareTail(0, 3)).toBe(1);
  expect(chiSquareTail(5, 0)).toBe(1);
});

test('the logarithm of gamma is that of the factorial', () => {
  let factorial = 1;
  for (let n = 1; n < 20; n++) {
    expect(logGamma(n)).toBeCloseTo(Math.log(factorial), 11);
    factorial *= n;
  }
  expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 12);
});
