// Free-standing wall by EN 1991-1-4, Table 7.9, l/h 5, no return corner: example of a public
// structural code base (xcfem/xc, test_ec1_wind_action_on_free_standing_wall.py), checked there
// against an independent calculation: 1530, 949, 738, 633 N/m².

import { expect, test } from 'vitest';
import {
  shelterFactor,
  wallPressure,
  wallZone,
} from '../../src/loads/en-1991-1-4/free-standing-wall.ts';
import { probabilityFactor } from '../../src/loads/en-1991-1-4/probability.ts';
import { peakVelocityPressure } from '../../src/loads/en-1991-1-4/velocity-pressure.ts';
import { flagsOf } from '../../src/loads/provenance.ts';
import { pins } from '../loads/integrate.ts';

const qp = peakVelocityPressure({
  basicWind: 26 * probabilityFactor(5),
  category: 'III',
  height: 8 + 2,
  orography: 1,
  airDensity: 1.25,
});

test('peak pressure at the top of a 2 m wall, 8 m above the ground, five years', () => {
  expect(pins(qp, 527.28, 1e-4)).toBe(true);
});

test.each([
  ['A', 0.5, 2.9, 1530, 1529.1],
  ['B', 3, 1.8, 949, 949.1],
  ['C', 7, 1.4, 738, 738.2],
  ['D', 9, 1.2, 633, 632.7],
] as const)('zone %s', (zone, fromEnd, cp, published, reckoned) => {
  const { value, sources } = wallPressure(zone);
  expect(wallZone(fromEnd, 2)).toBe(zone);
  expect(value).toBe(cp);
  expect(flagsOf({ sources })).toEqual([]);
  expect(pins(value * qp, published, 0.001)).toBe(true);
  expect(pins(value * qp, reckoned, 1e-4)).toBe(true);
});

test('a wall of no height or a distance below 0 is refused', () => {
  expect(() => wallZone(1, 0)).toThrow('height of the wall is 0 m, expected 0.01 to 100 m');
  expect(() => wallZone(-1, 2)).toThrow('distance from the free end is -1 m');
});

test('a wall behind another takes 0.3 of its load to five heights, all of it from twenty on (from memory)', () => {
  const factors = [0, 5, 12.5, 20, 40].map((x) => Number(shelterFactor(x).value.toFixed(12)));
  expect(factors).toEqual([0.3, 0.3, 0.65, 1, 1]);
  expect(flagsOf(shelterFactor(3))[0]?.confirmation).toBe('from memory');
  expect(() => shelterFactor(-1)).toThrow('distance between the walls in heights is -1');
});
