// Snow. ASCE 7-16 Fig. 7.4-1: worked values of a public code base (Ricyteach/asce7,
// tests/test_chapter7.py: slippery, Ct 1.0, slope 4 in 12: 0.7933) and of an eng-tips thread on
// Eq. C7.4-2 (slippery, Ct 1.1, 26.6°: 0.72). EN 1991-1-3: Steel Buildings in Europe, Part 3,
// Appendix A (slope 5.7°, sk 0.65 kN/m²: μ1 0.8, s 0.52 kN/m²). GB 50009-2012, Table 7.2.1 item 3:
// 0.2 + 10 f/l, at most 2. Arch of 64 ft span and 16 ft rise: dlubal.com knowledge base 001591.

import { describe, expect, test } from 'vitest';
import { flatRoofSnow, slopeFactor, snowCases716 } from '../../src/loads/asce-7-16/snow.ts';
import {
  driftShape,
  pitchedShape,
  roofSnow,
  snowCasesEn,
} from '../../src/loads/en-1991-1-3/snow.ts';
import { facesOf } from '../../src/loads/panels.ts';
import { planArea, snowForces } from '../../src/loads/snow/panels.ts';
import { pins } from '../loads/integrate.ts';
import { all, ball } from '../loads/shells.ts';

const DEG = Math.PI / 180;

describe('ASCE 7-16 slope factor', () => {
  test.each([
    ['slippery, Ct 1.0, 5°', 5 * DEG, 1, true, 1, 1e-9],
    ['slippery, Ct 1.0, 4 in 12', Math.atan(4 / 12), 1, true, 0.7933, 1e-4],
    ['slippery, Ct 1.1, 26.6°', 26.6 * DEG, 1.1, true, 1 - (26.6 - 10) / 60, 1e-9],
    ['slippery, Ct 1.1, 26.6°, printed', 26.6 * DEG, 1.1, true, 0.72, 0.006],
    ['rough, Ct 1.0, 50°', 50 * DEG, 1, false, 0.5, 1e-9],
    ['rough, Ct 1.1, 53.75°', 53.75 * DEG, 1.1, false, 0.5, 1e-9],
    ['rough, Ct 1.2, 57.5°', 57.5 * DEG, 1.2, false, 0.5, 1e-9],
  ])('%s', (_name, slope, ct, slippery, cs, tolerance) => {
    expect(pins(slopeFactor(slope, ct, slippery), cs, tolerance)).toBe(true);
  });
  test('nothing lies beyond 70°, all of it on the level', () => {
    expect(slopeFactor(70 * DEG, 1.2, false)).toBeCloseTo(0, 12);
    expect(slopeFactor(120 * DEG, 1, true)).toBe(0);
    expect(slopeFactor(0, 1, true)).toBe(1);
  });
  test('the arch of 64 ft by 16 ft: 53.13° at its springing', () => {
    const radius = (32 ** 2 + 16 ** 2) / (2 * 16);
    expect(radius).toBe(40);
    expect(pins(Math.asin(32 / radius) / DEG, 53.13, 1e-4)).toBe(true);
  });
  test('flat roof load 0.7 Ce Ct Is pg', () => {
    expect(flatRoofSnow(1000).value).toBeCloseTo(840, 9);
    const heated = [{ number: 'asceSnowThermal', value: 1, reason: 'heated' }] as const;
    expect(flatRoofSnow(1000, heated).value).toBeCloseTo(700, 9);
  });
});

describe('EN 1991-1-3', () => {
  test('slope 5.7°, 650 Pa on the ground: 520 Pa', () => {
    expect(pitchedShape(5.7 * DEG)).toBe(0.8);
    expect(pins(pitchedShape(5.7 * DEG) * roofSnow(650).value, 520, 1e-9)).toBe(true);
    expect(pitchedShape(45 * DEG)).toBeCloseTo(0.4, 12);
    expect(pitchedShape(80 * DEG)).toBe(0);
  });
  test.each([
    [0.1, 1.2],
    [0.18, 2],
    [0.5, 2],
  ])('drift of an arch with rise over width %d', (ratio, mu) => {
    expect(driftShape(ratio)).toBeCloseTo(mu, 12);
  });
});

