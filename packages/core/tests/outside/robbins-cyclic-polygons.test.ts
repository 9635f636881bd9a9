// Polygons in a circle from their sides. Brahmagupta's and Heron's formulas (textbook, exact) and
// D. P. Robbins, "Areas of polygons inscribed in a circle", Discrete & Computational Geometry 12
// (1994) 223: one polygon for each set of sides, radius and area whatever their order. The first
// values are exact, the others were computed apart from this project.

import { describe, expect, test } from 'vitest';
import { circumradius } from '../../src/sphere/cyclic.ts';
import { polygonOnSphere } from '../../src/sphere/polygon.ts';
import { checked } from './data/checked.ts';

const polygons: { sides: number[]; radius: number; area?: number }[] = [
  { sides: [13, 14, 15], radius: 8.125, area: 84 },
  { sides: [3, 4, 5, 6], radius: 3.287286114715, area: Math.sqrt(360) },
  { sides: [7, 15, 20, 24], radius: 12.5, area: 234 },
  { sides: [1, 1, 1, 1, 1], radius: 0.850650808352 },
  { sides: [25, 33, 39, 52, 60], radius: 36.483534113196, area: 2854.913662303 },
  { sides: [29, 30, 31, 32, 33], radius: 26.384671578194, area: 1651.561891673647 },
  { sides: [2, 3, 4, 5, 6, 7], radius: 4.611359958699, area: 50.054633737976 },
  { sides: [2, 2, 2, 3.9], radius: 1.951800145897, area: 5.191916192505 },
];
const SHARE = 5e-13;

/** Any sphere around the circle has the same plane polygon. */
const areaOf = (sides: readonly number[]): number => {
  const polygon = polygonOnSphere(sides, 100);
  return polygon.ok ? polygon.area : Number.NaN;
};
const near = (actual: number, expected: number, tolerance: number): boolean =>
  Math.abs(actual / expected - 1) <= tolerance;

describe.each(polygons.map((row) => [row.sides.join(', '), row] as const))('sides %s', (_, row) => {
  const { sides, radius, area } = row;
  test('radius; one ten tolerances off is refused', () => {
    const found = circumradius(sides) as number;
    checked({ got: found, expected: radius, ratio: SHARE });
    expect(near(found, radius * (1 + 10 * SHARE), SHARE)).toBe(false);
  });
  if (area !== undefined)
    test('area; one ten tolerances off is refused', () => {
      checked({ got: areaOf(sides), expected: area, ratio: SHARE });
      expect(near(areaOf(sides), area * (1 + 10 * SHARE), SHARE)).toBe(false);
    });
  test('radius and area do not depend on the order of the sides', () => {
    const orders = [
      [...sides].reverse(),
      [...sides.slice(2), ...sides.slice(0, 2)],
      [...sides].sort(),
    ];
    for (const order of orders) {
      checked({ got: circumradius(order) as number, expected: radius, ratio: SHARE });
      checked({ got: areaOf(order), expected: areaOf(sides), ratio: SHARE });
    }
  });
});
