import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeFault } from '../../src/measure/fault.ts';
import { type CsvOptions, readPileCsv, writePileCsv } from '../../src/pile/csv.ts';
import { MAX_CSV_CHARACTERS } from '../../src/pile/csv-table.ts';
import { type Pile, pileSection } from '../../src/pile/schema.ts';

const SEED = 11;
const readings = (text: string, options: CsvOptions = {}): Pile['readings'] => {
  const read = readPileCsv(text, options);
  if (!read.ok) throw new Error(read.faults.map(describeFault).join('\n'));
  return read.value.readings;
};
const faults = (text: string, options: CsvOptions = {}): string[] => {
  const read = readPileCsv(text, options);
  return read.ok ? [] : read.faults.map(describeFault);
};
const sides = (text: string, options: CsvOptions = {}): number[] =>
  readings(text, options)[0]?.sides as number[];

describe('a pile is read from any spreadsheet', () => {
  test('with all its columns', () => {
    const text = [
      'tag,by,mark,count,side1 mm,side2 mm,side3 mm,holes1,holes2,holes3,seen from,condition,mass kg,note',
      '017,Wim,R,1,928.2,927.9,1081.6,5,5,,inside,repair,9.6,"dent, small"',
    ].join('\n');
    expect(readings(text)).toEqual([
      {
        tag: '017',
        by: 'Wim',
        mark: 'R',
        count: 1,
        sides: [0.9282, 0.9279, 1.0816],
        holes: [5, 5, null],
        seenFrom: 'inside',
        condition: 'repair',
        mass: 9.6,
        note: 'dent, small',
      },
    ]);
  });

  test('with columns in any order and case, and only the sides required', () => {
    expect(readings('SIDE3 (mm),Side_1 [mm],side 2 mm\n1100,900,1000')).toEqual([
      { sides: [0.9, 1, 1.1], seenFrom: 'unknown' },
    ]);
  });

  test.each([
    ['comma', 'side1 mm,side2 mm,side3 mm\n900,1000,1100'],
    ['semicolon', 'side1 mm;side2 mm;side3 mm\n900;1000;1100'],
    ['tab', 'side1 mm\tside2 mm\tside3 mm\n900\t1000\t1100'],
    ['mark of byte order', '\ufeffside1 mm,side2 mm,side3 mm\n900,1000,1100'],
    ['carriage returns', 'side1 mm,side2 mm,side3 mm\r\n900,1000,1100\r\n'],
    ['empty rows', '\nside1 mm,side2 mm,side3 mm\n,,\n\n900,1000,1100\n,,\n'],
    ['empty last column', 'side1 mm,side2 mm,side3 mm,\n900,1000,1100,'],
    ['units in cells', 'side1,side2,side3\n900 mm,100 cm,1.1 m'],
    ['a cell that overrules its header', 'side1 in,side2 mm,side3 mm\n900 mm,1000,1100'],
    ['decimal commas', 'side1 m;side2 m;side3 m\n0,900;1,000;1,100'],
    ['decimal commas in quotes', 'side1 m,side2 m,side3 m\n"0,9","1,000","1,100"'],
    ['units run into the number of the side', 'side1mm,side2/mm,side3 in mm\n900,1000,1100'],
  ])('with %s', (_name, text) => expect(sides(text)).toEqual([0.9, 1, 1.1]));

  test('with inch marks in quoted and in bare cells', () => {
    const text = 'side1,side2,side3\n"3\' 7 7/16""",43-7/16 in,43 7/16"\n';
    expect(sides(text)).toEqual([1.1033125, 1.1033125, 1.1033125]);
    expect(sides('side1 in,side2 ",side3 inch\n43 7/16,43 7/16,43 7/16')).toEqual([
      1.1033125, 1.1033125, 1.1033125,
    ]);
  });

  test('without any unit, if one is given beside it', () => {
    expect(sides('side1,side2,side3\n43 7/16,43 7/16,43 7/16', { unit: 'in' })).toEqual([
      1.1033125, 1.1033125, 1.1033125,
    ]);
  });

  test('with panels of three and of four sides in one file', () => {
    const text =
      'side1 mm,side2 mm,side3 mm,side4 mm\n900,1000,1100,\n900,1000,1100,1200\n900,1000,1100';
    expect(readings(text).map((row) => row.sides.length)).toEqual([3, 4, 3]);
  });

  test('with a row that stands for several panels', () => {
    expect(
      readings('mark,count,side1 mm,side2 mm,side3 mm\nsmall,5,900,1000,1100')[0],
    ).toMatchObject({ mark: 'small', count: 5 });
  });

  test('with both kinds of line end, as files put together from two programs have', () => {
    const rows = ['tag,side1 m,side2 m,side3 m', 'a,1,1,1', 'b,1,1,1.1'];
    for (const [first, second] of [
      ['\r\n', '\n'],
      ['\n', '\r\n'],
      ['\r', '\n'],
      ['\r', '\r\n'],
    ])
      expect(readings(`${rows[0]}${first}${rows[1]}${second}${rows[2]}${first}`)).toHaveLength(2);
  });

  test('with empty rows before the header, empty cells or none', () => {
    expect(sides('\n,,,\n""\nside1 m,side2 m,side3 m\n1,1,1.1\n')).toEqual([1, 1, 1.1]);
    expect(faults('\n,,,\nside1 m,side2 m,side3 m\n1,x,1.1\n')[0]).toMatch(/^row 4, column side2/);
  });

  test('with a mark at its start, semicolons, decimal commas and quotes at once', () => {
    const header = 'tag;side1 mm;side2 mm;side3 mm;note';
    const row = '"a";928,5;1 103,25;"1082,0";"x; ""q"""';
    expect(readings(`\ufeff${header}\r\n${row}\r\n;;;;\r\n`)).toEqual([
      { tag: 'a', sides: [0.9285, 1.10325, 1.082], seenFrom: 'unknown', note: 'x; "q"' },
    ]);
  });

  test('as the examples have it', () => {
    const example = readFileSync(
      new URL('../../../../examples/inches.csv', import.meta.url),
      'utf8',
    );
    expect(readings(example)[0]?.sides[0]).toBe(((43 * 8 + 5) / 8) * 0.0254);
  });
});

