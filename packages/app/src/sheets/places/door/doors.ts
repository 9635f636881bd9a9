// Openings as a list to choose from: one of each sort, ranked as the lead asks, and what each costs in
// kinds. Azimuths in radians, anticlockwise seen from above from the datum.

import type { Kind, Opening, Shell } from '@shellraise/core';

/** What openings can be ranked by. */
export const doorRanks = ['places', 'seams', 'frame', 'stock'] as const;
/** What openings are ranked by. */
export type DoorRank = (typeof doorRanks)[number];

/** What goes with openings. */
export interface DoorContent {
  readonly shell: Shell;
  readonly kinds: readonly Kind[];
  /** Place → its course. */
  readonly course: ArrayLike<number>;
  /** Kind (index) → panels that the shell lacks while nothing is left out. */
  readonly short: readonly number[];
}

/** Panels out, a row a kind in the kinds' order. */
export function kindsOut(
  { shell, kinds }: Pick<DoorContent, 'shell' | 'kinds'>,
  { places }: Pick<Opening, 'places'>,
): { readonly kind: string; readonly count: number }[] {
  return kinds.flatMap(({ id }, k) => {
    const count = places.filter((place) => shell.kind[place] === k).length;
    return count > 0 ? [{ kind: id, count }] : [];
  });
}

/** Panels that need not be got if this is left out. */
export function saves({ shell, short }: DoorContent, { places }: Opening): number {
  return short.reduce((sum, lacks, k) => {
    const out = places.filter((place) => shell.kind[place] === k).length;
    return sum + Math.min(lacks, out);
  }, 0);
}

/** The edge to be framed, metres. */
export const frameLength = ({ reveal }: Opening): number =>
  reveal.reduce((sum, { length }) => sum + length, 0);

/** One of each sort: those that cost the same kinds, seams and frame at the same courses are alike; of them
 * the one nearest to `towards`. The best by `rank` first, then as they came. */
export function sortsOf(
  found: readonly Opening[],
  content: DoorContent,
  rank: DoorRank,
  towards: number,
): Opening[] {
  const sorts = new Map<string, Opening>();
  for (const one of found) {
    const key = JSON.stringify([
      kindsOut(content, one),
      one.seamsCut,
      Math.round(1000 * frameLength(one)),
      one.places.map((p) => content.course[p] as number).sort((a, b) => a - b),
    ]);
    const known = sorts.get(key);
    if (!known || offBy(one, towards) < offBy(known, towards)) sorts.set(key, one);
  }
  return [...sorts.values()].sort((a, b) => costOf(a, content, rank) - costOf(b, content, rank));
}

function costOf(one: Opening, content: DoorContent, rank: DoorRank): number {
  switch (rank) {
    case 'places':
      return one.places.length;
    case 'seams':
      return one.seamsCut;
    case 'frame':
      return frameLength(one);
    case 'stock':
      return -saves(content, one);
  }
}

/** Angle between an opening's way out and a direction, 0 … π. */
export function offBy({ passage }: Opening, towards: number): number {
  const off = Math.abs(passage.azimuth - towards) % (2 * Math.PI);
  return Math.min(off, 2 * Math.PI - off);
}

/** Degrees clockwise seen from above from the datum, whole, 0 … 359: as a person paces it out. */
export const clockwise = (azimuth: number): number =>
  ((Math.round((-azimuth * 180) / Math.PI) % 360) + 360) % 360;
