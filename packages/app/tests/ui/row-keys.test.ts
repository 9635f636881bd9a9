import { describe, expect, it } from 'vitest';
import { keyedRows, noRows } from '../../src/ui/row-keys.ts';

const row = (value: number) => ({ value });

describe('keys of rows without names', () => {
  const [a, b, c] = [row(3), row(3), row(3)];
  const three = keyedRows(noRows, [a, b, c]);

  it('stay with their rows when one in the middle is taken out, also where all look the same', () => {
    expect(keyedRows(three, [a, c]).keys).toEqual([three.keys[0], three.keys[2]]);
    expect(keyedRows(three, [b, c]).keys).toEqual(three.keys.slice(1));
  });

  it('stay with a row that is written anew, and go with rows that change their turn', () => {
    expect(keyedRows(three, [a, row(4), c]).keys).toEqual(three.keys);
    expect(keyedRows(three, [c, a, b]).keys).toEqual([2, 0, 1].map((i) => three.keys[i]));
  });

  it('are new for a new row, also for one that is put in where another was taken out', () => {
    const less = keyedRows(three, [a, c]);
    const more = keyedRows(less, [a, c, row(3)]);
    expect(more.keys.slice(0, 2)).toEqual(less.keys);
    expect(three.keys).not.toContain(more.keys[2]);
    const whole = keyedRows(less, [a, row(9), c]);
    expect(three.keys).not.toContain(whole.keys[1]);
  });

  it('are each their own, the same row told twice too', () => {
    const { keys } = keyedRows(three, [a, a, b, b, row(1)]);
    expect(new Set(keys).size).toBe(5);
    expect(keyedRows(three, [a, b, c])).toBe(three);
  });
});
