// Sealant: joint depth (Allen and Rand, Architectural Detailing, read in a copy), pack volumes
// (midwestsealantsupply.com, read), metres a cartridge reckoned apart from this code, a movement joint
// (form of ASTM C1472, from memory), coating by the gallon (reckoned). A published table that promises 50
// to 55 ft of 1/4 in bead from a 10.1 fl oz tube (constructionmaterialcalculator.online, read) is refused:
// the tube holds enough for 24.3 ft.

import { describe, expect, test } from 'vitest';
import {
  beadArea,
  beadLength,
  coatingVolume,
  FLUID_OUNCE,
  isPossibleYield,
  jointWidth,
  SEALANT_PACKS,
  sealantDepth,
  sealLine,
} from '../../src/fitout/sealant.ts';
import { INCH } from '../../src/measure/length.ts';
import { checked } from './data/checked.ts';

const joint = (w: number, d: number) => ({
  form: 'joint' as const,
  width: w / 1000,
  depth: d / 1000,
});

test('depth of a joint by its width', () => {
  checked({
    got: [6, 10, 12, 19, 32].map((w) => 1000 * sealantDepth(w / 1000)),
    expected: [6, 6, 6, 9.5, 13],
    within: 1e-9,
  });
  expect(() => sealantDepth(0.003)).toThrow(/joint width is 0.003 m, expected 0.006 to 0.05 m/);
});

const joints = [
  [6, 6],
  [10, 6],
  [10, 5],
  [12, 6],
  [20, 10],
  [5, 5],
];
test.each([
  [290, [8.06, 4.83, 5.8, 4.03, 1.45, 11.6]],
  [300, [8.33, 5, 6, 4.17, 1.5, 12]],
  [310, [8.61, 5.17, 6.2, 4.31, 1.55, 12.4]],
  [600, [16.67, 10, 12, 8.33, 3, 24]],
])('metres of bead from %d ml', (ml, metres) => {
  const got = joints.map(([w, d]) => beadLength(ml * 1e-6, joint(w, d)));
  checked({ got, expected: metres, within: 6e-3 });
  expect(Math.abs(got[0] - metres[0] - 0.06)).toBeGreaterThan(6e-3);
});

describe('a tube of 10.1 fl oz', () => {
  const bead = { form: 'joint' as const, width: INCH / 4, depth: INCH / 4 };
  const tube = SEALANT_PACKS['cartridge 10.1 fl oz'];
  test('holds 18.23 cubic inches, 298.7 ml, 24.3 ft of a quarter-inch bead', () => {
    checked({ got: tube / INCH ** 3, expected: 18.2273, within: 1e-4 });
    checked({ got: tube * 1e6, expected: 298.7, within: 0.05 });
    checked({ got: beadLength(tube, bead) / (12 * INCH), expected: 24.303, within: 1e-3 });
  });
  test('can’t give the 50 to 55 ft of the published table that is wrong', () => {
    for (const feet of [50, 55]) expect(isPossibleYield(feet * 12 * INCH, tube, bead)).toBe(false);
    expect(isPossibleYield(24.3 * 12 * INCH, tube, bead)).toBe(true);
  });
  test('a foil of 20 fl oz holds near 36.6 cubic inches as printed', () => {
    checked({ got: (20 * FLUID_OUNCE) / INCH ** 3, expected: 36.6, ratio: 0.015 });
  });
});

test('a fillet of 10 by 10 mm takes half of what a square takes', () => {
  const fillet = { form: 'fillet' as const, legs: [0.01, 0.01] as const };
  checked({ got: beadLength(310e-6, fillet), expected: 6.2, within: 1e-9 });
  checked({ got: 2 * beadArea(fillet), expected: beadArea(joint(10, 10)), within: 1e-15 });
});

test('a joint that moves: 2 m of laminate, 60 K, a class of 25 %', () => {
  const width = jointWidth({ expansion: 25e-6, length: 2, warming: 60, movementClass: 0.25 });
  checked({ got: width, expected: 0.012, within: 1e-12, standing: 'from memory' });
});

test('waste and whole packs', () => {
  const line = sealLine('sealant', 100, 36e-6, 0.1, 310e-6);
  checked({ got: line.amount, expected: 3.96e-3, within: 1e-9 });
  checked({ got: line.packs!, expected: 13, within: 1e-9 });
  expect(sealLine('tape', 60, 1, 0, 20).packs).toBe(3);
  expect(sealLine('tape', 60, 1, 0, null).packs).toBe(null);
});

test('a gallon on 100 square feet is 16.04 wet mils, 0.4075 L a square metre', () => {
  const area = 100 * (12 * INCH) ** 2;
  const thickness = 16.0417e-3 * INCH;
  checked({ got: coatingVolume(area, thickness) / (128 * FLUID_OUNCE), expected: 1, ratio: 1e-5 });
  checked({ got: coatingVolume(1, thickness) * 1000, expected: 0.407458, ratio: 1e-5 });
});
