import {
  LEAST_SIDES,
  LONGEST_NAME,
  MAX_SIDES,
  MOST_COUNTED,
  readPile,
  SIDE_LENGTHS,
} from '@shellraise/core';
import { describe, expect, test } from 'vitest';
import {
  columnsFor,
  gapOf,
  readCondition,
  readCount,
  readFace,
  readSide,
  withUnit,
} from '../../src/sheets/pile/cells.ts';

const metres = (text: string, unit: 'mm' | 'in' = 'mm'): number | string => {
  const read = readSide(text, unit);
  return read.ok ? read.metres : read.fault.why;
};

describe('a side as typed', () => {
  test.each([
    ['1103', 'mm', 1.103],
    ['43 7/16', 'in', 1.1033125],
    [`3' 7 7/16"`, 'mm', 1.1033125],
    ['1.103 m', 'in', 1.103],
    ['1103 mm', 'in', 1.103],
  ] as const)('%s with %s as the bare unit', (text, unit, expected) => {
    expect(metres(text, unit)).toBeCloseTo(expected, 9);
  });

  test.each([
    ['1,103', 'unread'],
    ['about a metre', 'unread'],
    ['', 'unread'],
    ['12', 'range'],
    ['-900', 'range'],
    ['12001', 'range'],
  ])('%s is no side: %s', (text, why) => {
    expect(metres(text)).toBe(why);
  });

  test('a bare number keeps the unit it had when it was typed', () => {
    expect(withUnit('1103', 'mm')).toBe('1103 mm');
    expect(withUnit(' 43 7/16 ', 'in')).toBe('43 7/16"');
    expect(metres(withUnit('1103', 'mm'), 'in')).toBeCloseTo(1.103, 9);
    expect(withUnit('1.103 m', 'in')).toBe('1.103 m');
    expect(withUnit('1,103', 'mm')).toBe('1,103');
  });
});

describe('the limits of a cell are those of the project file', () => {
  const accepted = (sides: number[], more: object = {}): boolean =>
    readPile({ readings: [{ sides, ...more }] }).ok;

  test('shortest and longest side', () => {
    const { min, max } = SIDE_LENGTHS;
    expect(accepted([min, min, min])).toBe(true);
    expect(accepted([min * 0.99, min, min])).toBe(false);
    expect(accepted([max, max, max])).toBe(true);
    expect(accepted([max * 1.01, max, max])).toBe(false);
  });

  test('names, counts and the number of sides', () => {
    const three = [1, 1, 1];
    expect(accepted(three, { mark: 'x'.repeat(LONGEST_NAME) })).toBe(true);
    expect(accepted(three, { mark: 'x'.repeat(LONGEST_NAME + 1) })).toBe(false);
    expect(accepted(three, { count: MOST_COUNTED })).toBe(true);
    expect(accepted(three, { count: MOST_COUNTED + 1 })).toBe(false);
    expect(accepted(Array(MAX_SIDES).fill(1))).toBe(true);
    expect(accepted(Array(MAX_SIDES + 1).fill(1))).toBe(false);
    expect(accepted(Array(LEAST_SIDES - 1).fill(1))).toBe(false);
  });

  test.each([
    [[1, 1, 1.999]],
    [[1, 1, 2]],
    [[1, 1, 2.001]],
    [[0.3, 0.4, 0.7]],
    [[1, 0.5, 0.6, 2.2]],
  ])('sides %j meet exactly where the file takes them', (sides) => {
    expect(gapOf(sides) === null).toBe(accepted(sides));
  });
});

test('counts are whole numbers of at least one, and an empty cell stands for one', () => {
  expect(['', ' 7 ', '100000', '0', '1.5', '-2', 'two', '100001'].map(readCount)).toEqual([
    1,
    7,
    100_000,
    null,
    null,
    null,
    null,
    null,
  ]);
});

test('faces and conditions are read by word or first letter', () => {
  expect(['Outside', 'i', 'unknown', 'front', ''].map(readFace)).toEqual([
    'outside',
    'inside',
    'unknown',
    null,
    null,
  ]);
  expect(['good', 'R', 'to mend', 's', 'bad'].map(readCondition)).toEqual([
    'good',
    'repair',
    'repair',
    'scrap',
    null,
  ]);
});

test('columns run from the names over the sides to the rest', () => {
  expect(columnsFor(4)).toEqual([
    ...['tag', 'mark', 'by', 0, 1, 2, 3],
    ...['seenFrom', 'condition', 'count'],
  ]);
});
