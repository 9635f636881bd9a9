import { describe, expect, it } from 'vitest';
import { readSectors, sectorsText } from '../../../src/raise/yard/sectors.ts';

describe('sectors kept clear', () => {
  it('are read as people write them, through the datum too', () => {
    const read = readSectors(' 80-120, 300° to 20°;0 – 7.5 ');
    expect(read.ok && read.value.map((ends) => ends.map((x) => (x * 180) / Math.PI))).toEqual([
      [expect.closeTo(80, 9), expect.closeTo(120, 9)],
      [expect.closeTo(300, 9), expect.closeTo(20, 9)],
      [0, expect.closeTo(7.5, 9)],
    ]);
    expect(read.ok && sectorsText(read.value.slice(0, 2))).toBe('80-120, 300-20');
    expect(readSectors('')).toEqual({ ok: true, value: [] });
  });
  it.each(['80', '80-380', '90-90', 'north-east', '10-20-30'])(
    '"%s" is told as no sector',
    (text) => {
      expect(readSectors(text)).toMatchObject({ ok: false, faults: [{ found: `"${text}"` }] });
    },
  );
});
