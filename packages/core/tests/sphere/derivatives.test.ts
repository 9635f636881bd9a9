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

const TOLERANCE = 1e-7;

/** Every derivative of a polygon with the same by differences of what polygonOnSphere says. */
function pairs(sides: readonly number[], radius: number): [exact: number, difference: number][] {
  const exact = cornerDerivatives(polygon(sides, radius), radius);
  const n = sides.length;
  const bySide = (j: number, read: (p: SpherePolygon) => number): number =>
    differ((x) => read(polygon(sides.with(j, (sides[j] as number) + x), radius)), 1e-3);
  const byRadius = (read: (p: SpherePolygon) => number): number =>
    differ((x) => read(polygon(sides, radius + x)), 1e-3);
  const corner = (i: number) => (p: SpherePolygon) => p.corners[i] as number;
  const all = [...sides.keys()];
  return [
    ...all.flatMap((i) =>
      all.map((j): [number, number] => [
        exact.cornersBySides[i * n + j] as number,
        bySide(j, corner(i)),
      ]),
    ),
    ...all.map((i): [number, number] => [exact.cornersByRadius[i] as number, byRadius(corner(i))]),
    ...all.map((j): [number, number] => [
      exact.solidAngleBySides[j] as number,
      bySide(j, (p) => p.solidAngle),
    ]),
    [exact.solidAngleByRadius, byRadius((p) => p.solidAngle)],
  ];
}

test.each(cases)(
  'derivatives of %s are those by differences; ten times the tolerance is refused',
  (_, sides, radius) => {
    for (const [exact, difference] of pairs(sides, radius)) {
      expect(Math.abs(exact - difference)).toBeLessThan(TOLERANCE);
      expect(Math.abs(exact - difference - 10 * TOLERANCE)).toBeGreaterThan(TOLERANCE);
    }
  },
);

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
