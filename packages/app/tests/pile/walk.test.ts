import { describe, expect, test } from 'vitest';
import { columnsFor } from '../../src/sheets/pile/cells.ts';
import { type Walk, walked } from '../../src/sheets/pile/walk.ts';

const columns = columnsFor(3);
const ground = { columns, rows: 5, sides: 3, from: 0, page: 10 };
const step = (
  row: number,
  cell: (typeof columns)[number],
  walk: Walk,
  more: Partial<typeof ground> = {},
) => {
  const next = walked({ row, column: columns.indexOf(cell) }, walk, { ...ground, ...more });
  return next && [next.row, columns[next.column]];
};

describe('Enter', () => {
  test('walks from the tag over the mark to the sides, past who measured', () => {
    expect(step(1, 'tag', 'enter')).toEqual([1, 'mark']);
    expect(step(1, 'mark', 'enter')).toEqual([1, 0]);
    expect(step(1, 0, 'enter')).toEqual([1, 1]);
  });

  test('goes on in the next row, in the column where the walk began', () => {
    expect(step(1, 2, 'enter')).toEqual([2, 'tag']);
    expect(step(1, 2, 'enter', { from: columns.indexOf(0) })).toEqual([2, 0]);
  });

  test('leads down a column beyond the sides', () => {
    expect(step(1, 'condition', 'enter')).toEqual([2, 'condition']);
  });

  test('does not walk on to sides that the panel does not have', () => {
    const wide = columnsFor(5);
    const next = walked({ row: 0, column: wide.indexOf(2) }, 'enter', { ...ground, columns: wide });
    expect(next).toEqual({ row: 1, column: 0 });
  });
});

test('Tab leaves the tally at the ends of a row only', () => {
  expect(step(1, 'condition', 'tab')).toEqual([1, 'count']);
  expect(step(1, 'count', 'tab')).toBeNull();
  expect(step(1, 'tag', 'tab back')).toBeNull();
  expect(step(1, 'mark', 'tab back')).toEqual([1, 'tag']);
});

test('arrows and pages stay in the tally', () => {
  expect(step(0, 'tag', 'up')).toEqual([0, 'tag']);
  expect(step(4, 0, 'down')).toEqual([4, 0]);
  expect(step(0, 'tag', 'left')).toEqual([0, 'tag']);
  expect(step(0, 'count', 'right')).toEqual([0, 'count']);
  expect(step(1, 1, 'page down')).toEqual([4, 1]);
  expect(step(3, 1, 'page up')).toEqual([0, 1]);
  expect(step(3, 1, 'first')).toEqual([3, 'tag']);
  expect(step(3, 1, 'end')).toEqual([4, 'count']);
});
