import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turned } from '../../src/math/cyclic.ts';
import { seededRandom } from '../../src/math/random.ts';
import { kindsOfPile } from '../../src/pile/kinds.ts';
import type { ReadingRow } from '../../src/pile/schema.ts';
import { pileOf } from './heap.ts';

const SEED = 20261130;
const slim = [1.368, 1.368, 1.547];
const even = [1.547, 1.547, 1.547];

/** Fifteen slim panels and five even ones, tagged from 1, turned as they lie. */
function rows(): ReadingRow[] {
  const random = seededRandom(SEED);
  return Array.from({ length: 20 }, (_, i) => {
    const sides = turned(i % 4 === 3 ? even : slim, i % 3);
    return {
      tag: String(i + 1),
      sides: sides.map((side) => side + 0.0005 * random.normal()),
      seenFrom: 'unknown' as const,
    };
  });
}

const worked = (readings: readonly object[]) => kindsOfPile(pileOf({ readings }));
const counts = (readings: readonly object[]) => worked(readings).kinds.map(({ good }) => good);
/** The rows with another tag on one of them. */
const retagged = (row: number, tag: string) =>
  rows().map((one, i) => (i === row ? { ...one, tag } : one));

describe('one tag on two panels', () => {
  it('makes one kind of no two, and is told with its rows', () => {
    const { kinds, sharedTags } = worked(retagged(3, '3'));
    expect(kinds.map(({ good }) => good)).toEqual([15, 5]);
    expect(sharedTags).toEqual([{ tag: '3', panels: [[2], [3]] }]);
  });

  it('is told in whatever order it was written down', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...rows().keys()], { minLength: 20 }), (order) => {
        const list = retagged(3, '3');
        const { kinds, sharedTags } = worked(order.map((i) => list[i] as ReadingRow));
        expect(kinds.map(({ good }) => good)).toEqual([15, 5]);
        const at = [order.indexOf(2), order.indexOf(3)].sort((a, b) => a - b);
        expect(sharedTags).toEqual([{ tag: '3', panels: at.map((row) => [row]) }]);
      }),
      { seed: SEED, numRuns: 20 },
    );
  });

  it.each([
    ['read again from the other face', [...slim].reverse()],
    ['read by a tape that begins an inch late', slim.map((side) => side + 0.0254)],
    ['with two digits swapped', [1.368, 1.386, 1.547]],
    ['with a side in inches', [0.5386, 1.368, 1.547]],
    ['like no other panel at all', [1.7, 1.2, 1.9]],
  ])('is not what a panel %s shows', (_, sides) => {
    const again = [...rows(), { tag: '3', sides, seenFrom: 'unknown' }];
    const { sharedTags, kinds } = worked(again);
    expect(sharedTags).toEqual([]);
    expect(kinds.slice(0, 2).map(({ good }) => good)).toEqual([15, 5]);
  });

  it('is not what panels that lie as near as two readings show', () => {
    const near = rows().map((one, i) =>
      i % 4 === 3 ? { ...one, sides: [1.372, 1.372, 1.543] } : one,
    );
    expect(worked(near.map((one, i) => (i === 3 ? { ...one, tag: '3' } : one))).sharedTags).toEqual(
      [],
    );
  });

  it('leaves a pile alone in which each panel has its own', () => {
    expect(worked(rows()).sharedTags).toEqual([]);
    expect(counts(rows())).toEqual([15, 5]);
  });
});
