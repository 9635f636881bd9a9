// The nadir of a shell: the point of the sphere right below its centre, which a plan seen from above
// can't show as a point.

import { add, cross, dot, normalize, type Vec3 } from '../math/vector.ts';
import { endHubAt, hubPoint, meanSideLength } from './geometry.ts';
import type { HubId, PlaceId, SeamId, SideId } from './ids.ts';
import {
  hubAt,
  hubCount,
  hubsOf,
  placeCount,
  previousSide,
  type Shell,
  seamCount,
} from './shell.ts';
import { AT_NADIR } from './tolerances.ts';

/** What holds the nadir. */
export type Nadir =
  | { readonly at: 'hub'; readonly hub: HubId }
  | { readonly at: 'seam'; readonly seam: SeamId }
  | { readonly at: 'place'; readonly place: PlaceId };

/** What holds the nadir of a shell that stands crown up: the hub or the seam within a tenth of a
 * mean side of it, else the place around it; null where the shell leaves it open. */
export function nadirOf(shell: Shell): Nadir | null {
  const near = AT_NADIR * meanSideLength(shell);
  const hub = nearestToNadir(shell);
  if (hub !== null && fromAxis(hubPoint(shell, hub)) < near) return { at: 'hub', hub };
  for (let m = 0; m < seamCount(shell); m++)
    if (seamAtNadir(shell, shell.seams[2 * m] as SideId, near))
      return { at: 'seam', seam: m as SeamId };
  for (let p = 0; p < placeCount(shell); p++)
    if (nadirWithin(shell, p as PlaceId)) return { at: 'place', place: p as PlaceId };
  return null;
}

const fromAxis = (p: Vec3): number =>
  p[2] < 0 ? Math.hypot(p[0], p[1]) : Number.POSITIVE_INFINITY;

/** The lowest hub if places go all the way round it, else null. */
function nearestToNadir(shell: Shell): HubId | null {
  let lowest = -1;
  const z = (h: number): number => shell.hubs[3 * h + 2] as number;
  for (let h = 0; h < hubCount(shell); h++) if (lowest < 0 || z(h) < z(lowest)) lowest = h;
  if (lowest < 0) return null;
  const corners = Array.from(shell.sideHub.keys()).filter((s) => shell.sideHub[s] === lowest);
  const inner = corners.every(
    (s) =>
      (shell.mate[s] as number) >= 0 &&
      (shell.mate[previousSide(shell, s as SideId)] as number) >= 0,
  );
  return inner && corners.length > 0 ? (lowest as HubId) : null;
}

/** Whether the great circle through a side passes the nadir between its two hubs. */
function seamAtNadir(shell: Shell, side: SideId, near: number): boolean {
  const a = hubPoint(shell, hubAt(shell, side));
  const b = hubPoint(shell, endHubAt(shell, side));
  const middle = add(a, b);
  if (middle[2] >= 0) return false;
  const pole = normalize(cross(a, b));
  const offCircle = Math.abs(pole[2]) * shell.radius;
  const along = cross(pole, [0, 0, -1]);
  return offCircle < near && dot(along, a) < 0 !== dot(along, b) < 0;
}

function nadirWithin(shell: Shell, place: PlaceId): boolean {
  const points = hubsOf(shell, place).map((hub) => hubPoint(shell, hub));
  return points.every((a, i) => cross(a, points[(i + 1) % points.length] as Vec3)[2] < 0);
}
