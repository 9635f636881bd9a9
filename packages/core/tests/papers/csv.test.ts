import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tableToCsv } from '../../src/papers/csv.ts';

interface CsvReader {
  parse(text: string, options: { newline: string }): { readonly data: string[][] };
}
const Papa: CsvReader = createRequire(import.meta.url)('papaparse');

const one = (cell: string | number | null): string =>
  tableToCsv({ title: 't', columns: ['a'], rows: [[cell]] }).slice('a\r\n'.length, -2);

describe('a table as CSV', () => {
  it('has a header, CRLF line ends, and quotes where RFC 4180 asks for them', () => {
    const csv = tableToCsv({
      title: 't',
      columns: ['kind', 'note'],
      rows: [
        ['1', 'plain'],
        ['2', 'a, b'],
        ['3', 'say "x"'],
        ['4', 'two\nlines'],
        ['5', null],
      ],
    });
    expect(csv).toBe(
      'kind,note\r\n1,plain\r\n2,"a, b"\r\n3,"say ""x"""\r\n4,"two\nlines"\r\n5,\r\n',
    );
  });

  it('reads back cell by cell with another program’s reader (papaparse, seed 10)', () => {
    const cell = fc
      .string({ unit: 'grapheme', maxLength: 12 })
      .filter((s) => !/^\s*['=+\-@＝＋－＠\t\r\n]/.test(s));
    const property = fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1 }), (rows) => {
      const csv = tableToCsv({ title: 't', columns: ['a', 'b'], rows });
      const read = Papa.parse(csv, { newline: '\r\n' });
      expect(read.data.slice(1, -1)).toEqual(rows.map((row) => [...row]));
    });
    fc.assert(property, { seed: 10 });
  });

  it.each(['=1+1', '+1', '-1+2', '@SUM(A1)', '  =1', '\t=1', '\r=1', '＝1', '\u0000=1', '\tx'])(
    'makes the formula %j harmless',
    (words) => {
      expect(one(words).replace(/^"/, '').startsWith("'")).toBe(true);
    },
  );

  it.each([
    ['3-07', '3-07'],
    ['a=b', 'a=b'],
    ['', ''],
    [-3, '-3'],
    [0.5, '0.5'],
    [null, ''],
  ])('leaves %j alone', (value, written) => {
    expect(one(value)).toBe(written);
  });

  it('refuses a ragged row and a number that is none', () => {
    expect(() => tableToCsv({ title: 't', columns: ['a'], rows: [[1, 2]] })).toThrow('row 1 of t');
    expect(() => one(Number.NaN)).toThrow('no number');
  });
});
