import { expect, it } from 'vitest';
import { numbersTyped } from '../../src/sheets/raising/numbers-typed.ts';

const all = new Set(['1-07', '1-08', '1-09', '1-10', '2-01', '2-02']);
const typed = (text: string) => numbersTyped(text, (number) => all.has(number));

it('reads numbers with commas, blanks, and runs', () => {
  expect(typed('1-07, 2-01')).toEqual(['1-07', '2-01']);
  expect(typed('2-02 1-07 to 1-09')).toEqual(['2-02', '1-07', '1-08', '1-09']);
  expect(typed('1-07 and 2-01')).toEqual(['1-07', '2-01']);
  expect(typed('')).toEqual([]);
});

it('refuses what does not stand, comes twice, or is no run', () => {
  for (const text of ['9-99', '1-07, 1-07', '1-09 to 1-07', '1-07 to 2-02', 'to 1-07', '1-07 to'])
    expect(typed(text), text).toBeNull();
});
