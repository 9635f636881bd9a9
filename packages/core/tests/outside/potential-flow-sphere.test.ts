// Frictionless flow about a half sphere on the ground: no drag, lift coefficient 11/16 on the plan
// disc (F. M. White, Fluid Mechanics: F = 11/32 ρ V² π R², from memory; integral reckoned again).

import { expect, test } from 'vitest';
import { potentialLaw } from '../../src/loads/sphere-flow/potential.ts';
import { integrate, pins } from '../loads/integrate.ts';

const half = integrate(potentialLaw());

test('lift 11/16, drag 0', () => {
  expect(pins(half.lift / Math.PI, 11 / 16, 1e-6)).toBe(true);
  expect(Math.abs(half.drag)).toBeLessThan(1e-12);
});

test.each([
  [10, 1254.1],
  [12.5, 1959.53],
  [17.88, 4009.29],
  [25, 7838.13],
  [40, 20065.62],
])('lift of a 20 ft half sphere at %d m/s', (speed, lift) => {
  const q = 0.5 * 1.25 * speed ** 2;
  expect(pins(half.lift * q * 3.048 ** 2, lift, 2e-5)).toBe(true);
});