test('tells a stranger what the first row should say, once', () => {
  expect(faults('panel,mark,a cm,b cm\n01,W,154.7,136.8')).toEqual([
    'first row: found no column side1, side2, side3, expected side1 to side3, as in: tag, mark, side1 cm, side2 cm, side3 cm',
    expect.stringMatching(/^column 1: found "panel", expected one of tag, by, mark/),
    'column 3: found "a cm", expected one of the names above',
    'column 4: found "b cm", expected one of the names above',
  ]);
});

describe('every fault of a spreadsheet names its row and column', () => {
  const head = 'tag,count,side1 mm,side2 mm,side3 mm,seen from,condition,mass,holes1';
  test.each([
    ['', 'file: found no rows, expected a header row and at least one row below it'],
    [
      'side1 mm,side2 mm,side3 mm\n,,',
      'file: found no rows below the header, expected at least one',
    ],
    [
      'side1 mm,side2 mm\n900,900',
      'first row: found no column side3, expected side1 to side3, as in: tag, mark, side1 cm, side2 cm, side3 cm',
    ],
    ['tag\n017', /^first row: found no column side1, side2, side3, expected side1 to side3, as in/],
    [
      'side1 mm,side2 mm,side3 mm,holes4\n900,900,900,1',
      /^first row: found no column side4, expected side1 to side4/,
    ],
    [
      'side1 mm;side2 mm,side3 mm\n1;2,3',
      'row 1: found more than one separator, expected comma, semicolon or tab, the same all through',
    ],
    [
      'side1 mm,side2 mm,side3 mm\n900,900,900\n900;900;900',
      'row 3: found a semicolon as separator, expected a comma, as in the header',
    ],
    [
      'side1 mm;side2 mm;side3 mm\n900,900,900',
      'row 2: found a comma as separator, expected a semicolon, as in the header',
    ],
    [
      'side1 mm,side2 mm,side3 mm\n900,5,900,900',
      'row 2: found 4 cells, expected 3 as in the header; quote a cell that holds a comma',
    ],
    ['side1 mm,side2 mm,side3 mm\n900,"900,900', /^row 2: found quotes that do not pair up/],
    [
      'side1 mm,side2 mm,side3 mm,length\n900,900,900,1',
      /^column 4: found "length", expected one of tag, by, mark/,
    ],
    [
      'side1 mm,,side2 mm,side3 mm\n900,1,900,900',
      'column 2: found "", expected a name for the column',
    ],
    [
      'side1 mm,Side 1 in,side2 mm,side3 mm\n900,1,900,900',
      'column 2: found "Side 1 in", expected side1 only once',
    ],
    [
      'tag,TAG,side1 mm,side2 mm,side3 mm\n1,1,900,900,900',
      'column 2: found "TAG", expected tag only once',
    ],
    [
      'mass,mass kg,side1 mm,side2 mm,side3 mm\n1 kg,1,900,900,900',
      'column 2: found "mass kg", expected mass only once',
    ],
    [
      'side1 miles,side2 mm,side3 mm\n900,900,900',
      'column 1: found "side1 miles", expected a unit that is one of mm, cm, m, in, ft',
    ],
    [
      'mass stone,side1 mm,side2 mm,side3 mm\n1,900,900,900',
      'column 1: found "mass stone", expected a unit that is one of kg, g, t, lb, oz',
    ],
    [
      'side13 mm,side1 mm,side2 mm,side3 mm\n1,900,900,900',
      'column 1: found "side13 mm", expected a side from 1 to 12',
    ],
    [
      'holes1 mm,side1 mm,side2 mm,side3 mm\n1,900,900,900',
      'column 1: found "holes1 mm", expected no unit for a number of holes',
    ],
    [
      'side1,side2 mm,side3 mm\n900,900,900\n901,900,900',
      'column side1: found "900" without a unit (first in row 2), expected a unit in the header, such as "side1 mm" or "side1 in", or in each cell',
    ],
    [`${head}\n,,900,,900,,,,`, 'row 2, column side2: found "", expected a length'],
    [
      `${head}\n,,900,abc,900,,,,`,
      /^row 2, column side2: found "abc", expected a number with a unit/,
    ],
    [
      `${head}\n,,900,"1,103",900,,,,`,
      'row 2, column side2: found "1,103", expected a value with one meaning: it could be 1103 mm or 1.103 mm',
    ],
    [
      `${head}\n,,900,9,900,,,,`,
      'row 2, column side2: found "9", expected a side of 0.05 to 12 m; this is 0.009 m, check the unit',
    ],
    [
      `${head}\n,,900,-900,900,,,,`,
      'row 2, column side2: found "-900", expected a side of 0.05 to 12 m; this is -0.9 m, check the unit',
    ],
    [
      `${head}\n,,900,43 7/16,900,,,,`,
      /^row 2, column side2: found "43 7\/16", expected a value with one meaning/,
    ],
    [`${head}\n,,900,900,1900,,,,`, /^row 2: found \[0.9,0.9,1.9\], expected sides that meet/],
    [
      `${head}\n,1.5,900,900,900,,,,`,
      'row 2, column count: found "1.5", expected a whole number of at least 1',
    ],
    [
      `${head}\n7,3,900,900,900,,,,`,
      'row 2, column count: found 3, expected 1, or no tag: the tag "7" names one single panel',
    ],
    [
      `${head}\n,,900,900,900,above,,,`,
      'row 2, column seen from: found "above", expected one of outside, inside, unknown',
    ],
    [
      `${head}\n,,900,900,900,,fine,,`,
      'row 2, column condition: found "fine", expected one of good, repair, scrap',
    ],
    [
      `${head}\n,,900,900,900,,,12,`,
      /^row 2, column mass: found "12", expected a unit: it could be 12 kg or/,
    ],
    [
      `${head}\n,,900,900,900,,,0 kg,`,
      'row 2, column mass: found "0 kg", expected a mass of more than 0',
    ],
    [
      `${head}\n,,900,900,900,,,,x`,
      'row 2, column holes1: found "x", expected a whole number of at least 0',
    ],
    [
      'side1 mm,side2 mm,side3 mm,side4 mm,holes4\n900,900,900,,5',
      'row 2, column holes4: found "5", expected nothing: the panel has 3 sides',
    ],
    [
      `tag,side1 mm,side2 mm,side3 mm,side4 mm\n7,900,900,900,\n\n7,900,900,900,900`,
      'row 4: found 4 sides, expected 3 sides as in row 2, which has the same tag "7"',
    ],
  ])('%#: %s', (text, expected) => {
    const found = faults(text);
    if (typeof expected === 'string') expect(found).toContain(expected);
    else expect(found.some((fault) => expected.test(fault))).toBe(true);
  });

  test('of all rows at once', () => {
    expect(
      faults(
        'side1 mm,side2 mm,side3 mm,condition\n900,x,900,good\n900,900,900,fair\n1,900,900,good',
      ).map((fault) => fault.split(':')[0]),
    ).toEqual(['row 2, column side2', 'row 3, column condition', 'row 4, column side1']);
  });

  test('over 20 MB by its length', () => {
    expect(faults('x'.repeat(MAX_CSV_CHARACTERS + 1))).toEqual([
      `file: found ${MAX_CSV_CHARACTERS + 1} characters, expected at most ${MAX_CSV_CHARACTERS}`,
    ]);
  });
});

