// Best fits by least squares: the plane and the sphere through points, and the plan laid on the base
// as it stands (moved, turned and tilted as a whole, which strains no seam). Metres.

import { assertNumber } from '../../math/doors.ts';
import { distance, type Vec3 } from '../../math/vector.ts';
import { adjust } from '../adjustment.ts';

/** The plane z = height + slope · (x, y), best in z. */
export interface FittedPlane {
  readonly height: number;
  readonly slope: readonly [number, number];
  /** Point → height above the plane, metres. */
  readonly off: readonly number[];
}

/** The plane that fits points best in height; null for fewer than three, or for points on a line. */
export function fitPlane(points: readonly Vec3[]): FittedPlane | null {
  const fit = adjust(
    points.map(([x, y, z]) => ({
      terms: [
        [0, 1],
        [1, x],
        [2, y],
      ],
      value: z,
      sd: 1,
    })),
    3,
  );
  if (fit === null) return null;
  const [height, a, b] = Array.from(fit.values) as [number, number, number];
  return { height, slope: [a, b], off: Array.from(fit.residuals) };
}

/** The sphere nearest to points. */
export interface FittedSphere {
  readonly centre: Vec3;
  readonly radius: number;
  /** Root mean square of the points' distances from it, metres. */
  readonly rms: number;
  /** Point → distance outside the sphere, metres. */
  readonly off: readonly number[];
}

/** Rounds of the sphere's iteration. */
const ROUNDS = 30;

/** The sphere that fits points best in distance, about a first centre. With `radius` told it is kept:
 * a flat ring fits many spheres, and only with its radius known does it have a centre above it and
 * one below, of which the nearer to `start`. Null where the points leave the sphere open: under four
 * (three with the radius known), or on one plane with the radius free. RangeError for a radius that
 * is none. */
export function fitSphere(
  points: readonly Vec3[],
  start: Vec3,
  radius?: number,
): FittedSphere | null {
  if (radius !== undefined) assertNumber('radius', radius, 1e-6);
  if (points.length < (radius === undefined ? 4 : 3)) return null;
  let centre = start;
  let r = radius ?? points.reduce((sum, p) => sum + distance(p, start), 0) / points.length;
  for (let round = 0; round < ROUNDS; round++) {
    const fit = adjust(
      points.map((p) => {
        const d = distance(p, centre);
        const terms = p.map((c, i) => [i, -(c - (centre[i] as number)) / d] as [number, number]);
        return { terms: radius === undefined ? [...terms, [3, -1]] : terms, value: r - d, sd: 1 };
      }),
      radius === undefined ? 4 : 3,
    );
    if (fit === null) return null;
    const step = Array.from(fit.values) as [number, number, number, number?];
    // A ring at the sphere's middle hardly tells the centre's height: go no further than it helps.
    let share = 1;
    let next = moved(centre, r, step, share);
    while (share > 1e-9 && costOf(points, next.centre, next.r) > costOf(points, centre, r)) {
      share /= 2;
      next = moved(centre, r, step, share);
    }
    if (share <= 1e-9) break;
    centre = next.centre;
    r = next.r;
    if (share * Math.hypot(...step.map((s) => s ?? 0)) < 1e-12 * r) break;
  }
  const off = points.map((p) => distance(p, centre) - r);
  const rms = Math.sqrt(off.reduce((sum, d) => sum + d * d, 0) / off.length);
  return Number.isFinite(rms) ? { centre, radius: r, rms, off } : null;
}

const costOf = (points: readonly Vec3[], centre: Vec3, r: number): number =>
  points.reduce((sum, p) => sum + (distance(p, centre) - r) ** 2, 0);

const moved = (
  [x, y, z]: Vec3,
  r: number,
  [dx, dy, dz, dr]: readonly [number, number, number, number?],
  share: number,
): { readonly centre: Vec3; readonly r: number } => ({
  centre: [x + share * dx, y + share * dy, z + share * dz],
  r: r + share * (dr ?? 0),
});

/** The plan laid on what stands. */
export interface Laid {
  /** Where the plan's centre came to lie (metres), and how far it was turned about it, anticlockwise
   * seen from above (radians). */
  readonly moved: readonly [number, number];
  readonly turned: number;
  /** Point → where its plan came to lie. */
  readonly points: readonly (readonly [number, number])[];
}

/** The plan points moved and turned so that they lie nearest to the standing ones, both in the same
 * order (Procrustes without scale, closed form). Points all at one place are not turned. */
export function layPlan(
  plan: readonly (readonly [number, number])[],
  standing: readonly (readonly [number, number])[],
): Laid {
  const mean = (list: readonly (readonly [number, number])[], i: 0 | 1): number =>
    list.reduce((sum, p) => sum + p[i], 0) / list.length;
  const [px, py, sx, sy] = [mean(plan, 0), mean(plan, 1), mean(standing, 0), mean(standing, 1)];
  let [same, across] = [0, 0];
  plan.forEach(([x, y], k) => {
    const [u, v] = standing[k] as readonly [number, number];
    same += (x - px) * (u - sx) + (y - py) * (v - sy);
    across += (x - px) * (v - sy) - (y - py) * (u - sx);
  });
  const turned = Math.atan2(across, same);
  const [c, s] = [Math.cos(turned), Math.sin(turned)];
  return {
    moved: [sx - c * px + s * py, sy - s * px - c * py],
    turned,
    points: plan.map(([x, y]) => [
      sx + c * (x - px) - s * (y - py),
      sy + s * (x - px) + c * (y - py),
    ]),
  };
}
