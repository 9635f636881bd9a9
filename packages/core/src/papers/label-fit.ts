// The largest label that a place can hold: a convex shape scaled up about a point until it touches
// the place's outline, and the point where that is largest. Millimetres on paper.

import type { Point } from './drawing.ts';

/** A convex label of size 1, as half planes n·x ≤ 1: unit outward normals over their distance. */
export type LabelShape = readonly Point[];

/** A segment that the label must keep clear of. */
export type Segment = readonly [Point, Point];

/** Where a label fits best, and its size there; 0 where the start lies on an obstacle. */
export interface LabelFit {
  readonly at: Point;
  readonly size: number;
}

/** The shape of a convex polygon that holds the origin, corners in either turning order. */
export function labelShape(corners: readonly Point[]): LabelShape {
  return corners.map((a, i) => {
    const b = corners[(i + 1) % corners.length] as Point;
    const [nx, ny] = [b[1] - a[1], a[0] - b[0]];
    const reach = nx * a[0] + ny * a[1];
    return [nx / reach, ny / reach];
  });
}

/** The size at which a label about `at` touches the nearest obstacle. Exact: along a segment the
 * gauge of a convex shape is the upper envelope of linear functions. */
export function sizeAt(shape: LabelShape, at: Point, obstacles: readonly Segment[]): number {
  let least = Infinity;
  for (const obstacle of obstacles) least = touch(shape, at, obstacle, least);
  return least;
}

/** The best point within four times `reach` of `start`, by steps that begin at `reach` and halve,
 * and never across an obstacle: the start must lie inside. Ties keep the earlier direction. */
export function fitLabel(
  shape: LabelShape,
  start: Point,
  obstacles: readonly Segment[],
  reach: number,
): LabelFit {
  let best: LabelFit = { at: start, size: sizeAt(shape, start, obstacles) };
  for (let step = reach; step > reach / 64; ) {
    let next = best;
    for (const [dx, dy] of directions) {
      const at: Point = [best.at[0] + dx * step, best.at[1] + dy * step];
      if (Math.hypot(at[0] - start[0], at[1] - start[1]) > 4 * reach) continue;
      const size = sizeAt(shape, at, obstacles);
      if (size <= next.size + 1e-9) continue;
      if (!obstacles.some((obstacle) => crosses(best.at, at, obstacle))) next = { at, size };
    }
    if (next === best) step /= 2;
    else best = next;
  }
  return best;
}

const directions: readonly Point[] = Array.from({ length: 16 }, (_, i) => [
  Math.cos((i * Math.PI) / 8),
  Math.sin((i * Math.PI) / 8),
]);

/** The least of `known` and the gauge of the segment's points. */
function touch(shape: LabelShape, at: Point, [p, q]: Segment, known: number): number {
  const starts: number[] = [];
  const slopes: number[] = [];
  let [below, first, last] = [0, 0, 0];
  for (const [nx, ny] of shape) {
    const start = nx * (p[0] - at[0]) + ny * (p[1] - at[1]);
    const end = nx * (q[0] - at[0]) + ny * (q[1] - at[1]);
    starts.push(start);
    slopes.push(end - start);
    below = Math.max(below, Math.min(start, end));
    first = Math.max(first, start);
    last = Math.max(last, end);
  }
  // No point of the segment has a gauge under `below`: most segments end here.
  if (below >= known) return known;
  let least = Math.min(known, first, last);
  for (let i = 0; i < starts.length && least > below; i++)
    for (let j = 0; j < i; j++) {
      const rise = (slopes[i] as number) - (slopes[j] as number);
      const t = ((starts[j] as number) - (starts[i] as number)) / rise;
      if (!(t > 0 && t < 1)) continue;
      let gauge = 0;
      for (let k = 0; k < starts.length; k++)
        gauge = Math.max(gauge, (starts[k] as number) + t * (slopes[k] as number));
      least = Math.min(least, gauge);
    }
  return least;
}

function crosses(a: Point, b: Point, [p, q]: Segment): boolean {
  const side = (o: Point, u: Point, v: Point): number =>
    (u[0] - o[0]) * (v[1] - o[1]) - (u[1] - o[1]) * (v[0] - o[0]);
  return side(a, b, p) * side(a, b, q) <= 0 && side(p, q, a) * side(p, q, b) <= 0;
}
