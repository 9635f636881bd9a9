import { describe, expect, test } from 'vitest';
import { gbDome } from '../../src/loads/gb-50009/dome.ts';
import { lawsFor } from '../../src/loads/laws.ts';
import { externalCoefficients, facesOf } from '../../src/loads/panels.ts';
import {
  addedForces,
  pressureForces,
  scaledForces,
  sphereOverturning,
  totalsOf,
  windTotals,
} from '../../src/loads/totals.ts';
import { norm, pointAt } from '../../src/math/vector.ts';
import { pins } from './integrate.ts';
import { all, ball, dome } from './shells.ts';

const RADIUS = 3;
const CENTRE = [0, 0, 0] as const;

/** A half sphere by its panels’ middles; its rim zigzags. */
const half = dome(8, RADIUS);
const faces = facesOf(half);
const law = gbDome({ radius: RADIUS, baseZ: 0 });

const totalsFor = (windFrom: number) => {
  const coefficient = externalCoefficients(faces, law, windFrom);
  return totalsOf(faces, pressureForces(faces, all(half), coefficient, 1), CENTRE);
};

describe('panels', () => {
  test('areas of a whole ball sum to nothing, and in size to nearly the sphere', () => {
    const whole = facesOf(ball(8, RADIUS).shell);
    const sum = [0, 0, 0];
    let size = 0;
    for (let p = 0; p < whole.area.length / 3; p++) {
      const own = pointAt(whole.area, p);
      size += norm(own);
      for (let x = 0; x < 3; x++) sum[x] = (sum[x] as number) + (own[x] as number);
    }
    for (const x of sum) expect(Math.abs(x)).toBeLessThan(1e-9);
    expect(size / (4 * Math.PI * RADIUS ** 2)).toBeGreaterThan(0.98);
    expect(size / (4 * Math.PI * RADIUS ** 2)).toBeLessThan(1);
  });

  test('weights of a panel sum to one', () => {
    for (let p = 0; p < faces.sampleStart.length - 1; p++) {
      const own = faces.weight.slice(faces.sampleStart[p], faces.sampleStart[p + 1]);
      expect(own.reduce((sum, w) => sum + w, 0)).toBeCloseTo(1, 12);
    }
  });

  test('drag and lift of panels go to those of the sphere with the square of their size', () => {
    // The rim of these domes zigzags, so it is a whole ball that is compared: GB's law mirrored
    // gives no lift and twice the half sphere's drag.
    const error = [4, 8, 16].map((n) => {
      const shell = ball(n, 1).shell;
      const own = facesOf(shell);
      const c = externalCoefficients(own, { ...law, coefficient: (u, _s, z) => steep(u, z) }, 0);
      const { drag } = windTotals(totalsOf(own, pressureForces(own, all(shell), c, 1), CENTRE), 0);
      return Math.abs(drag - 2 * ((3 * Math.PI ** 2) / 32));
    });
    const rates = [1, 2].map((i) => Math.log2((error[i - 1] as number) / (error[i] as number)));
    for (const rate of rates) expect(rate).toBeGreaterThan(1.8);
    expect(error[2]).toBeLessThan(0.01);
  });

  test('turning the wind by a fifth of a turn about a five-fold crown turns the forces with it', () => {
    const [a, b] = [0.3, 0.3 + (2 * Math.PI) / 5];
    const [one, two] = [windTotals(totalsFor(a), a), windTotals(totalsFor(b), b)];
    expect(two.drag).toBeCloseTo(one.drag, 9);
    expect(two.lift).toBeCloseTo(one.lift, 9);
    expect(two.side).toBeCloseTo(one.side, 9);
    expect(two.overturning).toBeCloseTo(one.overturning, 9);
  });
});

const steep = (u: number, z: number): number => 0.5 * Math.sqrt(Math.max(0, 1 - z * z)) * u - z * z;

describe('moment about the centre: zero on the sphere whatever the law', () => {
  const laws = lawsFor({ radius: RADIUS, baseZ: -1.5 }, 'worst of all', 'worst of all');

  test.each([4, 6, 8])('under half a percent of drag × radius on flat panels, %i² a face', (n) => {
    const shell = dome(n, RADIUS, -0.5);
    const own = facesOf(shell);
    for (const law of laws)
      for (const windFrom of [0, 0.7, 2.5]) {
        const c = externalCoefficients(own, law, windFrom);
        const totals = totalsOf(own, pressureForces(own, all(shell), c, 1), CENTRE);
        const { drag, overturning } = windTotals(totals, windFrom);
        expect(Math.abs(overturning)).toBeLessThan(0.005 * Math.abs(drag) * RADIUS);
      }
  });

  test('about the middle of the base it is drag × height of the centre, to half a percent', () => {
    const shell = dome(6, RADIUS, -0.5);
    const own = facesOf(shell);
    const c = externalCoefficients(own, laws[0] as (typeof laws)[0], 0);
    const totals = totalsOf(own, pressureForces(own, all(shell), c, 1), [0, 0, -1.5]);
    const { drag, overturning } = windTotals(totals, 0);
    expect(overturning).toBeGreaterThan(0);
    expect(pins(overturning, sphereOverturning(drag, -1.5), 0.005)).toBe(true);
  });
});

describe('loads', () => {
  const loads = pressureForces(faces, [0, 5], externalCoefficients(faces, law, 0), 400);
  test('a suction pulls outward, a pressure pushes inward', () => {
    loads.places.forEach((place, i) => {
      const outward = pointAt(faces.area, place);
      const f = pointAt(loads.force, i);
      const along = f[0] * outward[0] + f[1] * outward[1] + f[2] * outward[2];
      expect(Math.sign(along)).toBe(-Math.sign(loads.pressure[i] as number));
      expect(norm(f)).toBeCloseTo(Math.abs(loads.pressure[i] as number) * norm(outward), 9);
    });
  });
  test('scaled by two they are twice, added to themselves as well', () => {
    expect([...addedForces(loads, loads).force]).toEqual([...scaledForces(loads, 2).force]);
  });
  test('loads on different panels are not added', () => {
    const other = { ...loads, places: Int32Array.of(0, 6) };
    expect(() => addedForces(loads, other)).toThrow('different panels');
  });
});
