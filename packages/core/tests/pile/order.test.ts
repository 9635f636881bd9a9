// What a heap says must not hang on how it was written down.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/math/random.ts';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { mixedNet } from '../../src/nets/mixed.ts';
import { kindsOfPile } from '../../src/pile/kinds.ts';
import { fromOtherFace } from '../../src/pile/polygon.ts';
import type { Pile } from '../../src/pile/schema.ts';
import { heapOf, nearEqual, pileOf, type True } from './heap.ts';

const SEED = 23;

/** Kinds as they come out, whatever their readings were called. */
const shapes = (pile: Pile) => kindsOfPile(pile).kinds;

const reordered = (pile: Pile, seed: number): Pile => ({
  ...pile,
  readings: seededRandom(seed).shuffle(pile.readings),
});

describe('the kinds of a heap are the same', () => {
  const heap = fc.record({
    seed: fc.integer({ min: 1, max: 1e6 }),
    inside: fc.constantFrom(0, 0.4),
    unknown: fc.constantFrom(0, 0.4, 1),
    blunders: fc.constantFrom(0, 0.05),
  });

  test(`in any order of readings, faces known or not (seed ${SEED})`, () => {
    fc.assert(
      fc.property(heap, fc.integer({ min: 1, max: 1e6 }), (options, order) => {
        const kinds = nearEqual.map(([sides]): True => [sides, 4]);
        const { pile } = heapOf(kinds, { sd: 0.0007, ...options });
        expect(shapes(reordered(pile, order))).toEqual(shapes(pile));
      }),
      { seed: SEED, numRuns: 25 },
    );
  });

  test(`seen from the other face, each hand turned into the other (seed ${SEED})`, () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const { pile } = heapOf(
          [
            [[0.9, 1, 1.1], 5],
            [[0.95, 0.95, 1.2], 5],
          ],
          { sd: 0.0005, seed },
        );
        const turnedOver = {
          ...pile,
          readings: pile.readings.map((row) => ({
            ...row,
            seenFrom: 'inside' as const,
            sides: fromOtherFace(row.sides),
          })),
        };
        expect(shapes(turnedOver)).toEqual(shapes(pile));
        const wrongFace = {
          ...pile,
          readings: pile.readings.map((row) => ({ ...row, seenFrom: 'inside' as const })),
        };
        const hands = shapes(wrongFace).map((kind) => kind.hand);
        const other = { L: 'R', R: 'L' } as const;
        expect(hands).toEqual(shapes(pile).map(({ hand }) => hand && other[hand]));
      }),
      { seed: SEED, numRuns: 20 },
    );
  });

  test(`for panels of three to six sides, each read by two people (seed ${SEED})`, () => {
    for (const name of ['rhombicosidodecahedron', 'truncated icosahedron'] as const) {
      const { kinds } = shellOfNet(mixedNet(name), 2);
      const random = seededRandom(SEED);
      const readings = kinds.flatMap(({ sides }, k) =>
        Array.from({ length: 6 }, (_, i) => ({
          tag: `${k}-${i % 3}`,
          by: i < 3 ? 'Ann' : 'Bo',
          sides: sides.map((x) => x + 0.0005 * random.normal()),
        })),
      );
      const pile = pileOf({ readingSd: 0.0005, readings });
      const found = kindsOfPile(pile);
      expect(found.kinds.map((kind) => [kind.sides.length, kind.good, kind.hand])).toEqual(
        kinds
          .map(({ sides }) => [sides.length, 3, null])
          .sort((a, b) => Number(a[0]) - Number(b[0])),
      );
      expect(shapes(reordered(pile, SEED))).toEqual(found.kinds);
    }
  });
});
