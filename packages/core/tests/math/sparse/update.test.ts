import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/math/random.ts';
import { factorize } from '../../../src/math/sparse/factor.ts';
import { solve } from '../../../src/math/sparse/solve.ts';
import { symbolicFactor } from '../../../src/math/sparse/symbolic.ts';
import { combine, multiply, symmetricOf } from '../../../src/math/sparse/symmetric.ts';
import { updateFactorInto } from '../../../src/math/sparse/update.ts';
import { farthest, grid } from './fixtures.ts';

const off = (a: Float64Array, b: Float64Array): number =>
  farthest(a, b) / Math.max(...b.map(Math.abs));

describe('an updated factor', () => {
  for (const [count, seed] of [
    [1, 1],
    [5, 2],
    [40, 3],
  ])
    it(`solves as one made at once, after ${count} outer products, seed ${seed}`, () => {
      const random = seededRandom(seed);
      const a = grid(random, 7, 3);
      const symbolic = symbolicFactor(a);
      const factor = factorize(symbolic, a);
      const [values, d] = [factor.values.slice(), factor.d.slice()];
      let changed = a;
      const unknown: number[] = [];
      const value: number[] = [];
      const start = [0];
      for (let v = 0; v < count; v++) {
        const node = random.below(48);
        const list = [...Array(3).keys()].map((k) => 3 * node + k);
        const w = list.map(() => random.normal());
        unknown.push(...list, -1);
        value.push(...w, 99);
        start.push(unknown.length);
        const outer = list.flatMap((i, p) =>
          list.slice(0, p + 1).map((j, q) => [i, j, w[p] * w[q]] as const),
        );
        changed = combine(1, changed, 1, symmetricOf(a.n, outer));
      }
      const vectors = {
        start: Int32Array.from(start),
        unknown: Int32Array.from(unknown),
        value: Float64Array.from(value),
      };
      updateFactorInto(values, d, symbolic, vectors, 1);
      const x = Float64Array.from({ length: a.n }, () => random.normal());
      const found = solve({ ...factor, values, d }, multiply(changed, x));
      expect(off(found, x)).toBeLessThan(1e-12);
      updateFactorInto(values, d, symbolic, vectors, -1);
      expect(off(solve({ ...factor, values, d }, multiply(a, x)), x)).toBeLessThan(1e-11);
      expect(off(solve({ ...factor, values, d }, multiply(changed, x)), x)).toBeGreaterThan(1e-4);
    });
});
