import { expect, test } from 'vitest';
import type { Vec3 } from '../../src/math/vector.ts';
import { dihedral } from '../../src/sphere/dihedral.ts';

// A seam along x at height 1; left is +y seen from outside (above).
const along = (left: Vec3, right: Vec3): number => dihedral([0, 0, 1], [2, 0, 1], left, right);

test('two panels in one plane meet at 180°', () => {
  expect(along([1, 1, 1], [0, -3, 1])).toBeCloseTo(Math.PI, 14);
});

test('panels that fall away from a seam that stands out meet at less than 180°', () => {
  expect(along([1, 1, 0], [1, -1, 0])).toBeCloseTo(Math.PI / 2, 14);
  expect(along([5, 1, 1], [0, 0, 0])).toBeCloseTo(Math.PI / 2, 14);
});

test('panels that rise from a folded-in seam meet at more than 180°', () => {
  expect(along([1, 1, 2], [1, -1, 2])).toBeCloseTo(1.5 * Math.PI, 14);
});

test('walking the seam the other way with left and right swapped gives the same angle', () => {
  const there = dihedral([0, 0, 1], [2, 0, 1], [1, 1, 0.5], [0, -2, 0.3]);
  expect(dihedral([2, 0, 1], [0, 0, 1], [0, -2, 0.3], [1, 1, 0.5])).toBeCloseTo(there, 14);
});

test('a panel without width has no angle', () => {
  expect(along([1, 0, 1], [0, -1, 1])).toBeNaN();
});
