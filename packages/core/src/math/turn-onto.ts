// The rotation that brings points nearest to others, both about the origin: the rotation part of the
// sum of their outer products, by Newton's way to the polar factor (N. J. Higham, Functions of
// Matrices, SIAM 2008, section 8.3).

import { cross, dot, scale, type Vec3 } from './vector.ts';

/** A rotation as its rows. */
type Rows = readonly [Vec3, Vec3, Vec3];

/** The rotation, as a function, that brings the points `from` nearest to those of `onto` in the sense of
 * least squares, each to the one of its index; null where they do not say which (fewer than three that
 * are in no plane with the origin) or only a mirror would do. Same unit for both. */
export function turnOnto(
  from: readonly Vec3[],
  onto: readonly Vec3[],
): ((point: Vec3) => Vec3) | null {
  const sums = [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) =>
      from.reduce((sum, p, m) => sum + ((onto[m] as Vec3)[i] as number) * (p[j] as number), 0),
    ),
  );
  let rows = sums as unknown as Rows;
  const size = Math.max(...sums.flat().map(Math.abs));
  if (!(size > 0) || !(determinant(rows) > FLAT * size ** 3)) return null;
  rows = rows.map((row) => scale(row, 1 / size)) as unknown as Rows;
  for (let step = 0; step < STEPS; step++) {
    const other = inverseTransposed(rows);
    rows = rows.map((row, i) =>
      row.map((x, j) => (x + (other[i]?.[j] as number)) / 2),
    ) as unknown as Rows;
  }
  const [x, y, z] = rows;
  return (point) => [dot(x, point), dot(y, point), dot(z, point)];
}

/** Determinant, against the cube of the largest entry, below which the points lie in a plane. */
const FLAT = 1e-9;
/** It settles in half as many where points are spread as those of a cap are. */
const STEPS = 40;

const determinant = ([a, b, c]: Rows): number => dot(a, cross(b, c));

function inverseTransposed(rows: Rows): Rows {
  const [a, b, c] = rows;
  const by = 1 / determinant(rows);
  return [scale(cross(b, c), by), scale(cross(c, a), by), scale(cross(a, b), by)];
}
