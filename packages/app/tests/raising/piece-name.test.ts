import { expect, it } from 'vitest';
import { pieceName } from '../../src/sheets/raising/piece-name.ts';

const plain = (text: string): string => text.replaceAll('\u2060', '');

it('shortens three or more numbers that follow each other in a course', () => {
  expect(plain(pieceName(['2-02', '1-01', '2-01', '1-03', '1-02']))).toBe(
    '1-01 to 1-03, 2-01 and 2-02',
  );
});

it('shortens nothing over a gap or from one course to the next', () => {
  expect(plain(pieceName(['1-39', '1-40', '2-01']))).toBe('1-39, 1-40 and 2-01');
  expect(plain(pieceName(['1-05', '1-07', '1-08', '1-10']))).toBe('1-05, 1-07, 1-08 and 1-10');
});

it('keeps numbers that are no course and position as they are', () => {
  expect(pieceName(['B', 'A'])).toBe('A and B');
  expect(pieceName([])).toBe('');
});
