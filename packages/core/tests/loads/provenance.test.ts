import { describe, expect, test } from 'vitest';
import { LOAD_NUMBER_KEYS, LOAD_NUMBERS, numberOf } from '../../src/loads/numbers.ts';
import {
  commonPractice,
  confirmed,
  flagsOf,
  fromMemory,
  productOf,
  reckonedFrom,
  sumOf,
  weakest,
} from '../../src/loads/provenance.ts';

const sure = { value: 2, sources: [confirmed('a')] };
const recalled = { value: 3, sources: [fromMemory('b')] };
const habit = { value: 5, sources: [commonPractice('c'), fromMemory('b')] };

describe('sources', () => {
  test('sums and products carry every source once, in the order met', () => {
    expect(sumOf(sure, recalled, habit)).toEqual({
      value: 10,
      sources: [confirmed('a'), fromMemory('b'), commonPractice('c')],
    });
    expect(productOf(recalled, sure).value).toBe(6);
    expect(sumOf()).toEqual({ value: 0, sources: [] });
  });

  test('a result is no surer than the least sure number in it', () => {
    expect(weakest(reckonedFrom(1, sure).sources)).toBe('confirmed');
    expect(weakest(reckonedFrom(1, sure, recalled).sources)).toBe('from memory');
    expect(weakest(reckonedFrom(1, habit, sure).sources)).toBe('common practice');
  });

  test('the flags are all but what is confirmed, the least sure first', () => {
    expect(flagsOf(sumOf(sure, recalled, habit))).toEqual([commonPractice('c'), fromMemory('b')]);
    expect(flagsOf(sure)).toEqual([]);
  });
});

describe('the table of numbers', () => {
  test.each(LOAD_NUMBER_KEYS)('%s lies within what is allowed and names its source', (key) => {
    const { value, least, most, source } = LOAD_NUMBERS[key];
    expect(value).toBeGreaterThanOrEqual(least);
    expect(value).toBeLessThanOrEqual(most);
    expect(source.text.length).toBeGreaterThan(8);
    expect(numberOf(key)).toEqual({ value, sources: [source] });
  });

  test("the lead's number stands in its place and carries his reason", () => {
    const own = { number: 'crownB', value: -1, reason: 'engineer, letter of May' } as const;
    const found = numberOf('crownB', [own]);
    expect(found.value).toBe(-1);
    expect(flagsOf(found)[0]?.confirmation).toBe('entered');
    expect(flagsOf(found)[0]?.text).toContain('-1 in place of -1.2: engineer, letter of May');
    expect(numberOf('windwardA', [own]).value).toBe(0.8);
    expect(numberOf('crownB', [own, { ...own, value: -0.9 }]).value).toBe(-0.9);
  });

  test.each([Number.NaN, -4, 0.6, Infinity])(
    'crown B of %d is refused with what is allowed',
    (value) => {
      expect(() => numberOf('crownB', [{ number: 'crownB', value, reason: 'slip' }])).toThrow(
        `three-point rule: crown B of a half sphere is ${value}, expected -3 to 0.5`,
      );
    },
  );

  test('an override without a reason is refused', () => {
    expect(() => numberOf('gravity', [{ number: 'gravity', value: 9.8, reason: ' ' }])).toThrow(
      'gravity is overridden by 9.8 without a reason',
    );
  });
});
