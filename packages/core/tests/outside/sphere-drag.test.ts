// The sphere as measured: drag about 0.2 beyond the critical flow (E. Achenbach, J. Fluid Mech. 54(3)
// 1972, 565, from memory). The shape is own: its integral over the sphere must give that drag back,
// and on a half sphere the lift that its closed integral says.

import { describe, expect, test } from 'vitest';
import { sphereForces } from '../../src/loads/en-1991-1-4/sphere.ts';
import {
  BEYOND_CRITICAL,
  measuredSphere,
  measuredSphereLaw,
  partingCircle,
  reynolds,
} from '../../src/loads/sphere-flow/measured.ts';
import { integrate, pins } from '../loads/integrate.ts';

const law = (drag: number) => measuredSphereLaw({ value: drag, sources: [] });

describe.each([0.1, 0.2, 0.5])('drag %d', (drag) => {
  test('comes back from the pressures over the whole sphere, on the disc', () => {
    const whole = integrate(law(drag), -1, 600, 720);
    expect(pins(whole.drag / Math.PI, drag, 1e-4)).toBe(true);
    expect(Math.abs(whole.lift)).toBeLessThan(1e-9);
  });
  test('on a half sphere: the same on the half disc, and the closed integral of its lift', () => {
    const half = integrate(law(drag), 0, 1500, 1440);
    expect(pins(half.drag / (Math.PI / 2), drag, 1e-4)).toBe(true);
    // Lift on the plan disc: −(2/π) ∫ Cp(u) √(1 − u²) du over −1 … 1 (each circle across the wind
    // gives 2 sin θ of height); the integral is reckoned here by the midpoint rule.
    const n = 20_000;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const u = -1 + (2 * (i + 0.5)) / n;
      sum -= measuredSphere(u, drag) * Math.sqrt(1 - u * u) * (2 / n);
    }
    expect(pins(half.lift / Math.PI, (2 / Math.PI) * sum, 1e-3)).toBe(true);
  });
});

test('parts at 139° with a rear pressure of +0.05 for drag 0.2', () => {
  expect((Math.acos(partingCircle(0.2)) * 180) / Math.PI).toBeCloseTo(139.5, 0);
  expect(measuredSphere(-1, 0.2)).toBeCloseTo(0.0513, 3);
  expect(measuredSphere(1, 0.2)).toBe(1);
});

test('a shell of 6 m is beyond the critical flow in any wind that loads are reckoned for', () => {
  // 10 m/s on 6.096 m at 1.5e-5 m²/s.
  expect(reynolds(10, 3.048)).toBeCloseTo(4.064e6, 0);
  expect(reynolds(1, 3)).toBe(BEYOND_CRITICAL);
});

test('a drag that no sphere has is refused', () => {
  for (const drag of [0, 0.6, Number.NaN])
    expect(() => law(drag)).toThrow(
      `drag coefficient of a sphere is ${drag}, expected 0.05 to 0.5`,
    );
});

test('EN 1991-1-4, 7.9.3 (from memory): forces on a sphere near the ground', () => {
  const { drag, lift } = sphereForces({ radius: 2, baseZ: -1 }, { value: 500, sources: [] });
  expect(drag.value).toBeCloseTo(500 * Math.PI * 4 * 0.4 * 1.6, 6);
  expect(lift.value).toBeCloseTo(500 * Math.PI * 4 * 0.6, 6);
  expect(drag.sources).toHaveLength(2);
});
