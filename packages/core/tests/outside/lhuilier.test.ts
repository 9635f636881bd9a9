// L'Huilier's theorem (textbook): tan(E/4) = √(tan(s/2) tan((s−a)/2) tan((s−b)/2) tan((s−c)/2)) for
// the spherical triangle with sides a, b, c, s half their sum. The two values of the shell in three
// steps were computed apart from this project.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chordToArc } from '../../src/sphere/chord.ts';
import { polygonOnSphere } from '../../src/sphere/polygon.ts';
import { misfits } from './data/pairs.ts';

const chords = [0.3486154888, 0.4035482123, 0.4124114893] as const;
const STERADIANS = 1e-10;

const ours = (sides: readonly number[], radius: number): number => {
  const polygon = polygonOnSphere(sides, radius);
  return polygon.ok ? polygon.solidAngle : Number.NaN;
};

function excess(sides: readonly number[], radius: number): number {
  const arcs = sides.map((side) => chordToArc(side, radius));
  const s = arcs.reduce((sum, arc) => sum + arc, 0) / 2;
  const product = arcs.reduce((p, arc) => p * Math.tan((s - arc) / 2), Math.tan(s / 2));
  return 4 * Math.atan(Math.sqrt(product));
}

test('the two panels of the shell in three steps; ten times the tolerance is refused', () => {
  const [a, b, c] = chords;
  const pairs = [
    { what: '001', actual: ours([a, a, b], 1), expected: 0.05901445267954 },
    { what: '122', actual: ours([b, c, c], 1), expected: 0.07521252877989 },
  ];
  expect(misfits(pairs, STERADIANS)).toEqual([]);
  expect(misfits(pairs, STERADIANS, 10 * STERADIANS)).toHaveLength(2);
});

test('60 and 120 of them close the sphere', () => {
  const [a, b, c] = chords;
  expect(60 * ours([a, a, b], 1) + 120 * ours([b, c, c], 1)).toBeCloseTo(4 * Math.PI, 8);
});

test('law, seed 9: any triangle on a sphere has the solid angle of the theorem', () => {
  const side = fc.double({ min: 0.55, max: 1, noNaN: true });
  const radius = fc.double({ min: 0.7, max: 20, noNaN: true });
  fc.assert(
    fc.property(side, side, side, radius, (a, b, c, r) => {
      expect(ours([a, b, c], r) / excess([a, b, c], r)).toBeCloseTo(1, 9);
    }),
    { seed: 9, numRuns: 500 },
  );
});
