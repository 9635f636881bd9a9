// Peak velocity pressure by EN 1991-1-4. Steel Buildings in Europe, Single-storey steel buildings,
// Part 3: Actions, Appendix B (infosteel.be); worked sheets scribd 538539973 and 156788976; the
// probability factor of xcfem/xc, test_ec1_wind_action_on_free_standing_wall.py. Rows "reckoned" are
// own values from the formulas, made apart from this code.

import { describe, expect, test } from 'vitest';
import { probabilityFactor } from '../../src/loads/en-1991-1-4/probability.ts';
import {
  meanWind,
  peakVelocityPressure,
  roughnessFactor,
  type TerrainCategory,
  terrainFactor,
  turbulence,
} from '../../src/loads/en-1991-1-4/velocity-pressure.ts';
import { pins } from '../loads/integrate.ts';

// Source, basic wind, category, height, qp in Pa, relative tolerance.
const rows: [string, number, TerrainCategory, number, number, number][] = [
  ['SBE part 3, printed', 26, 'III', 8, 659, 0.006],
  ['SBE part 3, full precision', 26, 'III', 8, 661.82, 1e-5],
  ['scribd 538539973', 27, 'I', 3.5, 989, 0.001],
  ['scribd 538539973, full precision', 27, 'I', 3.5, 988.95, 1e-5],
  ['scribd 156788976', 25, '0', 77.36, 1658, 0.001],
  ['scribd 156788976', 25, '0', 28, 1403, 0.001],
  ['reckoned', 22, 'II', 3.5, 521.87, 1e-5],
  ['reckoned', 24, 'II', 6, 733.4, 1e-4],
  ['reckoned', 26, 'II', 7, 900.06, 1e-5],
];

test.each(rows)(
  '%s: %d m/s, category %s, %d m',
  (_source, basicWind, category, height, qp, tol) => {
    const found = peakVelocityPressure({
      basicWind,
      category,
      height,
      orography: 1,
      airDensity: 1.25,
    });
    expect(pins(found, qp, tol)).toBe(true);
  },
);

describe('the steps between', () => {
  test('SBE part 3: kr, cr and ce', () => {
    expect(pins(terrainFactor('III'), 0.215, 0.003)).toBe(true);
    expect(pins(roughnessFactor(8, 'III'), 0.706, 0.003)).toBe(true);
    const qp = peakVelocityPressure({
      basicWind: 26,
      category: 'III',
      height: 8,
      orography: 1,
      airDensity: 1.25,
    });
    expect(pins(qp / 422.5, 1.56, 0.006)).toBe(true);
  });
  test.each([
    [77.36, 1.585, 39.624, 0.098],
    [28, 1.426, 35.659, 0.109],
  ])('scribd 156788976 at %d m: cr, vm and Iv', (height, cr, vm, iv) => {
    expect(pins(roughnessFactor(height, '0'), cr, 0.0005)).toBe(true);
    expect(pins(meanWind({ basicWind: 25, category: '0', height, orography: 1 }), vm, 0.0005)).toBe(
      true,
    );
    expect(pins(turbulence(height, '0', 1), iv, 0.006)).toBe(true);
  });
});

test('five years instead of fifty', () => {
  expect(pins(probabilityFactor(5), 0.8545006, 1e-6)).toBe(true);
  expect(probabilityFactor(50)).toBe(1);
});
