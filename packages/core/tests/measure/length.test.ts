import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  INCH,
  type LengthStyle,
  lengthUnit,
  readLength,
  writeLength,
} from '../../src/measure/length.ts';

const SEED = 20240611;
const metres = (text: string, options = {}): number => {
  const read = readLength(text, options);
  if (!read.ok) throw new Error(`${text}: ${read.faults[0]?.expected}`);
  return read.value;
};
const refusal = (text: string, options = {}): string => {
  const read = readLength(text, options);
  if (read.ok) throw new Error(`${text} was read as ${read.value}`);
  expect(read.faults).toHaveLength(1);
  expect(read.faults[0]?.path).toBe('');
  return read.faults[0]?.expected ?? '';
};

describe('a length is read as a person with a tape writes it', () => {
  test.each([
    '43 7/16"',
    '43-7/16 in',
    '43 - 7/16"',
    '3\' 7 7/16"',
    "3' 7-7/16",
    '3\'-7 7/16"',
    '3ft 7.4375in',
    '3 ft 7 7/16 in',
    '3 feet 7.4375 inches',
    '43.4375"',
    '43,4375 in',
    '43 7⁄16″',
    '3′ 7 7∕16″',
    '43 7/16 In.',
    "3' 7 7/16''",
    '3’ 7 7/16”',
    '3ft. 7 7/16in.',
  ])('%s is 1.1033125 m exactly', (text) => expect(metres(text)).toBe(1.1033125));

  test.each([
    ['1103 mm', 1.103],
    ['110.3 cm', 1.103],
    ['110,3cm', 1.103],
    ['1.103 m', 1.103],
    ['1103.0 mm', 1.103],
    ['1103mm', 1.103],
    ['1 m 103 mm', 1.103],
    ['1 m 10 cm 3 mm', 1.103],
    ['1 103 mm', 1.103],
    ['1 103 mm', 1.103],
    ['1,103.5 mm', 1.1035],
    ['1.103,5 mm', 1.1035],
    ['1 103,5 mm', 1.1035],
    ['1103,5 mm', 1.1035],
    ['2½″', 2.5 * INCH],
    ['2 ½"', 2.5 * INCH],
    ['½ in', INCH / 2],
    ['7/16"', (7 * INCH) / 16],
    ["3'", 0.9144],
    ["3' 7/16", 0.9144 + (7 * INCH) / 16],
    ['-3/16"', (-3 * INCH) / 16],
    ['−3 mm', -0.003],
    ['+3 mm', 0.003],
    ['0', 0],
    ['.5 in', INCH / 2],
    ['1,000,000 mm', 1000],
    ['0,103 m', 0.103],
  ])('%s is %d m', (text, value) => expect(metres(text)).toBeCloseTo(value, 15));

  test.each([
    ['1103', 'mm', 1.103],
    ['43 7/16', 'in', 1.1033125],
    ['1.103', 'm', 1.103],
    ['3.625', 'ft', 1.1049],
    ['43 7/16"', 'mm', 1.1033125],
    ['110,3', 'cm', 1.103],
    ["3' 7 7/16", 'in', 1.1033125],
  ] as const)('%s in a column of %s is %d m: a unit in the cell wins', (text, unit, value) =>
    expect(metres(text, { unit })).toBeCloseTo(value, 15),
  );

  test('where the decimal mark is known a comma or point before three digits has one meaning', () => {
    expect(metres('1,103 m', { decimal: 'comma' })).toBe(1.103);
    expect(metres('1.103 m', { decimal: 'point' })).toBe(1.103);
    expect(refusal('1.103 m', { decimal: 'comma' })).toContain('1103 m or 1.103 m');
  });
});

