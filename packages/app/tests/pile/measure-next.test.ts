import { kindsOfPile, type PileKinds, type ReadingRow } from '@shellraise/core';
import { describe, expect, test } from 'vitest';
import { MOST_THINGS, measureNext } from '../../src/engine/measure-next.ts';
import { docOfReadings, reading } from './notation.ts';

const worked = (readings: readonly ReadingRow[]): PileKinds =>
  kindsOfPile(docOfReadings(...readings).project.pile);
const next = (readings: readonly ReadingRow[], most = MOST_THINGS) =>
  measureNext(docOfReadings(...readings).project.pile, worked(readings), most);

const isosceles = (n: number): ReadingRow[] =>
  Array.from({ length: n }, (_, i) => reading([0.92, 0.92 + (i % 3) * 2e-4, 1.073]));
const handed = (n: number): ReadingRow[] =>
  Array.from({ length: n }, () => reading([1.071, 1.086, 1.138]));

test('an empty pile asks for nothing', () => {
  expect(next([])).toEqual([]);
});

test('a reading that stands off comes first, with its side and what it should read', () => {
  const readings = [...isosceles(12), reading([0.92, 0.9254, 1.073])];
  expect(next(readings)[0]).toMatchObject({
    why: 'suspect',
    row: 12,
    side: 1,
    lengths: [0.9254, expect.closeTo(0.92, 2)],
  });
});

test('a reading that went wrong is told where it is put right, not here as well', () => {
  const readings = [...isosceles(12), reading([0.92, 0.947, 1.073])];
  const { slips, suspects } = worked(readings);
  expect(slips.map((one) => one.reading)).toEqual([12]);
  expect(suspects.map((one) => one.reading)).toContain(12);
  expect(next(readings, 9).filter(({ row }) => row === 12)).toEqual([]);
});

test('a kind that rests on one reading asks for another, and names the one', () => {
  const things = next([...isosceles(8), reading([1.1, 1.15, 1.2])]);
  expect(things).toContainEqual(expect.objectContaining({ why: 'one reading', row: 8 }));
});

test('a panel whose face decides its hand is to be looked at', () => {
  const mirrored = Array.from({ length: 6 }, () => reading([1.138, 1.086, 1.071]));
  const unknown = reading([1.071, 1.086, 1.138], { seenFrom: 'unknown' });
  const things = next([...handed(6), ...mirrored, unknown]);
  expect(things).toContainEqual(expect.objectContaining({ why: 'face', row: 12 }));
});

describe('people', () => {
  const by = (name: string, rows: readonly ReadingRow[]) =>
    rows.map((one) => ({ ...one, by: name }));

  test('who shares neither panel nor kind with anyone is to measure what others measured', () => {
    const readings = [...by('Ada', isosceles(6)), ...by('Bo', handed(6))];
    expect(next(readings, 9)).toContainEqual(expect.objectContaining({ why: 'tapes' }));
  });

  test('one person alone is not asked to compare tapes', () => {
    expect(next(by('Ada', isosceles(6)), 9).map(({ why }) => why)).not.toContain('tapes');
  });
});

test('a kind that somebody left out is not asked for', () => {
  const { pile } = docOfReadings(...isosceles(8), reading([1.1, 1.15, 1.2])).project;
  const about = (kinds: typeof pile.kinds) =>
    measureNext({ ...pile, kinds }, kindsOfPile(pile), 9).flatMap((one) => one.kinds);
  const row = { id: '2R', marks: [], sides: [1.1, 1.15, 1.2], leaveOut: true };
  const [, second] = kindsOfPile(pile).kinds;
  expect(about([])).toContain(second?.id);
  expect(about([{ ...row, id: second?.id ?? '' }])).not.toContain(second?.id);
});

test('there are never more than three, and nothing is told twice', () => {
  const odd = [1.2, 1.25, 1.3, 1.35, 1.4].map((side) => reading([side, side, side]));
  const things = next([...isosceles(3), ...odd]);
  expect(things).toHaveLength(MOST_THINGS);
  expect(new Set(things.map((thing) => JSON.stringify(thing))).size).toBe(MOST_THINGS);
});
