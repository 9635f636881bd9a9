import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/math/random.ts';
import { factorize } from '../../../src/math/sparse/factor.ts';
import { solve, solveSymmetric } from '../../../src/math/sparse/solve.ts';
import { symbolicFactor } from '../../../src/math/sparse/symbolic.ts';
import {
  combine,
  multiply,
  type SymmetricMatrix,
  symmetricOf,
} from '../../../src/math/sparse/symmetric.ts';
import { denseOf, denseSolve, farthest, grid, springs } from './fixtures.ts';

const loadOf = (n: number, seed: number): Float64Array => {
  const random = seededRandom(seed);
  return Float64Array.from({ length: n }, () => random.normal());
};

/** Part of the load that is left over, by the largest entry. */
const leftOver = (a: SymmetricMatrix, x: Float64Array, b: Float64Array): number =>
  farthest(multiply(a, x), b) / Math.max(...b.map(Math.abs));

const plus = (a: SymmetricMatrix, shift: number): SymmetricMatrix =>
  combine(
    1,
    a,
    1,
    symmetricOf(
      a.n,
      [...Array(a.n).keys()].map((i) => [i, i, shift] as const),
    ),
  );

describe('the factor of a sparse symmetric matrix', () => {
  for (const seed of [1, 2, 3, 4, 5, 6])
    it(`solves as Gauss does on the full matrix, seed ${seed}`, () => {
      const random = seededRandom(seed);
      const n = 5 + random.below(60);
      const a = springs(random, n, 2 * n);
      const b = loadOf(n, seed + 100);
      const x = solveSymmetric(a, b) as Float64Array;
      const wanted = denseSolve(denseOf(a), b);
      const most = Math.max(...wanted.map(Math.abs));
      expect(farthest(x, wanted)).toBeLessThan(1e-11 * most);
      const off = x.map((value) => value * (1 + 1e-10));
      expect(farthest(off, wanted)).toBeGreaterThan(1e-11 * most);
    });

  for (const [across, width] of [
    [1, 1],
    [3, 6],
    [9, 6],
    [12, 3],
    [20, 1],
  ])
    it(`leaves nothing over on a grid of ${across} by ${across} nodes of ${width} unknowns`, () => {
      const a = grid(seededRandom(across * 10 + width), across, width);
      const b = loadOf(a.n, 7);
      const x = solveSymmetric(a, b) as Float64Array;
      expect(leftOver(a, x, b)).toBeLessThan(1e-13);
      const off = x.map((value) => value * (1 + 1e-12));
      expect(leftOver(a, off, b)).toBeGreaterThan(1e-13);
    });

  it('gives the same answer in any order of elimination', () => {
    const random = seededRandom(11);
    const a = grid(random, 6, 3);
    const b = loadOf(a.n, 12);
    const x = solveSymmetric(a, b) as Float64Array;
    const order = Int32Array.from(random.shuffle([...Array(a.n).keys()]));
    const again = solve(factorize(symbolicFactor(a, order), a), b);
    expect(farthest(again, x)).toBeLessThan(1e-13);
  });

  it('fills less than half as much in the order of minimum degree as in a random one', () => {
    const random = seededRandom(13);
    const a = grid(random, 30, 2);
    const shuffled = Int32Array.from(random.shuffle([...Array(a.n).keys()]));
    expect(symbolicFactor(a).entries).toBeLessThan(0.5 * symbolicFactor(a, shuffled).entries);
  });

  it('works on matrices from 1e-9 to 1e9', () => {
    for (const size of [1e-9, 1, 1e9]) {
      const a = grid(seededRandom(14), 5, 3);
      const scaled = { ...a, value: a.value.map((v) => v * size) };
      const b = loadOf(a.n, 15);
      const x = solveSymmetric(scaled, b) as Float64Array;
      expect(leftOver(scaled, x, b)).toBeLessThan(1e-13);
    }
  });

  it('counts the eigenvalues below a shift by negative pivots', () => {
    // A string of n masses: 2 − 2 cos(k π / (n + 1)), k = 1 … n.
    const n = 40;
    const entries = [...Array(n).keys()].flatMap((i) =>
      i + 1 < n ? [[i, i, 2] as const, [i, i + 1, -1] as const] : [[i, i, 2] as const],
    );
    const string = symmetricOf(n, entries);
    const symbolic = symbolicFactor(string);
    for (const below of [0, 1, 7, 25, 40]) {
      const eigenvalue = (k: number): number => 2 - 2 * Math.cos((k * Math.PI) / (n + 1));
      const shift = (eigenvalue(below) + eigenvalue(below + 1)) / 2;
      expect(factorize(symbolic, plus(string, -shift)).negative).toBe(below);
    }
  });

  it('names the unknown at which a matrix is singular and holds it', () => {
    const free = springs(seededRandom(16), 20, 80, 0);
    const factor = factorize(symbolicFactor(free), free);
    expect(factor.weak).toHaveLength(1);
    expect(solveSymmetric(free, loadOf(20, 17))).toBeNull();
    const held = factor.weak[0];
    const b = loadOf(20, 18);
    b[held] -= b.reduce((sum, x) => sum + x, 0);
    const x = solve(factor, b);
    expect(x[held]).toBeCloseTo(0, 15);
    expect(leftOver(free, x, b)).toBeLessThan(1e-12);
  });

  it('serves every matrix of its pattern', () => {
    const a = grid(seededRandom(19), 6, 6);
    const symbolic = symbolicFactor(a);
    const b = loadOf(a.n, 20);
    for (const factor of [1, 3, 0.2]) {
      const other = { ...a, value: a.value.map((v) => v * factor) };
      expect(leftOver(other, solve(factorize(symbolic, other), b), b)).toBeLessThan(1e-13);
    }
  });

  it('refuses another pattern, a value that is no number and a load of another length', () => {
    const a = grid(seededRandom(21), 3, 2);
    const symbolic = symbolicFactor(a);
    expect(() => factorize(symbolic, grid(seededRandom(21), 4, 2))).toThrow(/32 unknowns.* of 18/);
    const odd = { ...a, value: a.value.map((v, e) => (e === 5 ? Number.NaN : v)) };
    expect(() => factorize(symbolic, odd)).toThrow('entry 5 of the matrix is NaN');
    expect(() => solve(factorize(symbolic, a), new Float64Array(3))).toThrow(RangeError);
  });

  it('takes a matrix of no unknowns', () => {
    const none = symmetricOf(0, []);
    expect(solveSymmetric(none, new Float64Array(0))).toEqual(new Float64Array(0));
  });
});
