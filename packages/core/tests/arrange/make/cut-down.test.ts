import { describe, expect, it } from 'vitest';
import { cutDown } from '../../../src/arrange/make/cut-down.ts';
import type { Kind } from '../../../src/pile/kind.ts';

const kind = (id: string, side: number): Kind => ({
  id,
  marks: [],
  sides: [side, side, side],
  sideSds: [0.001, 0.001, 0.001],
  hand: null,
  good: 9,
  repair: 0,
  scrap: 0,
  counted: true,
  mass: null,
});
const kinds = [kind('small', 1), kind('large', 2), kind('larger', 3), kind('less', 0.9)];

describe('kinds that a panel could be cut from', () => {
  it('are those with panels to spare, the most room first, with the room that a ruler finds', () => {
    const found = cutDown(kinds, 0, [5, 2, 1, 5]);
    expect(found.map(({ kind, spare }) => [kind, spare])).toEqual([
      [2, 1],
      [1, 2],
    ]);
    expect(found[1]?.trim.margin).toBeCloseTo(0.5 * Math.sin(Math.PI / 3), 12);
  });

  it('are none without a spare, and never the kind itself', () => {
    expect(cutDown(kinds, 0, [5, 0, 0, 5])).toEqual([]);
    expect(cutDown(kinds, 2, [5, 5, 5, 5])).toEqual([]);
  });

  it('want a kind of the list', () => {
    expect(() => cutDown(kinds, 4, [])).toThrow('kind 4 of 4');
  });
});
