import { expect, test } from 'vitest';
import { assertNumber } from '../../src/math/doors.ts';

test.each([
  [Number.NaN, undefined, 'x is NaN, expected a finite number'],
  [Number.POSITIVE_INFINITY, 0, 'x is Infinity, expected a number of at least 0'],
  [-1e-9, 0, 'x is -1e-9, expected a number of at least 0'],
])('%d is refused at the door (least %s)', (value, least, message) => {
  expect(() => assertNumber('x', value, least)).toThrow(new RangeError(message));
});

test('a number on the limit passes', () => {
  expect(() => assertNumber('x', 0, 0)).not.toThrow();
  expect(() => assertNumber('x', -5)).not.toThrow();
});
