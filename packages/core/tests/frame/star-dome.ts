// The star dome of 24 bars in inches and pounds; R. Levy and W. R. Spillers 2003, sect. 2.4.2, as in
// the project's reference notes.

import type { Structure } from '../../src/frame/structure.ts';
import { truss } from './trusses.ts';

const POINTS = [
  [0, 0, 3.2346],
  [4.92125, 8.5239, 2.4472],
  [-4.92125, 8.5239, 2.4472],
  [-9.8425, 0, 2.4472],
  [-4.92125, -8.5239, 2.4472],
  [4.92125, -8.5239, 2.4472],
  [9.8425, 0, 2.4472],
  [0, 19.685, 0],
  [-17.0472, 9.8425, 0],
  [-17.0472, -9.8425, 0],
  [0, -19.685, 0],
  [17.0472, -9.8425, 0],
  [17.0472, 9.8425, 0],
];

/** Numbered from 1, as printed. */
const BARS = [
  [1, 2],
  [1, 3],
  [1, 4],
  [1, 5],
  [1, 6],
  [1, 7],
  [6, 12],
  [7, 12],
  [7, 13],
  [2, 13],
  [2, 8],
  [3, 8],
  [3, 9],
  [4, 9],
  [4, 10],
  [5, 10],
  [5, 11],
  [6, 11],
  [2, 3],
  [3, 4],
  [4, 5],
  [5, 6],
  [6, 7],
  [7, 2],
] as const;

/** Modulus in pounds per square inch, area in square inches. */
export const STAR = { young: 3e7, area: 0.0155 } as const;

/** The dome with its six outer nodes pinned; node 0 is the crown. */
export const starDome = (): Structure =>
  truss(
    POINTS,
    BARS.map(([a, b]) => [a - 1, b - 1] as const),
    STAR.area,
    STAR.young,
    [7, 8, 9, 10, 11, 12],
  );
