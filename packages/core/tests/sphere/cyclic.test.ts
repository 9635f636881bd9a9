import fc from 'fast-check';
import { expect, test } from 'vitest';
import { circumradius, cyclicPolygon, describePolygonFault } from '../../src/sphere/cyclic.ts';

const why = (...sides: number[]) => {
  const polygon = cyclicPolygon(sides);
  return polygon.ok ? null : polygon.why;
};

/** Sides of a polygon with corners at these shares of a unit circle. */
const sidesOnCircle = (shares: readonly number[]): number[] => {
  const total = shares.reduce((sum, share) => sum + share, 0);
  return shares.map((share) => 2 * Math.sin((Math.PI * share) / total));
};

test('the circumradius of a right triangle is half its hypotenuse', () => {
  expect(circumradius([3, 4, 5])).toBeCloseTo(2.5, 14);
});

test('the centre lies inside an acute and outside an obtuse triangle', () => {
  const inside = (...sides: number[]) => {
    const polygon = cyclicPolygon(sides);
    return polygon.ok && polygon.centreInside;
  };
  expect(inside(4, 5, 6)).toBe(true);
  expect(inside(4, 5, 8)).toBe(false);
  expect(inside(2, 2, 2, 3.9)).toBe(true);
  expect(inside(2, 2, 2, 5)).toBe(false);
});

test('law, seed 1: sides cut from a unit circle have circumradius 1 and half angles that add up to π', () => {
  const shares = fc.array(fc.double({ min: 0.05, max: 1, noNaN: true }), {
    minLength: 3,
    maxLength: 9,
  });
  fc.assert(
    fc.property(shares, fc.integer({ min: -9, max: 9 }), (parts, power) => {
      const unit = 10 ** power;
      const polygon = cyclicPolygon(sidesOnCircle(parts).map((side) => side * unit));
      if (!polygon.ok) throw new Error(describePolygonFault(polygon.why));
      expect(polygon.circumradius / unit).toBeCloseTo(1, 11);
      expect(polygon.circumradius / unit).not.toBeCloseTo(1 + 5e-11, 11);
      expect(polygon.halfAngles.reduce((sum, a) => sum + a, 0)).toBeCloseTo(Math.PI, 11);
    }),
    { seed: 1, numRuns: 500 },
  );
});

test('law, seed 2: a triangle through the closed form agrees with its sides split in a polygon', () => {
  const side = fc.double({ min: 0.6, max: 1, noNaN: true });
  fc.assert(
    fc.property(side, side, side, (a, b, c) => {
      const rho = circumradius([a, b, c]) as number;
      const half = 2 * rho * Math.sin(Math.asin(Math.min(a, b, c) / (2 * rho)) / 2);
      const rest = [a, b, c].sort((x, y) => x - y).slice(1);
      expect(circumradius([half, half, ...rest])).toBeCloseTo(rho, 11);
    }),
    { seed: 2, numRuns: 300 },
  );
});

test('a sliver keeps its circle: two sides and a longest one a millionth shorter than both', () => {
  const rho = circumradius([1, 1, 2 - 2e-6]) as number;
  expect(rho * 2 * Math.sqrt(1 - (1 - 1e-6) ** 2)).toBeCloseTo(1, 9);
  const four = circumradius([0.5, 0.5, 0.5, 1.5 - 1e-9]) as number;
  const psi = Math.asin(0.25 / four);
  expect(2 * four * Math.sin(3 * psi)).toBeCloseTo(1.5 - 1e-9, 14);
});

test('fewer than three sides make no polygon', () => {
  expect(why(1, 1)).toEqual({ reason: 'too few sides', found: 2 });
});

test('a side that is no positive finite length is named', () => {
  expect(why(1, -1, 1)).toEqual({ reason: 'no length', side: 1, found: -1 });
  expect(why(1, 1, Number.NaN)).toEqual({ reason: 'no length', side: 2, found: Number.NaN });
  expect(why(Infinity, 1, 1)).toMatchObject({ reason: 'no length', side: 0 });
});

test('a side as long as all others together or longer is named with the excess', () => {
  expect(why(1, 3.5, 1, 1)).toEqual({ reason: 'side too long', side: 1, by: 0.5 });
  expect(why(1, 1, 2)).toEqual({ reason: 'side too long', side: 2, by: 0 });
  expect(circumradius([1, 1, 2])).toBeNull();
});

test('a fault reads as a sentence that names side, value and what was allowed', () => {
  expect(describePolygonFault({ reason: 'too few sides', found: 2 })).toBe(
    '2 sides, expected at least 3',
  );
  expect(describePolygonFault({ reason: 'no length', side: 1, found: -1 })).toBe(
    'side 2 is -1, expected a positive length',
  );
  expect(describePolygonFault({ reason: 'side too long', side: 0, by: 0.5 })).toBe(
    'side 1 is 0.500 m longer than all others together',
  );
  expect(describePolygonFault({ reason: 'no radius', found: 0 })).toBe(
    'the sphere’s radius is 0, expected a positive length',
  );
  expect(describePolygonFault({ reason: 'larger than the sphere', side: 2, by: 0.1 })).toBe(
    'its circle is 0.100 m wider in radius than the sphere (longest is side 3)',
  );
});
