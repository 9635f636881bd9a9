import { expect, test } from 'vitest';
import { inUnitOfOthers, lonelySides, rareKinds } from '../../src/identify/lonely.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindWith } from './piles.ts';

const kind = (id: string, sides: readonly number[], good = 0): Kind => ({
  ...kindWith(id, sides, 0.001),
  good,
  counted: good > 0,
});

test('a side is lonely where no other side is as long, be it of its own kind', () => {
  const kinds = [kind('1', [1, 1, 1.2]), kind('2', [1.2, 1.3, 1.4]), kind('3', [1.3, 1.3, 1.5])];
  expect(lonelySides(kinds)).toEqual([
    { kind: 1, side: 2 },
    { kind: 2, side: 2 },
  ]);
});

test('sides meet within 3.5 deviations of their difference, not beyond', () => {
  const pair = (gap: number) => [kind('1', [1, 1, 1]), kind('2', [1.2, 1.2, 1 + gap])];
  expect(lonelySides(pair(3.4e-3 * Math.SQRT2))).toEqual([]);
  expect(lonelySides(pair(3.6e-3 * Math.SQRT2))).toEqual([{ kind: 1, side: 2 }]);
});

test('kinds of up to five panels are rare where most have four times as many', () => {
  const counts = (...all: number[]) => all.map((n, i) => kind(`${i}`, [1, 1, 1], n));
  expect(rareKinds(counts(60, 20, 12, 1, 5))).toEqual([3, 4]);
  expect(rareKinds(counts(60, 20, 12, 6))).toEqual([]);
  expect(rareKinds(counts(8, 8, 3))).toEqual([]);
  expect(rareKinds(counts(20, 20, 1, 1, 1))).toEqual([2, 3, 4]);
});

test('kinds that nobody counted are not rare', () => {
  expect(rareKinds([kind('1', [1, 1, 1]), kind('2', [1, 1, 1]), kind('3', [1, 1, 1], 20)])).toEqual(
    [],
  );
});

test('inches written as centimetres are told by the scale of the others', () => {
  const others = [kind('1', [1, 1, 1.2]), kind('2', [1.2, 1.3, 1.4])];
  const slipped = kind('3', [1.3 / 2.54, 1.3 / 2.54, 1.2 / 2.54]);
  const back = inUnitOfOthers([...others, slipped], 2) as number[];
  expect(back.map((x) => Number(x.toFixed(9)))).toEqual([1.3, 1.3, 1.2]);
  expect(inUnitOfOthers([...others, slipped], 0)).toBeNull();
});