describe('a length that could be two things is refused with both named', () => {
  test.each([
    ['1,103 mm', {}, ['1103 mm', '1.103 mm']],
    ['43', {}, ['43 mm', '43 cm', '43 m', '43 in', '43 ft']],
    ['3.7', { unit: 'ft' }, ['3.7 ft', '3 ft 7 in']],
    ['43 7/16', { unit: 'mm' }, ['mm', 'in']],
    ['437/16"', {}, ['27.3125 in', '43.4375 in']],
  ] as const)('%s with %o', (text, options, readings) => {
    for (const reading of readings) expect(refusal(text, options)).toContain(reading);
  });
});

describe('what is no length is refused with what was expected', () => {
  test.each([
    ['', 'number with a unit'],
    ['abc', 'number with a unit'],
    ['43 furlongs', 'one of mm, cm, m, in, ft'],
    ['3\' 14"', 'less than one ft'],
    ['3.5\' 7"', 'whole number of ft'],
    ['43 17/16"', 'a number'],
    ['43 7/0"', 'a number'],
    ['43 7/11"', 'a number'],
    ['43 7/1616"', 'a number'],
    ['7 in 3 ft', 'after in'],
    ['3 ft 7 mm', 'after ft'],
    ['1 m 10', 'after m'],
    ['1 2 3', 'a number'],
    ['12 34 ft', 'a number'],
    ["3' 1.2.3", 'a number before'],
    ['1 cm 1.5 mm 2 mm', 'fraction only in the last'],
    ['3 4/5/6 in', 'a number'],
    ['9'.repeat(16), 'a number'],
    [`${'9'.repeat(70)} mm`, 'at most 64'],
    ['NaN', 'number with a unit'],
    ['Infinity mm', 'number with a unit'],
    ['1e3 mm', 'unit'],
    ['43-', 'number with a unit'],
    ['4 - 5 mm', 'a number'],
    ['3/4/5', 'a number'],
  ])('%s', (text, expected) => expect(refusal(text)).toContain(expected));
});

describe('a length is written to the nearest division', () => {
  test.each([
    [1.1033125, { unit: 'in', step: 16 }, '43 7/16"'],
    [1.1033125, { unit: 'ft', step: 32 }, '3\' 7 7/16"'],
    [1.103, { unit: 'mm', step: 1 }, '1103 mm'],
    [1.1032, { unit: 'mm', step: 0.5 }, '1103.0 mm'],
    [1.1033, { unit: 'mm', step: 0.5 }, '1103.5 mm'],
    [1.1033, { unit: 'm' }, '1.103 m'],
    [0.3047, { unit: 'ft', step: 16 }, '1\' 0"'],
    [0, { unit: 'in', step: 16 }, '0"'],
    [INCH / 32, { unit: 'in', step: 32 }, '1/32"'],
    [-0.003, { unit: 'mm', step: 1 }, '-3 mm'],
    [-0.0001, { unit: 'mm', step: 1 }, '0 mm'],
    [(-3 * INCH) / 16, { unit: 'in', step: 16 }, '-3/16"'],
  ] as const)('%d m as %o is %s', (value, style, text) =>
    expect(writeLength(value, style)).toBe(text),
  );

  test('writing NaN or infinity is a mistake of ours', () => {
    expect(() => writeLength(Number.NaN, { unit: 'm' })).toThrow('finite');
    expect(() => writeLength(1 / 0, { unit: 'in', step: 16 })).toThrow('finite');
  });

  const styles: readonly [LengthStyle, number][] = [
    [{ unit: 'mm', step: 1 }, 0.001],
    [{ unit: 'mm', step: 0.5 }, 0.0005],
    [{ unit: 'm' }, 0.001],
    [{ unit: 'in', step: 16 }, INCH / 16],
    [{ unit: 'in', step: 32 }, INCH / 32],
    [{ unit: 'ft', step: 16 }, INCH / 16],
    [{ unit: 'ft', step: 32 }, INCH / 32],
  ];
  test.each(styles)(
    `written as %o and read back, it is within half a step (seed ${SEED})`,
    (style, step) => {
      let worst = 0;
      fc.assert(
        fc.property(fc.double({ min: -99, max: 99, noNaN: true }), (length) => {
          const off = Math.abs(metres(writeLength(length, style)) - length);
          worst = Math.max(worst, off);
          return off <= step / 2 + 1e-12;
        }),
        { seed: SEED, numRuns: 300 },
      );
      // The bound is no slack one: ten times finer would be broken.
      expect(worst).toBeGreaterThan(step / 20);
    },
  );
});

