import { describe, expect, it } from 'vitest';
import { assignment } from '../../src/math/assignment.ts';
import { seededRandom } from '../../src/math/random.ts';

type Costs = readonly (readonly number[])[];
const sumOf = (cost: Costs, columns: readonly number[]): number =>
  columns.reduce((sum, c, r) => sum + (cost[r]?.[c] as number), 0);

/** The least sum by trying all ways. */
function leastOf(cost: Costs, row = 0, taken = 0): number {
  if (row === cost.length) return 0;
  return Math.min(
    ...(cost[row] as readonly number[]).map((x, c) =>
      taken & (1 << c) ? Infinity : x + leastOf(cost, row + 1, taken | (1 << c)),
    ),
  );
}

describe('an assignment', () => {
  it('is the cheapest of all ways, each column once (seeds 1 to 60)', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const random = seededRandom(seed);
      const [rows, columns] = [1 + random.below(5), 5 + random.below(3)];
      const cost = Array.from({ length: rows }, () =>
        Array.from({ length: columns }, () => Math.round(20 * random.normal())),
      );
      const found = assignment(cost);
      expect(new Set(found).size).toBe(rows);
      expect(sumOf(cost, found)).toBe(leastOf(cost));
    }
  });
  it('of nothing is nothing; of too few columns or no numbers it is refused', () => {
    expect(assignment([])).toEqual([]);
    expect(() => assignment([[1], [2]])).toThrow('2 rows and 1 columns');
    expect(() => assignment([[1, Number.NaN]])).toThrow('not 2 numbers');
  });
});
