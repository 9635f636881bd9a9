// Faces of a solid that have a round hole or bear a round peg: triangles between a convex outline and a
// convex ring inside it, and the ring itself. Any unit.
//
// Walked round by the directions of their edges, outline and ring meet each edge of one with the foremost
// corner of the other in that direction, so no triangle reaches into the ring.

import { TAU } from '../math/angle.ts';

/** A point in the plane of a face. */
export type FacePoint = readonly [number, number];

/** Corners of the many-sided prisms that stand for round pegs and sockets. */
const ROUND = 24;

/** A regular polygon of `ROUND` corners, anticlockwise from +x. */
export const roundRing = ([x, y]: FacePoint, radius: number): FacePoint[] =>
  Array.from({ length: ROUND }, (_, j) => {
    const angle = (TAU * j) / ROUND;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });

/** Triangles between a convex outline and a convex ring within it, both anticlockwise, as indices: the
 * outline's corners first, then the ring's. Anticlockwise; as many as both have corners. */
export function betweenRings(
  outline: readonly FacePoint[],
  ring: readonly FacePoint[],
): readonly (readonly [number, number, number])[] {
  const [n, m] = [outline.length, ring.length];
  const first = direction(outline, 0);
  const past = (points: readonly FacePoint[], i: number): number => {
    const by = (direction(points, i % points.length) - first) % TAU;
    return by < 0 ? by + TAU : by;
  };
  const start = ring.reduce((best, _, j) => (past(ring, j) < past(ring, best) ? j : best), 0);
  const found: (readonly [number, number, number])[] = [];
  for (let i = 0, j = 0; i < n || j < m; ) {
    const [at, on] = [i % n, n + ((start + j) % m)];
    if (j === m || (i < n && past(outline, i) <= past(ring, start + j))) {
      found.push([at, (i + 1) % n, on]);
      i++;
    } else {
      found.push([n + ((start + j + 1) % m), on, at]);
      j++;
    }
  }
  return found;
}

const direction = (points: readonly FacePoint[], i: number): number => {
  const [p, q] = [points[i], points[(i + 1) % points.length]] as [FacePoint, FacePoint];
  return Math.atan2(q[1] - p[1], q[0] - p[0]);
};

/** Whether a circle lies within a convex outline, anticlockwise. */
export const holdsCircle = (
  outline: readonly FacePoint[],
  [x, y]: FacePoint,
  radius: number,
): boolean =>
  outline.every((p, i) => {
    const q = outline[(i + 1) % outline.length] as FacePoint;
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    return (q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0]) >= radius * length;
  });
