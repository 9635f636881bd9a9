import { expect, it } from 'vitest';
import { lengthsIn } from '../../src/ui/lengths.ts';
import { inOwnLengths } from '../../src/ui/own-lengths.ts';

const text = 'measure side 2 of kind 4: 1,128 mm or 1131.5 mm, 3.4 mm apart, on a ball of 6.1 m';

it('lengths in sentences of the engine stay as they are for who reads millimetres', () => {
  expect(inOwnLengths(text, lengthsIn('metric'))).toBe(text);
});

it('lengths in sentences of the engine are written in inches for who reads inches', () => {
  const inches = inOwnLengths(text, lengthsIn('inch'));
  expect(inches).toContain('44 7/16" or 44.55 in');
  expect(inches).toContain('0.13 in apart');
  expect(inches).not.toMatch(/\bmm?\b/);
});
