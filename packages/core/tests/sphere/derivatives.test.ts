import { expect, test } from 'vitest';
import { cornerDerivatives } from '../../src/sphere/derivatives.ts';
import { polygonOnSphere, type SpherePolygon } from '../../src/sphere/polygon.ts';

const polygon = (sides: readonly number[], radius: number): SpherePolygon => {
  const found = polygonOnSphere(sides, radius);
  if (!found.ok) throw new Error(JSON.stringify(found.why));
  return found;
};

/** Derivative at 0 by central differences at steps h and h/2, the h² error taken out. */
const differ = (f: (x: number) => number, h: number): number => {
  const central = (step: number) => (f(step) - f(-step)) / (2 * step);
  return (4 * central(h / 2) - central(h)) / 3;
};

const cases: [string, number[], number][] = [
  ['an acute triangle', [0.9, 1.0, 1.1], 2.7],
  ['a right triangle', [0.6, 0.8, 1.0], 2.7],
  ['an obtuse triangle', [0.6, 0.7, 1.2], 2.7],
  ['a quadrilateral', [0.5, 0.9, 0.7, 1.1], 1.5],
  ['a pentagon with its centre outside', [0.3, 0.4, 0.2, 0.3, 1.1], 1.5],
  ['a hexagon', [1, 1, 1, 1, 1, 1], 2.5],
  ['a large triangle', [1.6, 1.5, 1.62], 1],
];

test.each(cases)('derivatives of %s agree with differences', (_, sides, radius) => {
  const exact = cornerDerivatives(polygon(sides, radius), radius);
  const n = sides.length;
  const moved = (j: number, by: number) =>
    polygon(
      sides.map((side, i) => (i === j ? side + by : side)),
      radius,
    );
  for (let j = 0; j < n; j++) {
    for (let i = 0; i < n; i++) {
      const expected = differ((x) => moved(j, x).corners[i] as number, 1e-3);
      expect(exact.cornersBySides[i * n + j]).toBeCloseTo(expected, 7);
    }
    expect(exact.solidAngleBySides[j]).toBeCloseTo(
      differ((x) => moved(j, x).solidAngle, 1e-3),
      7,
    );
  }
  for (let i = 0; i < n; i++) {
    const expected = differ((x) => polygon(sides, radius + x).corners[i] as number, 1e-3);
    expect(exact.cornersByRadius[i]).toBeCloseTo(expected, 7);
  }
  const expected = differ((x) => polygon(sides, radius + x).solidAngle, 1e-3);
  expect(exact.solidAngleByRadius).toBeCloseTo(expected, 7);
});

test('all lengths scaled together leave the angles: sides and radius derivatives cancel', () => {
  for (const [, sides, radius] of cases) {
    const d = cornerDerivatives(polygon(sides, radius), radius);
    const n = sides.length;
    for (let i = 0; i < n; i++) {
      const bySides = sides.reduce((s, a, j) => s + a * (d.cornersBySides[i * n + j] as number), 0);
      expect(bySides + radius * (d.cornersByRadius[i] as number)).toBeCloseTo(0, 11);
    }
    const whole = sides.reduce((s, a, j) => s + a * (d.solidAngleBySides[j] as number), 0);
    expect(whole + radius * d.solidAngleByRadius).toBeCloseTo(0, 11);
  }
});

test('on a very large sphere the solid angle falls with the square of the radius', () => {
  const radius = 1e6;
  const found = polygon([0.9, 1.0, 1.1], radius);
  const { solidAngleByRadius } = cornerDerivatives(found, radius);
  expect((solidAngleByRadius * radius) / (-2 * found.solidAngle)).toBeCloseTo(1, 9);
});
