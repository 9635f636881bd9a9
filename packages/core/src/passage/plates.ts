// What a hull of points holds: the ball about its middle, and flat sections across it. By brute force
// over its points: bodies here have a few dozen.

import {
  add,
  cross,
  dot,
  norm,
  normalize,
  pointAt,
  scale,
  subtract,
  type Vec3,
} from '../math/vector.ts';

/** A flat piece of a body, in the body's axes. */
export interface Plate {
  readonly middle: Vec3;
  /** Unit normal and two unit lines in it, right-angled. */
  readonly normal: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  /** Corners anticlockwise, along u and v from the middle, m. */
  readonly corners: readonly (readonly [number, number])[];
}

/** Mean of the points of a hull. */
export function middleOf(points: Float64Array): Vec3 {
  const count = points.length / 3;
  const sum: [number, number, number] = [0, 0, 0];
  points.forEach((x, i) => {
    sum[i % 3] += x;
  });
  return scale(sum, 1 / count);
}

/** Radius of the largest ball about a point that a hull holds, m; 0 where the point is not inside or all
 * points lie in a plane. */
export function ballWithin(points: Float64Array, centre: Vec3): number {
  const all = Array.from({ length: points.length / 3 }, (_, i) => pointAt(points, i));
  const size = Math.max(...all.map((p) => norm(subtract(p, centre))));
  let least = Infinity;
  for (let i = 0; i < all.length; i++)
    for (let j = i + 1; j < all.length; j++)
      for (let k = j + 1; k < all.length; k++) {
        const normal = cross(subtract(all[j], all[i]), subtract(all[k], all[i]));
        const length = norm(normal);
        if (length <= FLAT * size * size) continue;
        const n = scale(normal, 1 / length);
        const [low, high] = spanAlong(all, n, all[i]);
        const off = dot(n, subtract(centre, all[i]));
        if (high <= FLAT * size) least = Math.min(least, -off);
        else if (low >= -FLAT * size) least = Math.min(least, off);
      }
  return Number.isFinite(least) ? Math.max(0, least) : 0;
}

/** Part of a body's size below which points count as in a plane. */
const FLAT = 1e-9;

function spanAlong(all: readonly Vec3[], n: Vec3, from: Vec3): readonly [number, number] {
  let [low, high] = [0, 0];
  for (const p of all) {
    const along = dot(n, subtract(p, from));
    low = Math.min(low, along);
    high = Math.max(high, along);
  }
  return [low, high];
}

/** The plate in the plane through a point with a normal of any length, its corners given in space. */
export function plateOn(middle: Vec3, along: Vec3, at: readonly Vec3[]): Plate {
  const normal = normalize(along);
  const u = normalize(subtract(at[0] as Vec3, middle));
  const v = cross(normal, u);
  const spots = at.map((p): Spot => {
    const off = subtract(p, middle);
    return [dot(u, off), dot(v, off)];
  });
  return { middle, normal, u, v, corners: hullOfSpots(spots) };
}

/** Whether a line between two points goes through a plate. */
export function isPierced({ middle, normal, u, v, corners }: Plate, a: Vec3, b: Vec3): boolean {
  const [p, q] = [subtract(a, middle), subtract(b, middle)];
  const [high, low] = [dot(normal, p), dot(normal, q)];
  if (high * low >= 0) return false;
  const spot = add(p, scale(subtract(q, p), high / (high - low)));
  return isWithin([dot(u, spot), dot(v, spot)], corners, 0);
}

/** Whether a spot is inside a convex outline by more than a margin. */
export function isWithin(
  [x, y]: readonly [number, number],
  corners: Plate['corners'],
  margin: number,
): boolean {
  for (let i = 0; i < corners.length; i++) {
    const [ax, ay] = corners[i] as Spot;
    const [bx, by] = corners[i + 1 === corners.length ? 0 : i + 1] as Spot;
    const [dx, dy] = [bx - ax, by - ay];
    if (dx * (y - ay) - dy * (x - ax) <= margin * Math.sqrt(dx * dx + dy * dy)) return false;
  }
  return true;
}

/** Sections of a hull across each of its axes: through its middle and on either side of it. */
export function platesOf(points: Float64Array): Plate[] {
  const all = Array.from({ length: points.length / 3 }, (_, i) => pointAt(points, i));
  const centre = middleOf(points);
  const axes: readonly Vec3[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  return axes.flatMap((normal, a) => {
    const [low, high] = spanAlong(all, normal, centre);
    return [0, 0.9 * low, 0.9 * high].flatMap((off) => {
      const [u, v] = [axes[(a + 1) % 3], axes[(a + 2) % 3]];
      const middle = subtract(centre, scale(normal, -off));
      const corners = sectionOf(all, middle, normal, u, v);
      return corners.length < 3 ? [] : [{ middle, normal, u, v, corners }];
    });
  });
}

type Spot = readonly [number, number];

function sectionOf(all: readonly Vec3[], middle: Vec3, normal: Vec3, u: Vec3, v: Vec3): Spot[] {
  const height = all.map((p) => dot(normal, subtract(p, middle)));
  const spots: Spot[] = [];
  all.forEach((p, i) => {
    all.slice(0, i).forEach((q, j) => {
      if (height[i] * height[j] >= 0) return;
      const t = height[i] / (height[i] - height[j]);
      const at = subtract(subtract(p, scale(subtract(p, q), t)), middle);
      spots.push([dot(u, at), dot(v, at)]);
    });
  });
  return hullOfSpots(spots);
}

/** Andrew's monotone chain, anticlockwise. */
function hullOfSpots(spots: readonly Spot[]): Spot[] {
  const sorted = [...spots].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const chain = (list: readonly Spot[]): Spot[] => {
    const half: Spot[] = [];
    for (const p of list) {
      while (half.length > 1) {
        const [a, b] = [half[half.length - 2], half[half.length - 1]];
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 1e-12) break;
        half.pop();
      }
      half.push(p);
    }
    return half.slice(0, -1);
  };
  return [...chain(sorted), ...chain([...sorted].reverse())];
}
