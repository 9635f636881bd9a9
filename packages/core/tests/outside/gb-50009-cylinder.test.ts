// GB 50009-2012, Table 8.3.1 item 37: pressure around a round upright structure and its overall
// coefficient for a smooth one of height over width 1: 0.5 (table read in longyu8101/GB50009).

import { expect, test } from 'vitest';
import { gbCylinder } from '../../src/loads/gb-50009/cylinder.ts';
import { checked } from './data/checked.ts';

const rows = [1.0, 0.8, 0.1, -0.7, -1.2, -1.5, -1.7, -1.2, -0.7, -0.5, -0.4, -0.4, -0.4];

test.each(rows.map((mu, i) => [15 * i, mu] as const))('at %i° from the wind', (angleDeg, mu) => {
  const found = gbCylinder((angleDeg * Math.PI) / 180, 1);
  checked({ got: found, expected: mu, within: 1e-9 });
  expect(Math.abs(found - mu - 1e-8)).toBeGreaterThan(1e-9);
  expect(gbCylinder((angleDeg * Math.PI) / 180, 0.3)).toBeCloseTo(mu, 9);
});

test('taller ones between the columns', () => {
  expect(gbCylinder(Math.PI / 2, 7)).toBeCloseTo(-2.2, 12);
  expect(gbCylinder(Math.PI / 2, 4)).toBeCloseTo(-1.95, 12);
  expect(gbCylinder(Math.PI / 2, 30)).toBeCloseTo(-2.6, 12);
});

test('pressures around add up to the published overall coefficient, as far as 15° steps tell', () => {
  // Drag coefficient on the width: half the integral of μ cos α around = ∫0..π μ cos α dα.
  const n = 1200;
  const sum = Array.from({ length: n }, (_, i) => ((i + 0.5) * Math.PI) / n).reduce(
    (total, a) => total + gbCylinder(a, 1) * Math.cos(a) * (Math.PI / n),
    0,
  );
  expect(sum).toBeGreaterThan(0.4);
  expect(sum).toBeLessThan(0.7);
});