describe('written as CSV', () => {
  const text = fc
    .string({ unit: fc.constantFrom(...'abé½",;\n\'7 =-@'), minLength: 1, maxLength: 8 })
    .map((s) => s.trim())
    .filter((s) => s !== '' && !/^'[=\-@]/.test(s));
  const row = fc.integer({ min: 3, max: 5 }).chain((n) =>
    fc.record(
      {
        by: text,
        mark: text,
        note: text,
        count: fc.integer({ min: 1, max: 9 }),
        sides: fc.array(
          fc.integer({ min: 1_000_000, max: 1_900_000 }).map((x) => x / 1e6),
          { minLength: n, maxLength: n },
        ),
        holes: fc
          .array(fc.option(fc.nat(9)), { minLength: n, maxLength: n })
          .filter((h) => h.some((x) => x !== null)),
        seenFrom: fc.constantFrom('outside', 'inside', 'unknown'),
        condition: fc.constantFrom('good', 'repair', 'scrap'),
        mass: fc.integer({ min: 1, max: 400 }).map((x) => x / 8),
      },
      { requiredKeys: ['sides', 'seenFrom'] },
    ),
  );
  test(`and read back, readings are the same (seed ${SEED})`, () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 6 }), (rows) => {
        const pile = pileSection.parse({ readings: rows });
        expect(readings(writePileCsv(pile))).toEqual(pile.readings);
      }),
      { seed: SEED },
    );
  });
  test('a text that a spreadsheet would run gets an apostrophe', () => {
    const pile = pileSection.parse({ readings: [{ tag: '=1+1', sides: [1, 1, 1] }] });
    expect(writePileCsv(pile)).toContain('\n"\'=1+1",');
    const lines = pileSection.parse({ readings: [{ tag: '=1\n+1', sides: [1, 1, 1] }] });
    expect(writePileCsv(lines)).toContain('"\'=1\n+1"');
    expect(readings(writePileCsv(lines))).toEqual(lines.readings);
  });
});

test(`no text makes the reader throw (seed ${SEED})`, () => {
  const scraps = fc.array(
    fc.constantFrom(
      'side1 mm',
      'side2',
      'side3 in',
      'tag',
      ',',
      ';',
      '\t',
      '\n',
      '"',
      '43 7/16"',
      '900',
      '1,103',
      ' ',
      'é',
    ),
    { maxLength: 30 },
  );
  fc.assert(
    fc.property(scraps, (parts) => {
      const read = readPileCsv(parts.join(''));
      return read.ok || read.faults.length > 0;
    }),
    { seed: SEED, numRuns: 2000 },
  );
});
