import { describe, expect, it } from 'vitest';
import { fewestHits } from '../../src/math/hitting-set.ts';
import { seededRandom } from '../../src/math/random.ts';

/** Size of the smallest set of elements below `n` that hits all, by trying every one. */
function bruteForce(sets: readonly (readonly number[])[], n: number): number {
  let best = n;
  for (let bits = 0; bits < 1 << n; bits++) {
    const size = [...Array(n).keys()].filter((e) => bits & (1 << e)).length;
    if (size < best && sets.every((set) => set.some((e) => bits & (1 << e)))) best = size;
  }
  return best;
}

describe('the fewest elements that hit all sets', () => {
  it('are as few as trying every choice finds (seeds 1 to 60)', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const random = seededRandom(seed);
      const count = 3 + Math.floor(40 * random.uniform());
      const sets = Array.from({ length: count }, () => {
        const set = [...Array(11).keys()].filter(() => random.uniform() < 0.25);
        return set.length > 0 ? set : [seed % 11];
      });
      const found = fewestHits(sets);
      if (typeof found === 'string') throw new Error(found);
      expect(sets.every((set) => set.some((e) => found.hits.includes(e)))).toBe(true);
      expect(found.hits.length).toBe(bruteForce(sets, 11));
    }
  });

  it('are none for no set, and the heavier of two that serve alike', () => {
    expect(fewestHits([])).toMatchObject({ hits: [] });
    expect(fewestHits([[3, 5]])).toMatchObject({ hits: [3] });
    expect(fewestHits([[3, 5]], { weight: (e) => e })).toMatchObject({ hits: [5] });
  });

  it('are none at all where a set is empty, and are given up in time', () => {
    expect(fewestHits([[1], []])).toBe('empty');
    const pairs = [...Array(12).keys()].map((k) => [k, (k + 1) % 12]);
    expect(fewestHits(pairs, { nodes: 1 })).toBe('gave up');
    expect(fewestHits(pairs)).toMatchObject({ hits: { length: 6 } });
  });
});
