import { kindsOfPile } from '@shellraise/core';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import {
  correct,
  readingsBehind,
  stillMeets,
  suspicionsOf,
} from '../../src/sheets/shape/suspects.ts';
import { ball, pileOf, shapeOf } from './notation.ts';

const reading = (tag: string, sides: number[], seenFrom = 'outside') => ({
  tag,
  by: 'Petra',
  sides,
  seenFrom,
});
const pile = pileOf({
  measuredAlong: 'holes',
  hubAllowance: 0.004,
  readings: [
    reading('a', [0.9, 1.0, 1.1]),
    reading('b', [1.1, 0.9, 1.0]),
    reading('c', [1.0, 0.9, 1.1], 'inside'),
    reading('d', [0.9, 1.0, 1.125]),
  ],
});
const worked = kindsOfPile(pile);
const [own] = worked.kinds;
const long = own?.sides.findIndex((side) => side > 1.05) ?? -1;

describe('readings behind a side', () => {
  it('are found whichever way the panel was turned and from whichever face it was read', () => {
    const behind = readingsBehind(own?.id ?? '', long, worked, pile);
    expect(behind.map(({ tag }) => tag)).toEqual(['a', 'b', 'c', 'd']);
    expect(behind.map(({ measured }) => measured)).toEqual([1.1, 1.1, 1.1, 1.125]);
    expect(behind.map(({ target }) => target.side)).toEqual([2, 0, 2, 2]);
  });

  it('include the row of the file', () => {
    const rows = pileOf({ kinds: [{ id: 'k', sides: [1, 1.1, 1.2], good: 3 }] });
    expect(readingsBehind('k', 1, kindsOfPile(rows), rows)).toEqual([
      { target: { list: 'kinds', row: 0, side: 1 }, tag: null, by: null, measured: 1.1 },
    ]);
  });
});

describe('suspicions', () => {
  it('of the pile itself name the one reading', () => {
    const [one, ...others] = suspicionsOf(null, worked, pile);
    expect(others).toEqual([]);
    expect(one).toMatchObject({ why: 'pile', side: 2, measured: 1.125 });
    expect(one?.behind[0]?.target).toEqual({ list: 'readings', row: 3, side: 2 });
    expect(one?.expected).toBeCloseTo(1.1, 6);
  });

  it('of the net are told as written, without the hub allowance, worst reading first, and once', () => {
    const { shell, kinds } = ball(1);
    const suspect = { kind: own?.id ?? '', side: long, measured: 1.129, expected: 1.104 };
    const all = suspicionsOf(shapeOf(shell, kinds, { suspects: [suspect] }), worked, pile);
    expect(all.length).toBe(1);
    expect(all[0]).toMatchObject({ why: 'net' });
    expect(all[0]?.expected).toBeCloseTo(1.1, 12);
    expect(all[0]?.behind.map(({ tag }) => tag)[0]).toBe('d');
  });
});

describe('a correction', () => {
  const doc = { project: { shellraise: 1 as const, title: '', pile }, drafts: [] };
  const target = { list: 'readings', row: 3, side: 2 } as const;

  it('changes the one length', () => {
    const after = produce(doc, (draft) => correct(draft, target, 1.1));
    expect(after.project.pile.readings[3]?.sides).toEqual([0.9, 1.0, 1.1]);
    expect(after.project.pile.readings[0]).toBe(doc.project.pile.readings[0]);
    expect(suspicionsOf(null, kindsOfPile(after.project.pile), after.project.pile)).toEqual([]);
  });

  it('is refused where the panel would not close', () => {
    expect(stillMeets(pile, target, 1.1)).toBe(true);
    expect(stillMeets(pile, target, 1.9)).toBe(false);
    expect(stillMeets(pile, target, 1.89)).toBe(true);
  });
});