test(`reading is one function of the exact fraction: n sixteenths are n × 0.0015875 m (seed ${SEED})`, () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 1, max: 15 }), (whole, n) => {
      expect(metres(`${whole} ${n}/16 in`)).toBe(((whole * 16 + n) * 15875) / 1e7);
    }),
    { seed: SEED },
  );
});

test(`no text makes the reader throw (seed ${SEED})`, () => {
  const odd = fc.string({
    unit: fc.constantFrom(...'0123456789 .,/⁄½\'"-−mftcin°'),
    maxLength: 20,
  });
  fc.assert(
    fc.property(odd, (text) => {
      const read = readLength(text, { unit: 'in' });
      return read.ok ? Number.isFinite(read.value) : read.faults.length === 1;
    }),
    { seed: SEED, numRuns: 3000 },
  );
});

test('the unit of a column is known by its usual names', () => {
  expect(['mm', 'IN', 'Feet', '"', 'in.', 'parsec'].map(lengthUnit)).toEqual([
    'mm',
    'in',
    'ft',
    'in',
    'in',
    null,
  ]);
});

test('a refused value keeps its sign in what it could be', () => {
  expect(refusal('-3')).toContain('-3 mm or -3 cm');
  expect(refusal('-1,103 mm')).toContain('-1103 mm or -1.103 mm');
});

test(`a minus sign turns the value over, and nothing else (seed ${SEED})`, () => {
  const texts = fc.constantFrom('0\' 5"', '5\'-6 1/2"', '12\' 0"', '3½ in', '1 103 mm', '.5 m');
  fc.assert(
    fc.property(texts, fc.constantFrom('-', '−', '–'), (text, minus) => {
      expect(metres(`${minus}${text}`)).toBe(-metres(text));
      expect(metres(`+${text}`)).toBe(metres(text));
    }),
    { seed: SEED },
  );
});

test(`thousands in groups read like the plain number, whatever space parts them (seed ${SEED})`, () => {
  const space = fc.constantFrom(' ', '\u00a0', '\u2009', '\u202f');
  fc.assert(
    fc.property(fc.integer({ min: 1000, max: 999_999_999 }), space, (number, gap) => {
      const grouped = String(number).replace(/\B(?=(\d{3})+$)/g, gap);
      expect(metres(`${grouped} mm`)).toBe(metres(`${number} mm`));
    }),
    { seed: SEED },
  );
});

test(`a double as a program writes it, with all its digits, is read to two roundings (seed ${SEED})`, () => {
  const TWO_ROUNDINGS = 2 ** -51;
  const agrees = (read: number, value: number): boolean =>
    Math.abs(read - value) <= TWO_ROUNDINGS * value;
  expect(metres('0.92820000000000003 m')).toBe(0.9282);
  fc.assert(
    fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), (value) => {
      for (const text of [`${value} m`, `${value.toFixed(20)} m`]) {
        expect(agrees(metres(text), value)).toBe(true);
        expect(agrees(metres(text) * (1 + 10 * TWO_ROUNDINGS), value)).toBe(false);
      }
    }),
    { seed: SEED },
  );
});

test('after feet a bare fraction of an inch has a nought before it, and reads back', () => {
  const text = writeLength(19 * 12 * INCH + (3 / 16) * INCH, { unit: 'ft', step: 16 });
  expect(text).toBe('19\' 0 3/16"');
  const read = readLength(text);
  expect(read.ok && read.value).toBeCloseTo(19 * 12 * INCH + (3 / 16) * INCH, 12);
});
