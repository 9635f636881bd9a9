// The three-point rule (ASCE 7-05 Fig. 6-7, the same as 7-16 Fig. 27.3-2; notes read in scribd
// 346026076): closed integrals over a half sphere for case A, derived apart from this code,
//   drag (A − C)/2 on the frontal half disc,
//   lift −2/π [ (A + C) π/4 + (2B − A − C)(π/8 + 1/(2π)) ] on the plan disc.
// A, B and C themselves are from memory.

import { expect, test } from 'vitest';
import { threePointArc, threePointLaw } from '../../src/loads/asce-7-16/dome.ts';
import { fromMemory } from '../../src/loads/provenance.ts';
import { integrate, pins } from '../loads/integrate.ts';

const one = { value: 1, sources: [] };
const law = (a: number, b: number, c: number, kind: 'A' | 'B' = 'A') =>
  threePointLaw(
    { radius: 3, baseZ: 0 },
    { value: { a, b, c }, sources: [fromMemory('figure')] },
    kind,
    one,
  );

test.each([
  [0.8, -1.2, 0, 0.4, 0.7242277877],
  [0.8, -1.2, -0.4, 0.6, 0.7836993142],
])('A %d, B %d, C %d: drag %d and lift %d', (a, b, c, drag, lift) => {
  const found = integrate(law(a, b, c), 0, 2000, 1440);
  expect(pins(found.drag / (Math.PI / 2), drag, 1e-5)).toBe(true);
  expect(pins(found.lift / Math.PI, lift, 1e-5)).toBe(true);
  const formula =
    (-2 / Math.PI) *
    (((a + c) * Math.PI) / 4 + (2 * b - a - c) * (Math.PI / 8 + 1 / (2 * Math.PI)));
  expect(formula).toBeCloseTo(lift, 9);
});

test('the moment about the centre is zero for every one of its laws', () => {
  for (const kind of ['A', 'B'] as const) {
    const { moment } = integrate(law(0.8, -1.2, -0.3, kind), 0, 100, 90);
    for (const m of moment) expect(Math.abs(m)).toBeLessThan(1e-12);
  }
});

test('A, B and C stand at their places, halfway is the mean, case B holds A for 25°', () => {
  const at = (kind: 'A' | 'B', angleDeg: number): number =>
    threePointArc({ a: 0.8, b: -1.2, c: 0 }, kind, (angleDeg * Math.PI) / 180, Math.PI / 2);
  expect(at('A', 0)).toBe(0.8);
  expect(at('A', 90)).toBeCloseTo(-1.2, 12);
  expect(at('A', 180)).toBeCloseTo(0, 12);
  expect(at('A', 45)).toBeCloseTo(-0.2, 12);
  expect(at('A', 135)).toBeCloseTo(-0.6, 12);
  expect(at('B', 25)).toBeCloseTo(0.8, 12);
  expect(at('B', 57.5)).toBeCloseTo(-0.2, 12);
  expect(at('B', 135)).toBeCloseTo(-0.6, 12);
});
