// Points inside an outline on paper: a closed run of points that does not cross itself, the first
// not repeated. Any one unit.

/** A point on paper. */
export type Point = readonly [number, number];

/** Whether a point lies inside an outline; either answer on the line itself. */
export function isInside(outline: readonly Point[], [u, v]: Point): boolean {
  let inside = false;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] as Point;
    if (a[1] > v !== b[1] > v && u < a[0] + ((v - a[1]) / (b[1] - a[1])) * (b[0] - a[0]))
      inside = !inside;
  });
  return inside;
}

const STEPS = 24;

/** The point that is wished for where it lies inside the outline, else that of a grid of 24 by 24
 * over it which lies deepest inside; the wish again where none does, as in a sliver. */
export function pointInside(outline: readonly Point[], wish: Point): Point {
  if (isInside(outline, wish)) return wish;
  const [us, vs] = [0, 1].map((axis) => outline.map((p) => p[axis] as number)) as [
    number[],
    number[],
  ];
  const along = (values: readonly number[], step: number): number => {
    const least = Math.min(...values);
    return least + ((step + 0.5) / STEPS) * (Math.max(...values) - least);
  };
  let best = { at: wish, depth: 0 };
  for (let i = 0; i < STEPS; i++)
    for (let j = 0; j < STEPS; j++) {
      const at: Point = [along(us, i), along(vs, j)];
      const depth = isInside(outline, at) ? depthOf(outline, at) : 0;
      if (depth > best.depth) best = { at, depth };
    }
  return best.at;
}

/** Distance from a point to the nearest line of the outline. */
function depthOf(outline: readonly Point[], p: Point): number {
  return outline.reduce((least, a, i) => {
    const b = outline[(i + 1) % outline.length] as Point;
    return Math.min(least, distanceToSegment(p, a, b));
  }, Number.POSITIVE_INFINITY);
}

/** Distance from a point to the segment between two others; to the one where they coincide. */
export function distanceToSegment(p: Point, a: Point, b: Point): number {
  const [du, dv] = [b[0] - a[0], b[1] - a[1]];
  const square = du * du + dv * dv;
  const along = square === 0 ? 0 : ((p[0] - a[0]) * du + (p[1] - a[1]) * dv) / square;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(a[0] + t * du - p[0], a[1] + t * dv - p[1]);
}
