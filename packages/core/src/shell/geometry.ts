// Lengths, centres and normals of the places of a shell. Metres; frame of the shell.

import {
  add,
  cross,
  distance,
  dot,
  normalize,
  pointAt,
  scale,
  subtract,
  type Vec3,
} from '../math/vector.ts';
import type { HubId, PlaceId, SideId } from './ids.ts';
import { hubAt, hubsOf, nextSide, type Shell, sideCount } from './shell.ts';

/** Where a hub stands, metres. */
export const hubPoint = (shell: Shell, hub: HubId): Vec3 => pointAt(shell.hubs, hub);

/** The hub that a side leads to. */
export const endHubAt = (shell: Shell, side: SideId): HubId => hubAt(shell, nextSide(shell, side));

/** Length of a side from hub to hub, metres. */
export const sideLength = (shell: Shell, side: SideId): number =>
  distance(hubPoint(shell, hubAt(shell, side)), hubPoint(shell, endHubAt(shell, side)));

/** Mean length over all sides, a seam counting twice, metres; NaN for a shell without places. */
export function meanSideLength(shell: Shell): number {
  let sum = 0;
  for (let s = 0; s < sideCount(shell); s++) sum += sideLength(shell, s as SideId);
  return sum / sideCount(shell);
}

/** Mean of a place's hubs, metres. */
export function placeCentre(shell: Shell, place: PlaceId): Vec3 {
  const hubs = hubsOf(shell, place);
  const sum = hubs.reduce<Vec3>((total, hub) => add(total, hubPoint(shell, hub)), [0, 0, 0]);
  return scale(sum, 1 / hubs.length);
}

/** Vector area of a place, square metres: along its normal, outward where its hubs run
 * anticlockwise seen from outside. A bent polygon gives that of its mean plane (Newell). */
export function vectorArea(shell: Shell, place: PlaceId): Vec3 {
  const points = hubsOf(shell, place).map((hub) => hubPoint(shell, hub));
  const first = points[0] as Vec3;
  let sum: Vec3 = [0, 0, 0];
  for (let i = 1; i + 1 < points.length; i++) {
    const a = subtract(points[i] as Vec3, first);
    sum = add(sum, cross(a, subtract(points[i + 1] as Vec3, first)));
  }
  return scale(sum, 0.5);
}

/** Unit outward normal of a place; NaN where its hubs lie on one line. */
export const placeNormal = (shell: Shell, place: PlaceId): Vec3 =>
  normalize(vectorArea(shell, place));

/** Solid angle of a place seen from the sphere's centre, steradians; negative where the place is
 * inside out. Van Oosterom and Strackee, IEEE Trans. Biomed. Eng. 30 (1983) 125, over a fan. */
export function placeSolidAngle(shell: Shell, place: PlaceId): number {
  const points = hubsOf(shell, place).map((hub) => normalize(hubPoint(shell, hub)));
  const a = points[0] as Vec3;
  let sum = 0;
  for (let i = 1; i + 1 < points.length; i++) {
    const b = points[i] as Vec3;
    const c = points[i + 1] as Vec3;
    sum += 2 * Math.atan2(dot(a, cross(b, c)), 1 + dot(a, b) + dot(b, c) + dot(c, a));
  }
  return sum;
}
