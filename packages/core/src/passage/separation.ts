// How far two convex bodies are apart, each the hull of its points: from below by a plane that parts
// them, from above by two of their points. Gilbert, Johnson, Keerthi, IEEE J. Robotics and Automation 4
// (1988) 193; nearest points of a simplex as in C. Ericson, Real-Time Collision Detection, 2005, ch. 5
// (from memory). Stride 3, metres.

/** Bounds of a distance, m: both 0 where the bodies overlap or nothing parts them. */
export interface Separation {
  readonly low: number;
  readonly high: number;
}

type V = readonly [number, number, number];

const MOST_STEPS = 80;
/** Bounds nearer than this part of the distance count as met. */
const MET = 1e-9;
/** Nearer than this to a shared point counts as overlap, m. */
const TOUCHING = 1e-10;

/** Distance of two hulls. Gives up early where it is known to be at least `enough`. */
export function separation(a: Float64Array, b: Float64Array, enough = Infinity): Separation {
  let v: V = [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
  let simplex: V[] = [v];
  let low = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const size = Math.hypot(v[0], v[1], v[2]);
    if (size < TOUCHING) return { low: 0, high: 0 };
    const p = furthest(a, -v[0], -v[1], -v[2]);
    const q = furthest(b, v[0], v[1], v[2]);
    const w: V = [a[p] - b[q], a[p + 1] - b[q + 1], a[p + 2] - b[q + 2]];
    const parted = (v[0] * w[0] + v[1] * w[1] + v[2] * w[2]) / size;
    if (parted > low) low = parted;
    if (low >= enough || size - low <= MET * size) return { low, high: size };
    if (simplex.some((one) => one[0] === w[0] && one[1] === w[1] && one[2] === w[2]))
      return { low, high: size };
    const near = nearestOf([...simplex, w]);
    if (near === null) return { low: 0, high: 0 };
    simplex = near.kept;
    if (Math.hypot(near.at[0], near.at[1], near.at[2]) >= size) return { low, high: size };
    v = near.at;
  }
  return { low, high: Math.hypot(v[0], v[1], v[2]) };
}

/** Offset of the point furthest along a direction. */
function furthest(points: Float64Array, x: number, y: number, z: number): number {
  let best = 0;
  let most = -Infinity;
  for (let i = 0; i < points.length; i += 3) {
    const along = points[i] * x + points[i + 1] * y + points[i + 2] * z;
    if (along > most) {
      most = along;
      best = i;
    }
  }
  return best;
}

interface Nearest {
  readonly at: V;
  readonly kept: V[];
}

/** The point of a simplex nearest to the origin and the corners that it lies among; null inside it. */
function nearestOf(corners: V[]): Nearest | null {
  const [a, b, c, d] = corners;
  if (d !== undefined) return nearestOfFour(a, b, c, d);
  if (c !== undefined) return nearestOfThree(a, b, c);
  return b === undefined ? { at: a, kept: [a] } : nearestOfTwo(a, b);
}

const minus = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const along = (a: V, b: V, t: number): V => [
  a[0] + t * (b[0] - a[0]),
  a[1] + t * (b[1] - a[1]),
  a[2] + t * (b[2] - a[2]),
];

function nearestOfTwo(a: V, b: V): Nearest {
  const ab = minus(b, a);
  const t = -dot(a, ab);
  const whole = dot(ab, ab);
  if (t <= 0 || !(whole > 0)) return { at: a, kept: [a] };
  if (t >= whole) return { at: b, kept: [b] };
  return { at: along(a, b, t / whole), kept: [a, b] };
}

function nearestOfThree(a: V, b: V, c: V): Nearest {
  const [ab, ac] = [minus(b, a), minus(c, a)];
  const [d1, d2] = [-dot(ab, a), -dot(ac, a)];
  if (d1 <= 0 && d2 <= 0) return { at: a, kept: [a] };
  const [d3, d4] = [-dot(ab, b), -dot(ac, b)];
  if (d3 >= 0 && d4 <= d3) return { at: b, kept: [b] };
  const [d5, d6] = [-dot(ab, c), -dot(ac, c)];
  if (d6 >= 0 && d5 <= d6) return { at: c, kept: [c] };
  const vc = d1 * d4 - d3 * d2;
  if (vc <= 0 && d1 >= 0 && d3 <= 0) return { at: along(a, b, d1 / (d1 - d3)), kept: [a, b] };
  const vb = d5 * d2 - d1 * d6;
  if (vb <= 0 && d2 >= 0 && d6 <= 0) return { at: along(a, c, d2 / (d2 - d6)), kept: [a, c] };
  const va = d3 * d6 - d5 * d4;
  if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0)
    return { at: along(b, c, (d4 - d3) / (d4 - d3 + d5 - d6)), kept: [b, c] };
  const whole = va + vb + vc;
  const [v, w] = [vb / whole, vc / whole];
  return {
    at: [0, 1, 2].map((i) => a[i] + ab[i] * v + ac[i] * w) as unknown as V,
    kept: [a, b, c],
  };
}

function nearestOfFour(a: V, b: V, c: V, d: V): Nearest | null {
  let best: Nearest | null = null;
  let inside = true;
  const faces: readonly (readonly [V, V, V, V])[] = [
    [a, b, c, d],
    [a, c, d, b],
    [a, d, b, c],
    [b, d, c, a],
  ];
  for (const [p, q, r, other] of faces) {
    const [pq, pr] = [minus(q, p), minus(r, p)];
    const n: V = [
      pq[1] * pr[2] - pq[2] * pr[1],
      pq[2] * pr[0] - pq[0] * pr[2],
      pq[0] * pr[1] - pq[1] * pr[0],
    ];
    const own = dot(n, minus(other, p));
    // A flat simplex has no inside: its nearest face counts.
    if (own !== 0 && -dot(n, p) * own > 0) continue;
    inside = false;
    const near = nearestOfThree(p, q, r);
    if (best === null || dot(near.at, near.at) < dot(best.at, best.at)) best = near;
  }
  return inside ? null : best;
}
