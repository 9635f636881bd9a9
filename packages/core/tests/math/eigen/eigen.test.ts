import { describe, expect, it } from 'vitest';
import { symmetricEigen } from '../../../src/math/eigen/dense.ts';
import { dotOf, outermostEigen } from '../../../src/math/eigen/krylov.ts';
import { seededRandom } from '../../../src/math/random.ts';
import { factorize } from '../../../src/math/sparse/factor.ts';
import { solve } from '../../../src/math/sparse/solve.ts';
import { symbolicFactor } from '../../../src/math/sparse/symbolic.ts';
import { multiply, symmetricOf } from '../../../src/math/sparse/symmetric.ts';
import { denseOf, farthest, springs } from '../sparse/fixtures.ts';

/** A string of n masses: eigenvalues 2 − 2 cos(k π / (n + 1)), k = 1 … n. */
const string = (n: number) =>
  symmetricOf(
    n,
    [...Array(n).keys()].flatMap((i) =>
      i + 1 < n ? [[i, i, 2] as const, [i, i + 1, -1] as const] : [[i, i, 2] as const],
    ),
  );

const stringValue = (n: number, k: number): number => 2 - 2 * Math.cos((k * Math.PI) / (n + 1));

describe('the eigenvalues of a small full matrix', () => {
  it('are those of a string of masses', () => {
    const { values } = symmetricEigen(denseOf(string(30)), 30);
    const wanted = values.map((_, k) => stringValue(30, k + 1));
    expect(farthest(values, wanted)).toBeLessThan(1e-14 * 10);
  });

  for (const seed of [1, 2, 3])
    it(`satisfy A v = λ v with orthonormal vectors, seed ${seed}`, () => {
      const a = springs(seededRandom(seed), 25, 60);
      const { values, vectors } = symmetricEigen(denseOf(a), 25);
      for (let k = 0; k < 25; k++) {
        const v = vectors.slice(25 * k, 25 * k + 25);
        expect(
          farthest(
            multiply(a, v),
            v.map((x) => x * values[k]),
          ),
        ).toBeLessThan(1e-12);
        for (let j = 0; j <= k; j++)
          expect(dotOf(v, vectors.slice(25 * j, 25 * j + 25))).toBeCloseTo(j === k ? 1 : 0, 12);
      }
    });

  it('refuse an entry that is no number, and none need none', () => {
    expect(() => symmetricEigen([Number.NaN], 1)).toThrow(RangeError);
    expect(symmetricEigen([], 0).values).toHaveLength(0);
  });
});

describe('the outermost eigenvalues of an operator', () => {
  it('with the inverse of a shifted matrix are those nearest to the shift', () => {
    const n = 300;
    const a = string(n);
    const factor = factorize(symbolicFactor(a), a);
    const found = outermostEigen(
      { n, apply: (x) => solve(factor, x) },
      { count: 6, which: 'largest', random: seededRandom(4) },
    );
    expect(found.converged).toBe(true);
    found.values.forEach((value, k) => {
      expect(Math.abs(1 / value / stringValue(n, k + 1) - 1)).toBeLessThan(1e-9);
    });
  });

  it('are found as often as they occur', () => {
    // Four strings side by side: each eigenvalue four times.
    const n = 60;
    const one = string(n);
    const apply = (x: Float64Array): Float64Array => {
      const y = new Float64Array(4 * n);
      for (let k = 0; k < 4; k++) y.set(solve(factor, x.slice(k * n, k * n + n)), k * n);
      return y;
    };
    const factor = factorize(symbolicFactor(one), one);
    const found = outermostEigen(
      { n: 4 * n, apply },
      { count: 5, which: 'largest', random: seededRandom(5), block: 4 },
    );
    const wanted = [1, 1, 1, 1, 2].map((k) => stringValue(n, k));
    found.values.forEach((value, k) => {
      expect(Math.abs(1 / value / wanted[k] - 1)).toBeLessThan(1e-9);
    });
  });

  it('may be of either sign, and of an inner product other than the plain one', () => {
    // A = diag(−5, 1, 2, 4), B = diag(1, 1, 1, 2): A x = λ B x has −5, 1, 2, 2.
    const a = [-5, 1, 2, 4];
    const b = [1, 1, 1, 2];
    const found = outermostEigen(
      {
        n: 4,
        apply: (x) => x.map((v, i) => (v * a[i]) / b[i]),
        inner: (x) => x.map((v, i) => v * b[i]),
      },
      { count: 2, which: 'largest by size', random: seededRandom(6), block: 2 },
    );
    expect(found.values[0]).toBeCloseTo(-5, 12);
    expect(found.values[1]).toBeCloseTo(2, 12);
    for (const v of found.vectors)
      expect(
        dotOf(
          v,
          v.map((x, i) => x * b[i]),
        ),
      ).toBeCloseTo(1, 12);
  });

  it('are told to be unsharp where too few vectors are kept', () => {
    const n = 400;
    const a = string(n);
    const found = outermostEigen(
      { n, apply: (x) => multiply(a, x) },
      { count: 4, which: 'largest', random: seededRandom(7), most: 12 },
    );
    expect(found.converged).toBe(false);
  });

  it('are all there are where more are asked for, and none of nothing', () => {
    const a = string(3);
    const apply = (x: Float64Array): Float64Array => multiply(a, x);
    const options = { which: 'largest', random: seededRandom(8) } as const;
    expect(outermostEigen({ n: 3, apply }, { ...options, count: 9 }).values).toHaveLength(3);
    expect(outermostEigen({ n: 0, apply }, { ...options, count: 2 }).values).toEqual([]);
  });
});
