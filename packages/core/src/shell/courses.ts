// Courses and place numbers, `3-07`: course 3 from the ground up, seventh place clockwise seen
// from above from the datum (+x).
//
// The first course is every place with a hub in the base ring: the closed ring of panels that the
// crew bolts to what stands on the ground. Each next course is every place that shares a hub with
// the course below and has no number yet, so each course is the ring that rests on the last, also
// where base rings zigzag or where rows of hubs are not level. Where the net's own rings of hubs
// are level (class I with a hub as crown, say) courses are the bands between them. Number the
// whole shell before openings are left out: an opening moves no number.

import { placeCentre } from './geometry.ts';
import type { PlaceId } from './ids.ts';
import { baseRing } from './rims.ts';
import { hubCount, placeCount, type Shell } from './shell.ts';
import { SAME_AZIMUTH } from './tolerances.ts';

/** The courses of a shell and its place numbers. */
export interface Courses {
  /** Place → its course, 1 at the ground. */
  readonly course: Int32Array;
  /** Place → its position in the course, from 1, clockwise seen from above from the datum. */
  readonly position: Int32Array;
  /** Course − 1 → number of places. */
  readonly counts: readonly number[];
  /** Place → its number, `3-07`: at least two digits, more where a course has over 99 places. */
  readonly numbers: readonly string[];
}

/** Courses and place numbers of a shell that stands on its base ring, or, where it is closed, on
 * its lowest hub. A piece that does not reach the ground counts from its own lowest hub. Places
 * of one azimuth are told apart by height, then by index. */
export function coursesOf(shell: Shell): Courses {
  const course = courseNumbers(shell);
  const position = new Int32Array(course.length);
  const counts: number[] = [];
  for (const p of clockwisePlaces(shell)) {
    const row = (course[p] as number) - 1;
    while (counts.length <= row) counts.push(0);
    counts[row] = (counts[row] as number) + 1;
    position[p] = counts[row] as number;
  }
  const digits = positionDigits(counts);
  const numbers = Array.from(course, (c, p) => `${c}-${String(position[p]).padStart(digits, '0')}`);
  return { course, position, counts, numbers };
}

/** Digits of every position where the rings have so many places: at least two. */
export const positionDigits = (counts: readonly number[]): number =>
  Math.max(2, String(Math.max(0, ...counts)).length);

/** All places clockwise seen from above from the datum; those of one azimuth by height, then by
 * index. */
export function clockwisePlaces(shell: Shell): number[] {
  const places = Array.from({ length: placeCount(shell) }, (_, p) => p);
  const clockwise = places.map((p) => clockwiseFromDatum(shell, p as PlaceId));
  const height = places.map((p) => placeCentre(shell, p as PlaceId)[2]);
  const at = (list: readonly number[], p: number): number => list[p] as number;
  return places.sort(
    (p, q) => at(clockwise, p) - at(clockwise, q) || at(height, p) - at(height, q) || p - q,
  );
}

/** Hub → the number of courses at which it is first met from the given hubs outwards, 0 at those
 * themselves; place → its course, 1 for places with one of those hubs; both −1 where the given
 * hubs do not lead. With `keep` (place → 1 where it is there) only through the places kept. */
export function layersFrom(
  shell: Shell,
  start: readonly number[],
  keep?: Uint8Array,
): { readonly hubs: Int32Array; readonly places: Int32Array } {
  const hubs = new Int32Array(hubCount(shell)).fill(-1);
  const places = new Int32Array(placeCount(shell)).fill(-1);
  const around = placesAtHubs(shell);
  spread(shell, start, hubs, places, keep ? around.map((at) => at.filter((p) => keep[p])) : around);
  return { hubs, places };
}

function courseNumbers(shell: Shell): Int32Array {
  const hubs = new Int32Array(hubCount(shell)).fill(-1);
  const places = new Int32Array(placeCount(shell)).fill(-1);
  const around = placesAtHubs(shell);
  let start: readonly number[] = baseRing(shell)?.hubs ?? lowestHubs(shell, around, hubs);
  while (start.length > 0) {
    spread(shell, start, hubs, places, around);
    start = lowestHubs(shell, around, hubs);
  }
  return places;
}

function spread(
  shell: Shell,
  start: readonly number[],
  hubs: Int32Array,
  places: Int32Array,
  around: readonly (readonly number[])[],
): void {
  let front = [...new Set(start)];
  for (const hub of front) hubs[hub] = 0;
  for (let layer = 1; front.length > 0; layer++) {
    const next: number[] = [];
    const course = front.flatMap((hub) => around[hub] ?? []).filter((p) => places[p] === -1);
    for (const p of course) places[p] = layer;
    for (const p of course) {
      for (let s = shell.placeStart[p] as number; s < (shell.placeStart[p + 1] as number); s++) {
        const hub = shell.sideHub[s] as number;
        if (hubs[hub] !== -1) continue;
        hubs[hub] = layer;
        next.push(hub);
      }
    }
    front = next;
  }
}

/** The lowest hub that has places and was not met yet, as a list; empty where all were. */
function lowestHubs(
  shell: Shell,
  around: readonly (readonly number[])[],
  met: Int32Array,
): number[] {
  let lowest = -1;
  const z = (hub: number): number => shell.hubs[3 * hub + 2] as number;
  for (let hub = 0; hub < met.length; hub++) {
    if (met[hub] !== -1 || around[hub]?.length === 0) continue;
    if (lowest < 0 || z(hub) < z(lowest)) lowest = hub;
  }
  return lowest < 0 ? [] : [lowest];
}

function placesAtHubs(shell: Shell): number[][] {
  const around: number[][] = Array.from({ length: hubCount(shell) }, () => []);
  shell.sideHub.forEach((hub, side) => {
    around[hub]?.push(shell.sidePlace[side] as number);
  });
  return around;
}

/** Azimuth of a place's centre clockwise from +x seen from above, [0, 2π), in steps of 1e−7 so
 * that rounding orders nothing; 0 for a place in the axis. */
function clockwiseFromDatum(shell: Shell, place: PlaceId): number {
  const [x, y] = placeCentre(shell, place);
  if (Math.hypot(x, y) < SAME_AZIMUTH * shell.radius) return 0;
  const steps = Math.round(-Math.atan2(y, x) / SAME_AZIMUTH);
  const turn = Math.round((2 * Math.PI) / SAME_AZIMUTH);
  return ((steps % turn) + turn) % turn;
}
