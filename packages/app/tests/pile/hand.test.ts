import { expect, test } from 'vitest';
import { handUnder } from '../../src/sheets/pile/hand.ts';

const right = [1.071, 1.086, 1.138];
const left = [...right].reverse();

test('a hand is told once all three sides are there and the face is known', () => {
  expect(handUnder([1.071, 1.086, null], 'outside')).toBeNull();
  expect(handUnder(right, 'outside')).toBe('R');
  expect(handUnder(left, 'outside')).toBe('L');
  expect(handUnder(right, 'unknown')).toBe('face');
});

test('seen from inside, the sides run the other way', () => {
  expect(handUnder(left, 'inside')).toBe('R');
  expect(handUnder(right, 'inside')).toBe('L');
});

test('sides as near as tape errors make no hand; ten times that does', () => {
  expect(handUnder([0.92, 0.9215, 1.073], 'outside')).toBe('none');
  expect(handUnder([0.92, 0.935, 1.073], 'outside')).toBe('R');
});

test('the side that comes first does not matter', () => {
  for (const turn of [0, 1, 2])
    expect(handUnder([...right.slice(turn), ...right.slice(0, turn)], 'outside')).toBe('R');
});
