import { readLength } from '@shellraise/core';
import { describe, expect, test } from 'vitest';
import {
  keysFor,
  nextAsked,
  nextTag,
  signOf,
  withoutLast,
  withSign,
} from '../../src/sheets/pile/keypad.ts';
import { rowsOf } from '../../src/sheets/pile/rows.ts';
import { docOfReadings, freshRef, reading, sides, typed } from './notation.ts';

const pressed = (signs: string): string => [...signs].reduce(withSign, '');
const signsOf = (system: 'metric' | 'inch'): string =>
  keysFor(0, system)
    .keys.map((key) => ('sign' in key ? key.sign : ''))
    .join('');

test('every length of a tape can be put with the keys of its system', () => {
  for (const text of ['1103', '1103.5'])
    expect([...text].every((s) => signsOf('metric').includes(s))).toBe(true);
  for (const text of [`3' 7 7/16"`, '43 7/16', '43.4375'])
    expect([...text].every((s) => signsOf('inch').includes(s))).toBe(true);
  expect(readLength(pressed(`3'  7  7/16"`)).ok).toBe(true);
});

test('a space is put once and not first; the last sign is taken away', () => {
  expect(pressed('  43  7/16')).toBe('43 7/16');
  expect(withoutLast('43 7')).toBe('43 ');
  expect(withoutLast('')).toBe('');
});

test('keys of a real keyboard put the same signs', () => {
  expect(['7', ',', '/', 'a', 'Enter'].map(signOf)).toEqual(['7', '.', '/', null, null]);
});

describe('what is asked next', () => {
  test('is the next side that is missing, then nothing', () => {
    const empty = docOfReadings();
    const { doc } = typed(empty, freshRef(empty), [[1, '920']]);
    const row = rowsOf(doc.project.pile.readings, doc.drafts)[0];
    expect(row && [nextAsked(row, 1), nextAsked(row, 2), nextAsked(row, 0)]).toEqual([2, 0, 2]);
    const all = typed(doc, { type: 'draft', key: doc.drafts[0]?.key ?? '' }, [
      [0, '920'],
      [2, 'x'],
    ]).doc;
    const unread = rowsOf(all.project.pile.readings, all.drafts)[0];
    expect(unread && nextAsked(unread, 2)).toBeNull();
  });

  test('of a whole reading is the side after, then the next panel', () => {
    const [row] = rowsOf([reading([1, 1, 1])], []);
    expect(row && [0, 1, 2].map((side) => nextAsked(row, side))).toEqual([1, 2, null]);
  });

  test('fits a panel of four sides', () => {
    const empty = docOfReadings();
    const { doc } = typed(empty, freshRef(empty), sides('', '', '', '900'));
    const row = rowsOf(doc.project.pile.readings, doc.drafts)[0];
    expect(row && nextAsked(row, 3)).toBe(0);
  });
});

test('a tag counts on, as many figures wide, past those in use', () => {
  expect(nextTag('017', new Set())).toBe('018');
  expect(nextTag('A9', new Set(['A10', 'A11']))).toBe('A12');
  expect(nextTag('owl', new Set())).toBe('');
  expect(nextTag(undefined, new Set())).toBe('');
});
