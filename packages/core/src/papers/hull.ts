// The convex hull of points on paper.

import type { Point } from './drawing.ts';

/** Corners of the hull, without those that lie on its sides; the points themselves where there are
 * fewer than three. Method: Andrew's monotone chain (1979). */
export function hullOf(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  if (sorted.length < 3) return sorted;
  return [...chain(sorted), ...chain([...sorted].reverse())];
}

/** One half of the hull, without its last point. */
function chain(sorted: readonly Point[]): Point[] {
  const half: Point[] = [];
  for (const p of sorted) {
    while (half.length > 1 && !turnsLeft(half.at(-2) as Point, half.at(-1) as Point, p)) half.pop();
    half.push(p);
  }
  return half.slice(0, -1);
}

const turnsLeft = (a: Point, b: Point, c: Point): boolean =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0;
