import { expect, test } from 'vitest';
import {
  addTerm,
  conditionInto,
  innovationOf,
  makeBelief,
  makeEquation,
} from '../../src/identify/belief.ts';
import { cornerModel } from '../../src/identify/corner-model.ts';
import { seededRandom } from '../../src/math/random.ts';
import { polygonOnSphere } from '../../src/sphere/polygon.ts';

test('conditioning on equations one by one is conditioning on all at once, seed 3', () => {
  const random = seededRandom(3);
  const n = 4;
  const root = Array.from({ length: n * n }, () => random.normal());
  const cov = (i: number, j: number): number =>
    Array.from(
      { length: n },
      (_, k) => (root[i * n + k] as number) * (root[j * n + k] as number),
    ).reduce((a, b) => a + b);
  const belief = makeBelief(n);
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) belief.covariance[i * n + j] = cov(i, j);
  const rows = [
    { c: [1, -1, 0, 0], value: 0.3 },
    { c: [0, 2, 1, -1], value: -0.7 },
  ];
  for (const { c, value } of rows) {
    const equation = makeEquation(n);
    c.forEach((x, i) => {
      if (x !== 0) addTerm(equation, i, x);
    });
    equation.value = value;
    conditionInto(belief, equation, innovationOf(belief, equation), new Float64Array(n));
  }
  // All at once: mean = P Hᵀ S⁻¹ z with the 2 × 2 matrix S = H P Hᵀ.
  const h = rows.map(({ c }) => c);
  const ph = (i: number, r: number): number =>
    Array.from({ length: n }, (_, j) => cov(i, j) * (h[r]?.[j] as number)).reduce((a, b) => a + b);
  const s = (r: number, q: number): number =>
    Array.from({ length: n }, (_, i) => (h[r]?.[i] as number) * ph(i, q)).reduce((a, b) => a + b);
  const det = s(0, 0) * s(1, 1) - s(0, 1) * s(1, 0);
  const z = rows.map(({ value }) => value) as [number, number];
  const w = [
    (s(1, 1) * z[0] - s(0, 1) * z[1]) / det,
    (s(0, 0) * z[1] - s(1, 0) * z[0]) / det,
  ] as const;
  for (let i = 0; i < n; i++) {
    const expected = ph(i, 0) * w[0] + ph(i, 1) * w[1];
    expect(belief.mean[i]).toBeCloseTo(expected, 10);
    const left =
      cov(i, i) -
      (ph(i, 0) * (s(1, 1) * ph(i, 0) - s(0, 1) * ph(i, 1)) +
        ph(i, 1) * (s(0, 0) * ph(i, 1) - s(1, 0) * ph(i, 0))) /
        det;
    expect(belief.covariance[i * n + i]).toBeCloseTo(left, 10);
  }
});

test('terms of one unknown are joined', () => {
  const equation = makeEquation(3);
  addTerm(equation, 1, 2);
  addTerm(equation, 0, 1);
  addTerm(equation, 1, 0.5);
  expect(equation.terms).toBe(2);
  expect([...equation.coefficient.slice(0, 2)]).toEqual([2.5, 1]);
});

test('the slopes of a corner model are those of the corners on the sphere', () => {
  const sides = [
    [0.8, 0.9, 1.0],
    [1, 1.1, 0.9, 1.2],
  ];
  const radius = 2.5;
  const model = cornerModel(sides, 1 / radius ** 2);
  if (!model) throw new Error('no model');
  const cornersAt = (k: number, own: readonly number[], kappa: number): readonly number[] => {
    const polygon = polygonOnSphere(own, 1 / Math.sqrt(kappa));
    if (!polygon.ok) throw new Error(`kind ${k} does not lie on the sphere`);
    return polygon.corners;
  };
  const step = 1e-6;
  sides.forEach((own, k) => {
    own.forEach((_, c) => {
      const corner = (model.first[k] as number) + c;
      own.forEach((__, j) => {
        const moved = (by: number): number =>
          cornersAt(
            k,
            own.map((s, i) => (i === j ? s + by : s)),
            model.kappa,
          )[c] as number;
        const slope = (moved(step) - moved(-step)) / (2 * step);
        expect(model.slopes[(model.slopeStart[corner] as number) + j]).toBeCloseTo(slope, 6);
      });
      const bent = (by: number): number => cornersAt(k, own, model.kappa * (1 + by))[c] as number;
      expect(model.kappaSlopes[corner]).toBeCloseTo((bent(step) - bent(-step)) / (2 * step), 6);
    });
  });
});

test('a panel too large for the sphere has no corner model', () => {
  expect(cornerModel([[2, 2, 2]], 1)).toBeNull();
});
