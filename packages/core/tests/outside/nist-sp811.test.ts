// NIST Special Publication 811 (2008), Guide for the Use of the International System of Units,
// Appendix B.8, factors for units listed alphabetically. Values from memory.

import { describe, expect, test } from 'vitest';
import type { Read } from '../../src/measure/fault.ts';
import { readLength } from '../../src/measure/length.ts';
import { readForce, readMass, readPressure, readSpeed } from '../../src/measure/units.ts';
import { checked } from './data/checked.ts';

// Seven digits are printed; a value wrong by ten units of the last one must fail.
const DIGITS = 1e-6;
const near = (read: Read<number>, factor: number): boolean =>
  read.ok && Math.abs(read.value / factor - 1) < DIGITS;

describe('factors to SI (NIST SP 811, from memory)', () => {
  test.each([
    ['inch', readLength('1 in'), 2.54e-2],
    ['foot', readLength('1 ft'), 3.048e-1],
    ['pound', readMass('1 lb'), 4.535924e-1],
    ['ounce', readMass('1 oz'), 2.834952e-2],
    ['pound-force', readForce('1 lbf'), 4.448222],
    ['kilogram-force', readForce('1 kgf'), 9.80665],
    ['pound-force per square foot', readPressure('1 psf'), 4.788026e1],
    ['mile per hour', readSpeed('1 mph'), 4.4704e-1],
    ['kilometre per hour', readSpeed('1 km/h'), 2.777778e-1],
    ['knot', readSpeed('1 kn'), 5.144444e-1],
  ] as const)('one %s', (_name, read, factor) => {
    checked({ got: read.ok ? read.value : Number.NaN, expected: factor, ratio: DIGITS });
    expect(near(read, factor * (1 + 10 * DIGITS))).toBe(false);
  });
});
