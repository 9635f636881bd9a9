// What the search for an order knows of a shell: who meets whom, courses, heights, which places are
// built, what stands on the ground. Made once, read by every step.

import { baseSupports } from '../../frame/from-shell.ts';
import { coursesOf } from '../../shell/courses.ts';
import { placeCentre } from '../../shell/geometry.ts';
import type { PlaceId } from '../../shell/ids.ts';
import { baseRing } from '../../shell/rims.ts';
import { hubCount, placeCount, type Shell } from '../../shell/shell.ts';

/** A neighbour across a seam. */
export interface Across {
  readonly place: number;
  readonly seam: number;
}

/** A shell to be raised. */
export interface OrderSite {
  readonly shell: Shell;
  /** Place → its number. */
  readonly numbers: readonly string[];
  /** Place → its course, from 1; and the topmost. */
  readonly course: Int32Array;
  readonly courses: number;
  /** Place → 1 where a panel goes up: 0 in openings. */
  readonly built: Uint8Array;
  /** Place → 1 where it is left out, or loose, to the last: the way out. */
  readonly wayOut: Uint8Array;
  /** Course − 1 → its places that are built and no way out. */
  readonly ofCourse: readonly (readonly number[])[];
  /** Place → its hubs, anticlockwise seen from outside. */
  readonly hubs: readonly (readonly number[])[];
  /** Hub → places there. */
  readonly around: readonly (readonly number[])[];
  /** Place → neighbours across its seams. */
  readonly across: readonly (readonly Across[])[];
  /** Seam → its two places and its two hubs. */
  readonly seamPlaces: readonly (readonly [number, number])[];
  readonly seamHubs: readonly (readonly [number, number])[];
  /** Hub → 1 where it stands on the ground. */
  readonly base: Uint8Array;
  /** Hub → height over the mean of the base ring's, metres. */
  readonly height: Float64Array;
  /** Place → height of its highest hub; azimuth of its centre, radians, clockwise from the datum. */
  readonly top: Float64Array;
  readonly azimuth: Float64Array;
  /** Hub positions twice over: a hub h of what is known to stand is h + hubs. */
  readonly doubled: Float64Array;
}

/** A shell that stands crown up on its base ring, openings and way out by place. RangeError for a
 * place that is none, a closed shell, or one of which nothing is built. */
export function orderSite(
  shell: Shell,
  openings: readonly number[] = [],
  wayOut: readonly number[] = [],
): OrderSite {
  const count = placeCount(shell);
  const flags = (what: string, list: readonly number[]): Uint8Array => {
    const out = new Uint8Array(count);
    for (const p of list) {
      if (!(Number.isInteger(p) && p >= 0 && p < count))
        throw new RangeError(`${what}: place ${p}, expected 0 to ${count - 1}`);
      out[p] = 1;
    }
    return out;
  };
  const ring = baseRing(shell);
  if (ring === null) throw new RangeError('a closed shell has no base ring to be raised from');
  const built = flags('openings', openings).map((open) => 1 - open);
  if (!built.includes(1))
    throw new RangeError('every place is an opening: there is nothing to raise');
  const last = flags('way out', wayOut);
  const { course, counts, numbers } = coursesOf(shell);
  const hubs = Array.from({ length: count }, (_, p) =>
    Array.from(shell.sideHub.subarray(shell.placeStart[p], shell.placeStart[p + 1])),
  );
  const base = new Uint8Array(hubCount(shell));
  for (const { hub } of baseSupports(shell)) base[hub] = 1;
  const height = Float64Array.from(base, (_, hub) => shell.hubs[3 * hub + 2] - ring.z.mean);
  const around: number[][] = Array.from(base, () => []);
  hubs.forEach((own, p) => {
    for (const hub of own) around[hub].push(p);
  });
  return {
    shell,
    numbers,
    course,
    courses: counts.length,
    built,
    wayOut: last,
    ofCourse: counts.map((_, c) =>
      [...course.keys()].filter((p) => course[p] === c + 1 && built[p] && !last[p]),
    ),
    hubs,
    around,
    ...seamsOf(shell, count),
    base,
    height,
    top: Float64Array.from(hubs, (own) => Math.max(...own.map((hub) => height[hub]))),
    azimuth: Float64Array.from(hubs, (_, p) => {
      const [x, y] = placeCentre(shell, p as PlaceId);
      return -Math.atan2(y, x);
    }),
    doubled: Float64Array.from([...shell.hubs, ...shell.hubs]),
  };
}

function seamsOf(
  shell: Shell,
  count: number,
): Pick<OrderSite, 'across' | 'seamPlaces' | 'seamHubs'> {
  const across: Across[][] = Array.from({ length: count }, () => []);
  const seamPlaces: [number, number][] = [];
  const seamHubs: [number, number][] = [];
  for (let seam = 0; 2 * seam < shell.seams.length; seam++) {
    const [side, other] = [shell.seams[2 * seam], shell.seams[2 * seam + 1]];
    const [a, b] = [shell.sidePlace[side], shell.sidePlace[other]];
    seamPlaces.push([a, b]);
    seamHubs.push([shell.sideHub[side], shell.sideHub[other]]);
    across[a].push({ place: b, seam });
    across[b].push({ place: a, seam });
  }
  return { across, seamPlaces, seamHubs };
}

/** How many courses from the ground are complete without a gap; the way out counts as complete. */
export function completeCourses(
  { ofCourse }: OrderSite,
  isPlaced: (place: number) => boolean,
): number {
  let complete = 0;
  while (complete < ofCourse.length && (ofCourse[complete] as readonly number[]).every(isPlaced))
    complete++;
  return complete;
}
