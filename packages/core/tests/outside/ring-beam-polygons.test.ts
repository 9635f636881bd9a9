// Regular polygons: the saw is turned 180°/n from square for a frame of n equal pieces, and a piece
// of a ring w wide about hubs on radius r is 2 (r cos(π/n) ± w/2) tan(π/n) long on its faces. The
// mitres printed on every workshop chart: 4 sides 45°, 6 sides 30°, 8 sides 22.5°, 12 sides 15°,
// 5 sides 36°, 10 sides 18° (geometry; the charts from memory).

import { expect, test } from 'vitest';
import { ringBeam } from '../../src/ground/ring-beam.ts';
import { ring } from '../ground/bases.ts';
import { misfits } from './data/pairs.ts';

const chart = [
  [4, 45],
  [5, 36],
  [6, 30],
  [8, 22.5],
  [10, 18],
  [12, 15],
] as const;

test('mitres agree with the chart to 1e-9°; ten times that is refused', () => {
  const pairs = chart.flatMap(([n, degrees]) =>
    ringBeam(ring(n, 3), { width: 0.1 }).map((piece) => ({
      what: `${n} sides, piece ${piece.from}`,
      actual: (piece.mitreFrom * 180) / Math.PI,
      expected: degrees,
    })),
  );
  expect(misfits(pairs, 1e-9)).toEqual([]);
  expect(misfits(pairs, 1e-9, 1e-8)).toHaveLength(pairs.length);
});

test('face lengths agree with the closed form to 1e-12 m; ten times that is refused', () => {
  const [r, w] = [3.2, 0.14];
  const pairs = chart.flatMap(([n]) => {
    const length = (off: number): number =>
      2 * (r * Math.cos(Math.PI / n) + off) * Math.tan(Math.PI / n);
    const [piece] = ringBeam(ring(n, r), { width: w });
    return [
      { what: `${n} outer`, actual: piece?.outer ?? Number.NaN, expected: length(w / 2) },
      { what: `${n} inner`, actual: piece?.inner ?? Number.NaN, expected: length(-w / 2) },
    ];
  });
  expect(misfits(pairs, 1e-12)).toEqual([]);
  expect(misfits(pairs, 1e-12, 1e-11)).toHaveLength(pairs.length);
});
