// The hubs of a shell sorted by their stars: hubs of one class take the same part.

import { acos } from '../math/angle.ts';
import { dot } from '../math/vector.ts';
import type { PlaceId } from '../shell/ids.ts';
import { partOf } from '../shell/part.ts';
import type { Shell } from '../shell/shell.ts';
import { fansOf } from '../shell/stars.ts';
import { type HubRays, hubRays } from './snap-hub.ts';

/** Hubs whose stars are alike. */
export interface HubClass {
  /** Of the first of them. */
  readonly rays: HubRays;
  /** Hubs of the shell; one twice where two runs of corners end there. */
  readonly hubs: readonly number[];
}

/** Hubs are alike where no ray of them differs by more, radians: a fifth of a degree. */
const ALIKE = 0.0035;

/** The classes of the hubs that these places have: closed stars first, then by number of corners, then the
 * most hubs first. */
export function hubClasses(shell: Shell, places: readonly PlaceId[]): HubClass[] {
  const part = partOf(shell, places);
  const classes: { rays: HubRays; hubs: number[] }[] = [];
  for (const star of fansOf(part.shell).flat()) {
    const rays = hubRays(part.shell, star);
    const hub = part.hubs[star.hub] as number;
    const known = classes.find((one) => alike(one.rays, rays));
    if (known) known.hubs.push(hub);
    else classes.push({ rays, hubs: [hub] });
  }
  return classes.sort(
    (a, b) =>
      Number(b.rays.closed) - Number(a.rays.closed) ||
      cornersOf(a.rays) - cornersOf(b.rays) ||
      b.hubs.length - a.hubs.length,
  );
}

/** Number of corners of a star. */
export const cornersOf = ({ rays, closed }: HubRays): number =>
  closed ? rays.length : rays.length - 1;

/** Whether one star lies on another after a turn about the hub. */
function alike(a: HubRays, b: HubRays): boolean {
  const n = a.rays.length;
  if (a.closed !== b.closed || n !== b.rays.length) return false;
  const [p, q] = [a, b].map(marksOf) as [[number, number][], [number, number][]];
  return Array.from({ length: a.closed ? n : 1 }, (_, turn) => turn).some((turn) =>
    p.every(([slope, angle], i) => {
      const [otherSlope, otherAngle] = q[(i + turn) % n] as [number, number];
      return Math.abs(slope - otherSlope) < ALIKE && Math.abs(angle - otherAngle) < ALIKE;
    }),
  );
}

/** Ray → how it slopes, and the corner that follows it (0 after the last of an open star). */
const marksOf = ({ rays, closed }: HubRays): [number, number][] =>
  rays.map((ray, i) => {
    const next = i + 1 < rays.length ? rays[i + 1] : closed ? rays[0] : undefined;
    return [Math.asin(ray[2]), next ? acos(dot(ray, next)) : 0];
  });
