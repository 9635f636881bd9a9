// Where rays from inside cross the wall. A point is over a place when it lies in the cone from the
// sphere's centre through the place's sides; a ray is followed from the place of the ray before it over
// the seam that it is furthest beyond, until the point where it meets the place's plane is over that
// place. Frame of the shell, metres.

import { cross, dot } from '../math/vector.ts';
import { endHubAt, hubPoint, placeNormal } from '../shell/geometry.ts';
import type { HubId, PlaceId, SideId } from '../shell/ids.ts';
import { hubAt, hubCount, placeCount, type Shell, sideCount } from '../shell/shell.ts';

/** A shell made ready to be crossed by many rays. */
export interface CrossedShell {
  readonly shell: Shell;
  /** Place → outward unit normal, stride 3. */
  readonly normal: Float64Array;
  /** Place → distance of its plane from the sphere's centre along that normal. */
  readonly reach: Float64Array;
  /** Side → normal of the plane through it and the centre, towards its place, stride 3. */
  readonly side: Float64Array;
  /** Height of the lowest hub. */
  readonly lowest: number;
}

/** A shell with its planes worked out. */
export function crossedShell(shell: Shell): CrossedShell {
  const places = placeCount(shell);
  const normal = new Float64Array(3 * places);
  const reach = new Float64Array(places);
  for (let p = 0; p < places; p++) {
    const n = placeNormal(shell, p as PlaceId);
    normal.set(n, 3 * p);
    reach[p] = dot(n, hubPoint(shell, hubAt(shell, shell.placeStart[p] as SideId)));
  }
  const side = new Float64Array(3 * sideCount(shell));
  for (let s = 0; s < sideCount(shell); s++) {
    const from = hubPoint(shell, hubAt(shell, s as SideId));
    side.set(cross(from, hubPoint(shell, endHubAt(shell, s as SideId))), 3 * s);
  }
  let lowest = Number.POSITIVE_INFINITY;
  for (let h = 0; h < hubCount(shell); h++)
    lowest = Math.min(lowest, hubPoint(shell, h as HubId)[2]);
  return { shell, normal, reach, side, lowest };
}

/** Places that a ray may be followed over before all are tried. */
const MOST_STEPS = 60;

/** The place through which a ray leaves the shell; −1 where it meets none: it leaves by an opening or
 * below the base ring. The ray starts at (x, y, z), inside, along the unit vector (u, v, w). `near`: a
 * place to begin at, such as that of the ray before. */
export function placeCrossed(
  crossed: CrossedShell,
  x: number,
  y: number,
  z: number,
  u: number,
  v: number,
  w: number,
  near: number,
): number {
  const { shell, normal, reach, lowest } = crossed;
  // Where the ray meets the sphere: over the right place, or one beside it.
  const along = x * u + y * v + z * w;
  const root = along * along - (x * x + y * y + z * z) + shell.radius ** 2;
  if (root < 0) return -1;
  const far = Math.sqrt(root) - along;
  if (z + far * w < lowest) return -1;
  let place = placeOver(crossed, x + far * u, y + far * v, z + far * w, near);
  for (let step = 0; place >= 0 && step < MOST_STEPS; step++) {
    const [a, b, c] = [normal[3 * place], normal[3 * place + 1], normal[3 * place + 2]];
    const facing = a * u + b * v + c * w;
    if (facing <= 0) break;
    const t = (reach[place] - a * x - b * y - c * z) / facing;
    const beyond = sideBeyond(crossed, place, x + t * u, y + t * v, z + t * w);
    if (beyond < 0) return place;
    const mate = shell.mate[beyond];
    place = mate < 0 ? -1 : shell.sidePlace[mate];
  }
  return anyCrossed(crossed, x, y, z, u, v, w);
}

/** The place that a point is over, from `near` on; −1 where the way there meets an open side. */
function placeOver(crossed: CrossedShell, x: number, y: number, z: number, near: number): number {
  const { shell } = crossed;
  let place = near;
  for (let step = 0; step < MOST_STEPS; step++) {
    const beyond = sideBeyond(crossed, place, x, y, z);
    if (beyond < 0) return place;
    const mate = shell.mate[beyond];
    if (mate < 0) return -1;
    place = shell.sidePlace[mate];
  }
  return -1;
}

/** The side of a place that a point is furthest beyond; −1 where it is over the place. */
function sideBeyond(
  { shell, side }: CrossedShell,
  place: number,
  x: number,
  y: number,
  z: number,
): number {
  let [worst, least] = [-1, -ROUNDING * shell.radius ** 3];
  const end = shell.placeStart[place + 1];
  for (let s = shell.placeStart[place]; s < end; s++) {
    const inside = side[3 * s] * x + side[3 * s + 1] * y + side[3 * s + 2] * z;
    if (inside < least) [worst, least] = [s, inside];
  }
  return worst;
}

/** A point so little beyond a seam, as a share of the radius cubed, is on it. */
const ROUNDING = 1e-12;

/** The same by trying every place. */
export function anyCrossed(
  crossed: CrossedShell,
  x: number,
  y: number,
  z: number,
  u: number,
  v: number,
  w: number,
): number {
  const { normal, reach } = crossed;
  for (let p = 0; p < reach.length; p++) {
    const [a, b, c] = [normal[3 * p], normal[3 * p + 1], normal[3 * p + 2]];
    const facing = a * u + b * v + c * w;
    if (facing <= 0) continue;
    const t = (reach[p] - a * x - b * y - c * z) / facing;
    if (t >= 0 && sideBeyond(crossed, p, x + t * u, y + t * v, z + t * w) < 0) return p;
  }
  return -1;
}
