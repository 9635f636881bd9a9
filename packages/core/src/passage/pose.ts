// Where a rigid body is: a turn and a move. A point p of the body is at turn(p) + at. Turns are unit
// quaternions [w, x, y, z]; a half turn either way is the same turn.

import type { Random } from '../math/random.ts';
import { add, cross, norm, scale, subtract, type Vec3 } from '../math/vector.ts';

/** A turn as a unit quaternion. */
export type Turn = readonly [w: number, x: number, y: number, z: number];

/** Where a body is; `at` in metres. */
export interface Pose {
  readonly turn: Turn;
  readonly at: Vec3;
}

/** No turn. */
export const UPRIGHT: Turn = [1, 0, 0, 0];

/** A point turned. */
export function turned([w, x, y, z]: Turn, p: Vec3): Vec3 {
  const axis: Vec3 = [x, y, z];
  const t = scale(cross(axis, p), 2);
  return add(add(p, scale(t, w)), cross(axis, t));
}

/** The turn the other way round. */
export const turnedBack = ([w, x, y, z]: Turn): Turn => [w, -x, -y, -z];

/** A quaternion of length 1; no turn where it has none. */
export function unitTurn([w, x, y, z]: Turn): Turn {
  const size = Math.hypot(w, x, y, z);
  return size > 0 ? [w / size, x / size, y / size, z / size] : UPRIGHT;
}

/** The turn that brings the body's axes onto three right-angled unit vectors, right-handed (Shepperd). */
export function turnOf(x: Vec3, y: Vec3, z: Vec3): Turn {
  const trace = x[0] + y[1] + z[2];
  const squares = [trace, 2 * x[0] - trace, 2 * y[1] - trace, 2 * z[2] - trace];
  const most = squares.indexOf(Math.max(...squares));
  if (most === 0) return unitTurn([1 + trace, y[2] - z[1], z[0] - x[2], x[1] - y[0]]);
  if (most === 1) return unitTurn([y[2] - z[1], 1 + x[0] - y[1] - z[2], y[0] + x[1], z[0] + x[2]]);
  if (most === 2) return unitTurn([z[0] - x[2], y[0] + x[1], 1 - x[0] + y[1] - z[2], z[1] + y[2]]);
  return unitTurn([x[1] - y[0], z[0] + x[2], z[1] + y[2], 1 - x[0] - y[1] + z[2]]);
}

/** Angle from one turn to another, radians, 0 to π. */
export function angleBetween(a: Turn, b: Turn): number {
  const along = Math.abs(a[0] * b[0] + a[1] * b[1] + a[2] * b[2] + a[3] * b[3]);
  const off = Math.hypot(...aside(a, b));
  return 4 * Math.atan2(off / 2, Math.sqrt(Math.max(0, (1 + along) / 2)));
}

/** The difference of two quaternions, the nearer of the two that are the second turn. */
function aside(a: Turn, b: Turn): [number, number, number, number] {
  const sign = a[0] * b[0] + a[1] * b[1] + a[2] * b[2] + a[3] * b[3] < 0 ? -1 : 1;
  return [sign * b[0] - a[0], sign * b[1] - a[1], sign * b[2] - a[2], sign * b[3] - a[3]];
}

/** The pose at part `t` of the way: moved evenly, turned evenly about one axis (slerp). */
export function between(a: Pose, b: Pose, t: number): Pose {
  const at = add(a.at, scale(subtract(b.at, a.at), t));
  const dot =
    a.turn[0] * b.turn[0] + a.turn[1] * b.turn[1] + a.turn[2] * b.turn[2] + a.turn[3] * b.turn[3];
  const sign = dot < 0 ? -1 : 1;
  const half = Math.acos(Math.min(1, Math.abs(dot)));
  const s = Math.sin(half);
  const [p, q] =
    s < 1e-9 ? [1 - t, sign * t] : [Math.sin((1 - t) * half) / s, (sign * Math.sin(t * half)) / s];
  const mixed = a.turn.map((x, i) => p * x + q * (b.turn[i] as number));
  return { turn: unitTurn(mixed as unknown as Turn), at };
}

/** How far any point within `reach` of the body's origin moves at most from one pose to the other along
 * `between`, m. */
export const sweepOf = (a: Pose, b: Pose, reach: number): number =>
  norm(subtract(b.at, a.at)) + reach * angleBetween(a.turn, b.turn);

/** A turn, any alike (K. Shoemake, Uniform random rotations, Graphics Gems III, 1992, from memory). */
export function anyTurn(random: Random): Turn {
  const [u, v, w] = [random.uniform(), random.uniform(), random.uniform()].map(
    (x, i) => x * (i === 0 ? 1 : 2 * Math.PI),
  ) as [number, number, number];
  const [p, q] = [Math.sqrt(1 - u), Math.sqrt(u)];
  return [p * Math.sin(v), p * Math.cos(v), q * Math.sin(w), q * Math.cos(w)];
}
