import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/math/random.ts';
import { factorize } from '../../../src/math/sparse/factor.ts';
import { solve } from '../../../src/math/sparse/solve.ts';
import { solveManyInto } from '../../../src/math/sparse/solve-many.ts';
import { symbolicFactor } from '../../../src/math/sparse/symbolic.ts';
import { symmetricOf } from '../../../src/math/sparse/symmetric.ts';
import { farthest, grid } from './fixtures.ts';

describe('many right sides at once', () => {
  for (const count of [0, 1, 3, 4, 5, 9])
    it(`are solved as one by one: ${count} of them, seed ${count}`, () => {
      const random = seededRandom(count);
      const a = grid(random, 7, 3);
      const factor = factorize(symbolicFactor(a), a);
      const loads = Array.from({ length: count }, () =>
        Float64Array.from({ length: a.n }, () => random.normal()),
      );
      const list = loads.map((b) => b.slice());
      solveManyInto(factor, list);
      list.forEach((x, i) => {
        const wanted = solve(factor, loads[i] as Float64Array);
        const most = Math.max(...wanted.map(Math.abs));
        expect(farthest(x, wanted)).toBeLessThan(1e-12 * most);
        expect(
          farthest(
            x.map((value) => value * (1 + 1e-11)),
            wanted,
          ),
        ).toBeGreaterThan(1e-12 * most);
      });
    });

  it('leave at rest what was held because its pivot vanished', () => {
    const a = symmetricOf(2, [
      [0, 0, 2],
      [1, 1, 0],
    ]);
    const list = [Float64Array.of(4, 5)];
    solveManyInto(factorize(symbolicFactor(a), a), list);
    expect([...(list[0] as Float64Array)]).toEqual([2, 0]);
  });

  it('are refused where one is of another length', () => {
    const a = symmetricOf(2, [
      [0, 0, 2],
      [1, 1, 3],
    ]);
    const factor = factorize(symbolicFactor(a), a);
    expect(() => solveManyInto(factor, [new Float64Array(2), new Float64Array(3)])).toThrow(
      '3 numbers for 2 unknowns',
    );
  });
});
