// GB 50009-2012, Table 8.3.1 item 36 (figure read in longyu8101/GB50009): its values at points, and
// the closed integrals of its law over a half sphere on the ground: drag coefficient on the frontal
// half disc 3π/16, lift coefficient on the plan disc 1/2; forces on a 20 ft half sphere.

import { describe, expect, test } from 'vitest';
import { flatDome, gbDome, gbDomeMirrored, steepDome } from '../../src/loads/gb-50009/dome.ts';
import { gustPressure } from '../../src/loads/reported-wind/gust.ts';
import { integrate, pins } from '../loads/integrate.ts';
import { checked } from './data/checked.ts';

const points: [number, number, number][] = [
  [0, 0, -1],
  [90, 90, 0.5],
  [90, -90, -0.5],
  [45, 90, -0.25],
  [60, 90, 0.125],
];

test.each(points)('shape coefficient at φ %d°, ψ %d°', (phiDeg, psiDeg, mu) => {
  const [phi, psi] = [(phiDeg * Math.PI) / 180, (psiDeg * Math.PI) / 180];
  const found = steepDome(Math.sin(phi) * Math.sin(psi), Math.cos(phi));
  checked({ got: found, expected: mu, within: 1e-12 });
  expect(Math.abs(found - mu - 1e-11)).toBeGreaterThan(1e-12);
  expect(flatDome(Math.cos(phi))).toBeCloseTo(-(Math.cos(phi) ** 2), 12);
});

describe('half sphere', () => {
  const whole = integrate(gbDome({ radius: 1, baseZ: 0 }));

  test('drag 3π/16 on the frontal half disc', () => {
    expect(pins(whole.drag / (Math.PI / 2), (3 * Math.PI) / 16, 1e-6)).toBe(true);
  });
  test('lift 1/2 on the plan disc', () => {
    expect(pins(whole.lift / Math.PI, 0.5, 1e-6)).toBe(true);
  });
  test('no side force, no moment about the centre', () => {
    expect(Math.abs(whole.side)).toBeLessThan(1e-12);
    for (const m of whole.moment) expect(Math.abs(m)).toBeLessThan(1e-12);
  });

  const cases = [
    [10, 62.5, 537.26, 912.07],
    [12.5, 97.65625, 839.46, 1425.11],
    [17.88, 199.809, 1717.58, 2915.85],
    [25, 390.625, 3357.85, 5700.46],
    [40, 1000, 8596.09, 14593.18],
  ] as const;
  test.each(cases)('20 ft across at %d m/s', (gust, q, drag, lift) => {
    const pressure = gustPressure(gust, 1.25);
    expect(pins(pressure, q, 1e-5)).toBe(true);
    expect(pins(whole.drag * pressure * 3.048 ** 2, drag, 2e-5)).toBe(true);
    expect(pins(whole.lift * pressure * 3.048 ** 2, lift, 2e-5)).toBe(true);
  });
});

test('a flat cap takes the law without drag; at a quarter of the span and above the other', () => {
  // Rise over span f/l of a cap with base z: (1 − z) / (2 √(1 − z²)); 1/4 at z = 0.6.
  const flat = gbDome({ radius: 1, baseZ: 0.6 });
  const steep = gbDome({ radius: 1, baseZ: 0.59 });
  expect(Math.abs(integrate(flat, 0.6, 100, 90).drag)).toBeLessThan(1e-12);
  expect(integrate(steep, 0.59, 100, 90).drag).toBeGreaterThan(0.1);
});

test('beyond a half sphere both extensions agree above the equator and say that they are own', () => {
  const form = { radius: 1, baseZ: -0.5 };
  for (const law of [gbDome(form), gbDomeMirrored(form)]) {
    expect(law.coefficient(0.6, 0, 0.8)).toBeCloseTo(steepDome(0.6, 0.8), 12);
    expect(law.sources.map((source) => source.confirmation)).toContain('common practice');
  }
  expect(gbDome(form).coefficient(0.6, 0, -0.8)).toBeCloseTo(0.5, 12);
  expect(gbDomeMirrored(form).coefficient(0.6, 0, -0.8)).toBeCloseTo(steepDome(0.6, 0.8), 12);
});