describe('on a half sphere of radius 3', () => {
  const shell = ball(16, 3).shell;
  const faces = facesOf(shell);
  const total = (force: Float64Array): number => -force.reduce((sum, f) => sum + f, 0);
  const on = (snow: Parameters<typeof snowForces>[3], windFrom = 0) =>
    snowForces(faces, 3, all(shell), snow, windFrom).value;
  const [evenAsce, driftAsce] = snowCases716(1000, false);
  const [evenEn, driftEn] = snowCasesEn({ radius: 3, baseZ: 0 }, 1000);

  test('EN even snow: 0.8 on the plan within the 60° points', () => {
    const published = 800 * Math.PI * (3 * Math.sin(60 * DEG)) ** 2;
    expect(pins(total(on(evenEn as NonNullable<typeof evenEn>).force), published, 0.02)).toBe(true);
  });
  test('EN drift: its triangles over strips of the plan', () => {
    // ∫ over the plan disc of radius ρ = R sin 60° of μ3 (1 and ½) × triangle in |x|/ρ, reckoned here.
    const rho = 3 * Math.sin(60 * DEG);
    const n = 4000;
    let mean = 0;
    for (let i = 0; i < n; i++) {
      const t = (i + 0.5) / n;
      mean += (t < 0.5 ? 2 * t : 2 - 2 * t) * 2 * Math.sqrt(1 - t * t) * (rho ** 2 / n);
    }
    const published = 1000 * 2 * 1.5 * mean;
    expect(pins(total(on(driftEn as NonNullable<typeof driftEn>).force), published, 0.02)).toBe(
      true,
    );
  });
  test('ASCE even snow: the slope factor over the plan', () => {
    const n = 4000;
    let published = 0;
    for (let i = 0; i < n; i++) {
      const slope = ((i + 0.5) * (Math.PI / 2)) / n;
      const ring = 2 * Math.PI * 9 * Math.sin(slope) * Math.cos(slope) * (Math.PI / 2 / n);
      published += 840 * slopeFactor(slope, 1.2, false) * ring;
    }
    expect(pins(total(on(evenAsce as NonNullable<typeof evenAsce>).force), published, 0.02)).toBe(
      true,
    );
  });
  test('drifts lie on the side away from the wind and press nowhere up', () => {
    for (const drift of [driftAsce, driftEn]) {
      const loads = on(drift as NonNullable<typeof drift>, 0);
      let moment = 0;
      loads.places.forEach((p, i) => {
        const f = loads.force[3 * i + 2] as number;
        expect(f).toBeLessThanOrEqual(0);
        moment += f * (faces.centre[3 * p] as number);
      });
      // The wind comes from +x, the snow lies at −x: its weight × x is positive.
      expect(moment).toBeGreaterThan(0);
    }
  });
  test('ASCE drift leaves the 225° upwind bare', () => {
    const loads = on(driftAsce as NonNullable<typeof driftAsce>, 0);
    loads.places.forEach((p, i) => {
      const [x, y] = [faces.centre[3 * p] as number, faces.centre[3 * p + 1] as number];
      const off = Math.abs(Math.atan2(y, -x)) / DEG;
      if (off > 67.5 && Math.hypot(x, y) > 0.01) expect(loads.force[3 * i + 2]).toBeCloseTo(0, 9);
    });
  });
  test('overhanging panels bear none, and the plan is that of the sphere', () => {
    expect(pins(planArea(faces, all(shell)), Math.PI * 9, 0.01)).toBe(true);
  });
});

test.each([-1, 20_001, Number.NaN])('a ground snow of %d Pa is refused', (load) => {
  expect(() => snowCases716(load, false)).toThrow(
    `ground snow load is ${load} Pa, expected 0 to 20000 Pa`,
  );
});

test('ASCE drift downwind (from memory): ½ pf at the crown, 2 pf from 30° on, by the slope factor beyond', () => {
  const drift = snowCases716(1000, false)[1];
  const at = (slopeDeg: number): number =>
    (drift?.pressure({ slope: slopeDeg * DEG, downwind: 0.5, across: 0 }) ?? 0) / 840;
  // pf is 840 Pa with Ct 1.2, which lets rough snow slide from 45° on; Ce is 1.
  expect(at(0)).toBeCloseTo(0.5, 12);
  expect(at(15)).toBeCloseTo(1.25, 12);
  expect(at(30)).toBeCloseTo(2, 12);
  expect(at(45)).toBeCloseTo(2, 12);
  expect(at(57.5)).toBeCloseTo(1, 12);
  expect(at(70)).toBeCloseTo(0, 12);
});
