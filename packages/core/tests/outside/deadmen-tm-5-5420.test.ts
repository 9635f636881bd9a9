// TM 5-5420-278-10, Table 9 (mobilebridges.tpub.com, pages 316-317): holding power of loam for
// deadmen, lb/ft², and L = CC/(HP Df) + 1 ft. Two examples reckoned from it: 20,000 lb at 6 ft,
// 1 in 4, face 1 ft: 4.3333 ft; 9,800 lb at 4 ft, 1 in 1, face 0.67 ft: 9.3582 ft, which is more than
// the nine faces of a timber.

import { expect, test } from 'vitest';
import { deadman, deadmanLength, holdingPower } from '../../src/ground/anchors/deadman.ts';
import type { Soil } from '../../src/ground/anchors/soil.ts';
import { misfits } from './data/pairs.ts';

const FOOT = 0.3048;
const POUND = 4.4482216152605;
const loam: Soil = { kind: 'loam', firm: true, wet: false };
const slope = (out: number): number => Math.atan(1 / out);
const table: Readonly<Record<number, readonly number[]>> = {
  1: [950, 1750, 2800, 3800, 5100],
  2: [1300, 2200, 3600, 5100, 7000],
  3: [1450, 2600, 4000, 5800, 8000],
  4: [1500, 2700, 4100, 6000, 8400],
};
const inLoam = (feet: number, out: number): number =>
  ((holdingPower(feet * FOOT, slope(out)) ?? Number.NaN) * FOOT ** 2) / POUND;

test('the table comes back, to 1 lb/ft²; ten times that is refused', () => {
  const pairs = Object.entries(table).flatMap(([out, row]) =>
    row.map((expected, i) => ({
      what: `${i + 3} ft, 1 in ${out}`,
      actual: inLoam(i + 3, Number(out)),
      expected,
    })),
  );
  expect(pairs).toHaveLength(20);
  expect(misfits(pairs, 1)).toEqual([]);
  expect(misfits(pairs, 1, 10)).toHaveLength(20);
});

test('between depths it lies on the line, between slopes it is the steeper one, below 7 ft the last', () => {
  expect(inLoam(4.5, 1)).toBeCloseTo((1750 + 2800) / 2, 3);
  expect(inLoam(4, 1.9)).toBeCloseTo(1750, 3);
  expect(inLoam(9, 2)).toBeCloseTo(7000, 3);
  expect(inLoam(5, 12)).toBeCloseTo(4100, 3);
});

test('shallower than 3 ft, or steeper than 1 in 1, there is no value', () => {
  expect(holdingPower(2.9 * FOOT, slope(2))).toBeNull();
  expect(holdingPower(4 * FOOT, slope(0.9))).toBeNull();
});

test('the two examples agree to 1e-4 ft; ten times that is refused', () => {
  const length = (lb: number, face: number, feet: number, out: number): number =>
    (deadmanLength(lb * POUND, face * FOOT, feet * FOOT, slope(out)) ?? Number.NaN) / FOOT;
  const pairs = [
    { what: '6 ft', actual: length(20_000, 1, 6, 4), expected: 4.3333 },
    { what: '4 ft', actual: length(9800, 0.67, 4, 1), expected: 9.3582 },
  ];
  expect(misfits(pairs, 1e-4)).toEqual([]);
  expect(misfits(pairs, 1e-4, 1e-3)).toHaveLength(2);
});

test('what a deadman holds is the rule turned round, and over nine faces is refused', () => {
  const pull = { way: 'guy', elevation: slope(4) } as const;
  const read = deadman(
    { length: 4.3333 * FOOT, face: FOOT, depth: 6 * FOOT, body: 'timber' },
    loam,
    pull,
  );
  expect(read.ok ? read.value.pull / POUND : 0).toBeCloseTo(20_000, -1);
  const long = deadman(
    { length: 9.3582 * FOOT, face: 0.67 * FOOT, depth: 4 * FOOT, body: 'timber' },
    loam,
    { way: 'guy', elevation: slope(1) },
  );
  expect(long.ok ? '' : long.faults[0]?.found).toMatch(/14\.0 times its face/);
});

test('five times in hardpan, half in clay and wet loam, none in sand', () => {
  const pull = { way: 'guy', elevation: slope(2) } as const;
  const of = { length: 1.2, face: 0.25, depth: 1, body: 'timber' } as const;
  const hold = (soil: Partial<Soil>): number => {
    const read = deadman(of, { ...loam, ...soil }, pull);
    return read.ok ? read.value.pull : Number.NaN;
  };
  expect(hold({ kind: 'hardpan' }) / hold({})).toBeCloseTo(5, 9);
  expect(hold({ kind: 'clay' }) / hold({})).toBeCloseTo(0.5, 9);
  expect(hold({ wet: true }) / hold({})).toBeCloseTo(0.5, 9);
  expect(hold({ kind: 'sand' })).toBeNaN();
});
