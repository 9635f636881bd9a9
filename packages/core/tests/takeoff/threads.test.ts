import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  nextStandardLength,
  readNominalSize,
  readThread,
  standardLengths,
  type Thread,
  writeThread,
} from '../../src/takeoff/threads.ts';

const thread = (text: string): Thread => {
  const read = readThread(text);
  if (!read.ok) throw new Error(read.faults[0]?.expected);
  return read.value;
};
const expected = (text: string): string => {
  const read = readThread(text, 'at');
  return read.ok ? 'accepted' : `${read.faults[0]?.path}: ${read.faults[0]?.expected}`;
};

describe('a thread', () => {
  it.each([
    ['5/16-18', '5/16-18'],
    [' 5/16 - 18 UNC ', '5/16-18'],
    ['5/16"-18', '5/16-18'],
    ['5/16-18unc-2a', '5/16-18'],
    ['#10-32', '#10-32'],
    ['10-32 UNF', '#10-32'],
    ['No. 10-24', '#10-24'],
    ['1-8', '1-8'],
    ['1 1/4-7', '1 1/4-7'],
    ['1-1/4-7', '1 1/4-7'],
    ['M8', 'M8'],
    ['m 8', 'M8'],
    ['M8x1.25', 'M8'],
    ['M8 × 1,25', 'M8'],
    ['M8-1.25', 'M8'],
    ['M8x1', 'M8x1'],
    ['M8x1.25-6g', 'M8'],
  ])('%s is %s', (text, designation) => {
    expect(thread(text).designation).toBe(designation);
  });

  it('tells what was expected where the pitch is missing, unknown or contradicted', () => {
    expect(expected('5/16')).toBe('at: 5/16-18 (UNC) or 5/16-24 (UNF) or 5/16-32 (UNEF)');
    expect(expected('5/16-20')).toContain('5/16-18 (UNC)');
    expect(expected('5/16-18 UNF')).toContain('5/16-24 (UNF)');
    expect(expected('M8x1.5')).toBe('at: pitch 1.25, 1, 0.75 mm for M8');
  });

  it.each(['', 'bolt', 'M9', '5/17-18', '5/0-18', 'M', '5/16-18 BSW', '1e3-8'])(
    'refuses "%s"',
    (text) => {
      expect(expected(text)).not.toBe('accepted');
    },
  );

  it('has its diameter and pitch in metres', () => {
    expect(thread('5/16-18').diameter).toBeCloseTo(0.0079375, 12);
    expect(thread('5/16-18').pitch).toBeCloseTo(0.00141111, 8);
    expect(thread('#10-32').diameter).toBeCloseTo(0.004826, 12);
    expect(thread('1 1/4-7').diameter).toBeCloseTo(0.03175, 12);
    expect(thread('M8')).toMatchObject({ diameter: 0.008, pitch: 0.00125 });
  });

  it('reads back what it writes, short and spelt out (every size, seed 1)', () => {
    const texts = [
      '#8-32',
      '1/4-20',
      '1/4-28',
      '5/16-18',
      '3/8-16',
      '1/2-13',
      '1-8',
      'M6',
      'M10x1',
    ];
    fc.assert(
      fc.property(fc.constantFrom(...texts), (text) => {
        expect(thread(thread(text).designation)).toEqual(thread(text));
        expect(thread(writeThread(thread(text)))).toEqual(thread(text));
      }),
      { seed: 1 },
    );
  });

  it('never throws on any text (seed 2)', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 20 }), (text) => {
        expect(typeof readThread(text).ok).toBe('boolean');
      }),
      { seed: 2 },
    );
  });

  it('has a nominal size that a washer is named by, with or without the pitch', () => {
    const size = (text: string) => {
      const read = readNominalSize(text);
      return read.ok ? read.value : null;
    };
    expect(
      ['5/16-18', '5/16', '5/16 in', '5/16"', 'M8x1', 'm8', '#10', 'No. 10'].map(size),
    ).toEqual(['5/16', '5/16', '5/16', '5/16', 'M8', 'M8', '#10', '#10']);
    expect(size('large')).toBeNull();
    expect(['constructor', 'toString', '__proto__', 'MtoString'].map(size)).toEqual(
      Array(4).fill(null),
    );
  });

  it('has standard lengths, from the needed one upwards', () => {
    expect(nextStandardLength(thread('5/16-18'), 0.0254)).toBeCloseTo(0.0254, 12);
    expect(nextStandardLength(thread('5/16-18'), 0.0256)).toBeCloseTo(0.03175, 12);
    expect(nextStandardLength(thread('M8'), 0.0254)).toBe(0.03);
    expect(nextStandardLength(thread('M8'), 0.5)).toBeNull();
    expect(standardLengths(thread('M8'))[0]).toBe(0.012);
  });
});
