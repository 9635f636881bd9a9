// The standing shell by the names that entries use. A place goes by its number, `3-07`; a seam by the
// places on either side of it, `3-07/3-08`; a hub by the places around it, `1-01 1-02 2-01`, with
// `#2` and so on behind it where the same places meet at more than one hub.

import { hubPoint, placeCentre } from '../shell/geometry.ts';
import type { HubId, PlaceId } from '../shell/ids.ts';
import { hubCount, placeCount, type Shell, seamCount } from '../shell/shell.ts';

/** What the record needs to know of the standing shell; indices are the shell's. */
export interface RecordPlan {
  readonly shell: Shell;
  /** Place → its number. */
  readonly places: readonly string[];
  /** Place → its course, 1 at the ground. */
  readonly course: ArrayLike<number>;
  /** Seam → its name, and the two places on either side in the order of the name. */
  readonly seams: readonly string[];
  readonly seamPlaces: readonly (readonly [number, number])[];
  /** Hub → its name; empty where no place meets. */
  readonly hubs: readonly string[];
  /** Hub → places around it, in the order of their names. */
  readonly hubPlaces: readonly (readonly number[])[];
  readonly placeIndex: ReadonlyMap<string, number>;
  readonly seamIndex: ReadonlyMap<string, number>;
  readonly hubIndex: ReadonlyMap<string, number>;
}

/** The names of a shell's places, seams and hubs, from the numbers and courses of its places
 * (`coursesOf`, of the whole shell where openings are left out). Throws where a place has no number
 * or two have the same. */
export function recordPlan(
  shell: Shell,
  { numbers, course }: { readonly numbers: readonly string[]; readonly course: ArrayLike<number> },
): RecordPlan {
  const count = placeCount(shell);
  const places = Array.from({ length: count }, (_, p) => numbers[p] ?? '');
  const placeIndex = indexOf(places);
  if (placeIndex.size < count || places.includes(''))
    throw new Error(`${count} places need as many numbers, all different`);
  const byName = (p: number, q: number): number => compareNumbers(places[p]!, places[q]!);
  const seamPlaces = Array.from({ length: seamCount(shell) }, (_, m) => {
    const [a, b] = [2 * m, 2 * m + 1].map((i) => shell.sidePlace[shell.seams[i]!]!);
    return (byName(a!, b!) <= 0 ? [a, b] : [b, a]) as readonly [number, number];
  });
  const seams = seamPlaces.map(([a, b]) => seamOf(places[a] as string, places[b] as string));
  const hubPlaces: number[][] = Array.from({ length: hubCount(shell) }, () => []);
  shell.sideHub.forEach((hub, side) => {
    hubPlaces[hub]?.push(shell.sidePlace[side]!);
  });
  for (const list of hubPlaces) list.sort(byName);
  const hubs = toldApart(hubPlaces.map((list) => list.map((p) => places[p]).join(' ')));
  return {
    shell,
    places,
    course,
    seams,
    seamPlaces,
    hubs,
    hubPlaces,
    placeIndex,
    seamIndex: indexOf(seams),
    hubIndex: indexOf(hubs.map((name) => name || ' ')),
  };
}

/** The name of the seam of two places, by their numbers: the earlier first, `1-05/1-06`. */
export const seamOf = (a: string, b: string): string =>
  compareNumbers(a, b) <= 0 ? `${a}/${b}` : `${b}/${a}`;

/** Orders place numbers by course, then by position. */
export function compareNumbers(a: string, b: string): number {
  const [ac, ap] = a.split('-').map(Number);
  const [bc, bp] = b.split('-').map(Number);
  return ac! - bc! || ap! - bp!;
}

/** Where a place, a seam or a hub is, metres, in the shell's frame; a seam at its middle. */
export function whereIs(
  { shell }: RecordPlan,
  what: 'place' | 'seam' | 'hub',
  index: number,
): readonly [number, number, number] {
  if (what === 'place') return placeCentre(shell, index as PlaceId);
  if (what === 'hub') return hubPoint(shell, index as HubId);
  const [one, other] = [2 * index, 2 * index + 1].map(
    (i) => shell.sideHub[shell.seams[i]!] as HubId,
  );
  const [a, b] = [hubPoint(shell, one!), hubPoint(shell, other!)];
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
}

const indexOf = (names: readonly string[]): Map<string, number> =>
  new Map(names.map((name, index) => [name, index]));

/** Names alike get `#2`, `#3` … in the order of their indices. */
function toldApart(names: readonly string[]): string[] {
  const met = new Map<string, number>();
  return names.map((name) => {
    if (name === '') return name;
    const times = (met.get(name) ?? 0) + 1;
    met.set(name, times);
    return times === 1 ? name : `${name} #${times}`;
  });
}
