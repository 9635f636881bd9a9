// Slabs and a sandwich before a plane wave: values reckoned twice apart from this code (the sum over
// inner reflections, and a characteristic matrix, alike to 1e-15), conventions of Born and Wolf,
// Principles of Optics; and closed forms: half-wave and quarter-wave walls, Brewster's angle, the
// Fresnel equations.

import { describe, expect, test } from 'vitest';
import {
  halfWaveThicknesses,
  type Layer,
  LIGHT_SPEED,
  lossDb,
  type Polarisation,
  throughLayers,
} from '../../src/fitout/wave.ts';
import { checked } from './data/checked.ts';

const slab = (mm: number, permittivity: number, lossTangent = 0): Layer[] => [
  { thickness: mm / 1000, permittivity, lossTangent },
];
const at = (layers: readonly Layer[], f: number, deg = 0, pol: Polarisation = 'TE') =>
  throughLayers(layers, f, Math.cos((deg * Math.PI) / 180), pol);

const straight: [number, number, number, number, number, number, number, number][] = [
  [1420405750, 3, 4.3, 0.015, 0.973533, 0.1165, 0.020907, 0.005559],
  [1420405750, 6, 4.3, 0.015, 0.913978, 0.3906, 0.075851, 0.010171],
  [4e9, 3, 4.3, 0.015, 0.852977, 0.6906, 0.134096, 0.012927],
  [12e9, 1, 4.3, 0.015, 0.852977, 0.6906, 0.134096, 0.012927],
  [10.7e9, 3, 4.3, 0.015, 0.608664, 2.1562, 0.373741, 0.017595],
  [10.7e9, 6, 4.3, 0.015, 0.888256, 0.5146, 0.066883, 0.044861],
  [5.6e9, 3, 4.4, 0.02, 0.754717, 1.2222, 0.22483, 0.020454],
  [10e9, 7.4025, 4.1, 0.015, 0.942686, 0.2563, 0.000307, 0.057007],
];

test.each(straight)('%d Hz square on a slab of %d mm', (f, mm, er, tan, T, db, R, A) => {
  for (const pol of ['TE', 'TM'] as const) {
    const got = at(slab(mm, er, tan), f, 0, pol);
    checked({
      got: [got.transmitted, got.reflected, got.absorbed],
      expected: [T, R, A],
      within: 1e-6,
    });
    checked({ got: lossDb(got.transmitted), expected: db, within: 1e-4 });
    expect(Math.abs(got.transmitted - T - 1e-5)).toBeGreaterThan(1e-6);
  }
});

describe('10 GHz on 3 mm of permittivity 4.1', () => {
  const rows: [number, number, number, number, number][] = [
    [0, 0.63974, 0.342764, 0.63974, 0.342764],
    [15, 0.621797, 0.360638, 0.660308, 0.321813],
    [30, 0.564137, 0.418203, 0.725641, 0.255395],
    [45, 0.4563, 0.526365, 0.840899, 0.13866],
    [60, 0.290201, 0.694356, 0.968319, 0.010453],
    [75, 0.097359, 0.892706, 0.794265, 0.187751],
  ];
  test.each(rows)('at %d° from square on', (deg, te, teBack, tm, tmBack) => {
    const [a, b] = [
      at(slab(3, 4.1, 0.015), 10e9, deg, 'TE'),
      at(slab(3, 4.1, 0.015), 10e9, deg, 'TM'),
    ];
    checked({
      got: [a.transmitted, a.reflected, b.transmitted, b.reflected],
      expected: [te, teBack, tm, tmBack],
      within: 1e-6,
    });
  });
});

test.each([
  [1.42e9, 0.984794, 0.06655],
  [5e9, 0.931143, 0.30984],
  [10e9, 0.954324, 0.20304],
])('a sandwich of 1 mm skins on 20 mm of foam at %d Hz', (f, T, db) => {
  const skin = { thickness: 0.001, permittivity: 4.3, lossTangent: 0.015 };
  const core = { thickness: 0.02, permittivity: 1.1, lossTangent: 0.002 };
  const { transmitted } = at([skin, core, skin], f);
  checked({ got: transmitted, expected: T, within: 1e-6 });
  checked({ got: lossDb(transmitted), expected: db, within: 1e-5 });
});

describe('closed forms', () => {
  test('a half-wave wall without loss lets all through, whatever its multiple', () => {
    checked({ got: halfWaveThicknesses(4.1, 10e9, 0.01)[0], expected: 7.402847e-3, within: 1e-9 });
    for (const d of halfWaveThicknesses(4.1, 10e9, 0.05))
      checked({ got: at(slab(1000 * d, 4.1), 10e9).transmitted, expected: 1, within: 1e-12 });
  });
  test('a half-wave wall for a leaning wave', () => {
    const [d] = halfWaveThicknesses(4.1, 10e9, 0.02, Math.cos(1));
    const got = throughLayers(slab(1000 * d, 4.1), 10e9, Math.cos(1), 'TE');
    checked({ got: got.transmitted, expected: 1, within: 1e-12 });
  });
  test('a quarter-wave wall without loss is the worst: 4 ε / (1 + ε)²', () => {
    const got = at(slab(3.701424, 4.1), 10e9).transmitted;
    checked({ got, expected: 0.6305267, within: 1e-6 });
    checked({ got, expected: (4 * 4.1) / 5.1 ** 2, within: 1e-6 });
  });
  test('TM goes through a bare slab whole at Brewster’s angle', () => {
    const brewster = (Math.atan(Math.sqrt(4.1)) * 180) / Math.PI;
    checked({ got: brewster, expected: 63.71686, within: 1e-5 });
    checked({ got: at(slab(3, 4.1), 10e9, brewster, 'TM').reflected, expected: 0, within: 1e-12 });
    expect(at(slab(3, 4.1), 10e9, brewster, 'TE').reflected).toBeGreaterThan(0.5);
  });
  test('thickness and wave length change together', () => {
    const a = at(slab(3, 4.3, 0.015), 4e9, 40, 'TM');
    const b = at(slab(1, 4.3, 0.015), 12e9, 40, 'TM');
    checked({ got: a.transmitted, expected: b.transmitted, within: 1e-12 });
  });
  test('a thin slab lags by k d (√ε − 1) against air, near enough', () => {
    const [re, im] = at(slab(0.01, 1.2), 1e9).field;
    const k = (2 * Math.PI * 1e9) / LIGHT_SPEED;
    // To first order in d: t e^{jkd} = 1 − j k d (ε − 1) / 2.
    checked({ got: Math.atan2(im, re), expected: (-k * 1e-5 * 0.2) / 2, ratio: 1e-3 });
  });
  test('layers of air are no wall, and order does not matter to what goes through', () => {
    checked({ got: at(slab(100, 1), 5e9, 30).field, expected: [1, 0], within: 1e-12 });
    const [a, b] = [slab(2, 4, 0.01)[0], slab(5, 2, 0.02)[0]];
    const [ab, ba] = [at([a, b], 8e9, 50, 'TM'), at([b, a], 8e9, 50, 'TM')];
    checked({ got: ab.transmitted, expected: ba.transmitted, within: 1e-12 });
    expect(Math.abs(ab.reflected - ba.reflected)).toBeGreaterThan(1e-6);
  });
});
