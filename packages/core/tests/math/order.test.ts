import { describe, expect, test } from 'vitest';
import { compareLists, compareText } from '../../src/math/order.ts';

describe('order', () => {
  test('of lists: the first item that differs decides, a list that begins the other comes first', () => {
    const lists = [[], [1], [1, 2], [1, 3], [2]];
    const shuffled = [3, 1, 4, 0, 2].map((i) => lists[i] as number[]);
    expect(shuffled.sort(compareLists)).toEqual(lists);
    expect(compareLists([1, 2], Int32Array.of(1, 2))).toBe(0);
  });

  test('of texts: by code unit, whatever the locale', () => {
    expect(['ä', 'b', 'B', 'a', '10', '9'].sort(compareText)).toEqual([
      '10',
      '9',
      'B',
      'a',
      'b',
      'ä',
    ]);
  });
});
