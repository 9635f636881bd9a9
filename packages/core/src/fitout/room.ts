// What else a shell could be: floor by headroom, volume, whether a box stands in it and where. Inside a
// shell that bulges everywhere the room is what lies below the plane of every panel.

import { assertBetween } from '../loads/doors.ts';
import { dot, type Vec3 } from '../math/vector.ts';
import { hubPoint, vectorArea } from '../shell/geometry.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import { hubAt, placeCount, type Shell } from '../shell/shell.ts';
import { crossedShell } from './crossing.ts';

/** The plan of the floor that has at least so much headroom: corners anticlockwise seen from above;
 * empty where nowhere has. `inset`: metres kept off the panels (flanges). Of a floor on which the wall
 * leans out the floor itself bounds it. */
export function floorWithHeadroom(
  shell: Shell,
  floor: number,
  headroom: number,
  inset = 0,
): (readonly [number, number])[] {
  assertBetween('headroom', headroom, 0, 30, 'm');
  assertBetween('inset', inset, 0, 2, 'm');
  const { normal, reach } = crossedShell(shell);
  const far = 4 * shell.radius;
  let outline: (readonly [number, number])[] = [
    [-far, -far],
    [far, -far],
    [far, far],
    [-far, far],
  ];
  for (let p = 0; p < reach.length; p++)
    for (const z of [floor, floor + headroom]) {
      const [a, b] = [normal[3 * p], normal[3 * p + 1]];
      outline = clipped(outline, a, b, reach[p] - inset - normal[3 * p + 2] * z);
    }
  return outline;
}

/** What of an outline has a x + b y ≤ c. */
function clipped(
  outline: readonly (readonly [number, number])[],
  a: number,
  b: number,
  c: number,
): (readonly [number, number])[] {
  return outline.flatMap((from, i): (readonly [number, number])[] => {
    const to = outline[(i + 1) % outline.length];
    const [f, g] = [c - a * from[0] - b * from[1], c - a * to[0] - b * to[1]];
    const kept: (readonly [number, number])[] = f >= 0 ? [from] : [];
    if (f * g >= 0) return kept;
    const t = f / (f - g);
    return [...kept, [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])]];
  });
}

/** Area of a plan, square metres (shoelace). */
export const outlineArea = (outline: readonly (readonly [number, number])[]): number =>
  outline.reduce((sum, [x, y], i) => {
    const [p, q] = outline[(i + 1) % outline.length];
    return sum + (x * q - y * p) / 2;
  }, 0);

/** Room inside between the panels and the floor, cubic metres, and area of the panels inside, square
 * metres. An opening left out counts as open to the sphere's centre's height: it is closed by the cone to
 * the middle of the floor. */
export function roomInside(
  shell: Shell,
  floor: number,
): { readonly volume: number; readonly panels: number } {
  const from: Vec3 = [0, 0, floor];
  let [volume, panels] = [0, 0];
  for (let p = 0; p < placeCount(shell); p++) {
    const area = vectorArea(shell, p as PlaceId);
    const corner = hubPoint(shell, hubAt(shell, shell.placeStart[p] as SideId));
    volume += dot(area, [corner[0] - from[0], corner[1] - from[1], corner[2] - from[2]]) / 3;
    panels += Math.hypot(...area);
  }
  return { volume, panels };
}

/** How far from the axis the middle of a box (length along, depth square to the wall, height) can stand,
 * turned to face azimuths in `steps`: the best of them, metres; null where it fits nowhere on a line
 * through the axis. */
export function boxRoom(
  shell: Shell,
  floor: number,
  box: { readonly length: number; readonly depth: number; readonly height: number },
  inset = 0,
  steps = 72,
): { readonly azimuth: number; readonly out: number } | null {
  const { length, depth, height } = box;
  for (const [name, value] of Object.entries(box))
    assertBetween(`box ${name}`, value, 0.01, 30, 'm');
  const { normal, reach } = crossedShell(shell);
  let best: { azimuth: number; out: number } | null = null;
  for (let i = 0; i < steps; i++) {
    const azimuth = (2 * Math.PI * i) / steps;
    const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
    let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let p = 0; p < reach.length; p++) {
      const [a, b, up] = [normal[3 * p], normal[3 * p + 1], normal[3 * p + 2]];
      const outward = a * c + b * s;
      const across = Math.abs(b * c - a * s) * (length / 2) + Math.abs(outward) * (depth / 2);
      const left = reach[p] - inset - up * floor - Math.max(0, up * height) - across;
      if (Math.abs(outward) < 1e-12) {
        if (left < 0) high = Number.NEGATIVE_INFINITY;
      } else if (outward > 0) high = Math.min(high, left / outward);
      else low = Math.max(low, left / outward);
    }
    if (high >= low && (best === null || high > best.out)) best = { azimuth, out: high };
  }
  return best;
}
