// Openings as a list to choose from: one of each sort, ranked by core as the lead asks. Azimuths in
// radians, anticlockwise seen from above from the datum.

import {
  type Kind,
  type Opening,
  type OpeningFigures,
  type OpeningRank,
  openingRanks,
  type RankQuestion,
  rankOpenings,
  type Shell,
} from '@shellraise/core';

/** What goes with openings. */
export interface DoorContent extends RankQuestion {
  readonly shell: Shell;
  readonly kinds: readonly Kind[];
  /** Place → its course. */
  readonly course: ArrayLike<number>;
}

/** An opening with its figures. */
export interface RankedDoor {
  readonly opening: Opening;
  readonly figures: OpeningFigures;
}

/** What openings can be ranked by: by the wind only where it is known where that comes from. */
export const doorRanks = (isWindKnown: boolean): readonly OpeningRank[] =>
  openingRanks.filter((one) => isWindKnown || one !== 'away from wind');

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

/** One of each sort: those that cost the same kinds, seams and frame at the same courses are alike; of them
 * the one nearest to `towards`, or to the lee where they are ranked by the wind. The best by `rank` first. */
export function sortsOf(
  found: readonly Opening[],
  content: DoorContent,
  rank: OpeningRank,
  towards: number,
): readonly RankedDoor[] {
  const { windFrom } = content;
  const wanted = rank === 'away from wind' && windFrom !== undefined ? windFrom + Math.PI : towards;
  const sorts = new Map<string, Opening>();
  for (const one of found) {
    const edge = one.reveal.reduce((sum, { length }) => sum + length, 0);
    const key = JSON.stringify([
      kindsOut(content, one),
      one.seamsCut,
      Math.round(1000 * edge),
      one.places.map((p) => content.course[p] as number).sort((a, b) => a - b),
    ]);
    const known = sorts.get(key);
    if (!known || offBy(one, wanted) < offBy(known, wanted)) sorts.set(key, one);
  }
  return rankOpenings(content.shell, [...sorts.values()], content, [rank]);
}

/** Angle between an opening's way out and a direction, 0 … π. */
export function offBy({ passage }: Pick<Opening, 'passage'>, towards: number): number {
  const off = Math.abs(passage.azimuth - towards) % (2 * Math.PI);
  return Math.min(off, 2 * Math.PI - off);
}

/** Degrees clockwise seen from above from the datum, whole, 0 … 359: as a person paces it out. */
export const clockwise = (azimuth: number): number =>
  ((Math.round((-azimuth * 180) / Math.PI) % 360) + 360) % 360;
