import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lowestTurn, turned } from '../../src/math/cyclic.ts';

const SEED = 17;
const list = fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 1, maxLength: 6 });

describe('a list without a first item', () => {
  test(`is turned back by the rest of its length (seed ${SEED})`, () => {
    fc.assert(
      fc.property(list, fc.nat(5), (items, by) => {
        expect(turned(turned(items, by), items.length - (by % items.length))).toEqual(items);
      }),
      { seed: SEED },
    );
  });

  test(`has one lowest turn wherever it starts, the least of several (seed ${SEED})`, () => {
    fc.assert(
      fc.property(list, fc.nat(5), (items, by) => {
        const other = turned(items, by);
        expect(turned(other, lowestTurn(other))).toEqual(turned(items, lowestTurn(items)));
        const texts = items.map((_, i) => turned(items, i).join());
        expect(lowestTurn(items)).toBe(texts.indexOf([...texts].sort()[0] as string));
      }),
      { seed: SEED },
    );
    expect(lowestTurn([])).toBe(0);
  });
});
