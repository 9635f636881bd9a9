import { describe, expect, it } from 'vitest';
import { wayRound } from '../../src/sheets/record/way-round.ts';
import { kinds, numbers, placeOf, shell } from '../places/notation.ts';

describe('which way round a panel sits', () => {
  it('is each of its sides with the place beyond, the same seam said from both sides', () => {
    for (const number of ['1-01', '2-01']) {
      const place = placeOf(number);
      const sides = wayRound(shell, kinds, numbers, place);
      expect(sides).toHaveLength(shell.placeStart[place + 1]! - shell.placeStart[place]!);
      for (const { length, towards } of sides) {
        if (towards === null) continue;
        const back = wayRound(shell, kinds, numbers, placeOf(towards));
        const met = back.find((one) => one.towards === number);
        expect(met?.length).toBeCloseTo(length ?? Number.NaN, 2);
      }
    }
  });

  it('is told without lengths where the kind is unknown', () => {
    expect(wayRound(shell, [], numbers, 0).every(({ length }) => length === null)).toBe(true);
  });
});
