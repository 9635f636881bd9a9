// What each opening costs and gives, in figures, and openings in the order that somebody asks for.

import { TAU } from '../../math/angle.ts';
import { hubPoint } from '../../shell/geometry.ts';
import type { HubId, PlaceId } from '../../shell/ids.ts';
import { hubCount, hubsOf, type Shell } from '../../shell/shell.ts';
import type { Opening } from './openings.ts';

/** What openings can be ranked by, the best first. */
export const openingRanks = [
  'stock saved',
  'least harm',
  'away from wind',
  'in reach',
  'shortest edge',
  'fewest panels',
] as const;

/** One of them. */
export type OpeningRank = (typeof openingRanks)[number];

/** An opening in figures. */
export interface OpeningFigures {
  /** Panels of kinds that are short which it makes needless; and all that it makes needless. */
  readonly saved: number;
  readonly spared: number;
  /** Seams cut and hubs freed: what strength it costs is not told by them. */
  readonly seamsCut: number;
  readonly hubsFreed: number;
  /** Angle between its way out and where the wind comes from, radians, 0 … π; null where that is not
   * known. */
  readonly offWind: number | null;
  /** Lowest and highest hub of its places above the floor, metres. */
  readonly sill: number;
  readonly top: number;
  /** Length of the edge to be framed, metres. */
  readonly edge: number;
}

/** What figures are made from. */
export interface RankQuestion {
  /** Place → its family. */
  readonly family: ArrayLike<number>;
  /** Family → places that nothing in stock fills. */
  readonly short: ArrayLike<number>;
  /** Where the wind mostly comes from, radians anticlockwise seen from above from the datum. */
  readonly windFrom?: number;
}

/** The figures of an opening of a standing shell. */
export function openingFigures(
  shell: Shell,
  { places, seamsCut, hubsFreed, reveal, passage }: Opening,
  { family, short, windFrom }: RankQuestion,
): OpeningFigures {
  const out = new Map<number, number>();
  for (const p of places) out.set(family[p] as number, (out.get(family[p] as number) ?? 0) + 1);
  const saved = [...out].reduce((sum, [f, n]) => sum + Math.min(n, short[f] ?? 0), 0);
  const heights = places.flatMap((p) =>
    hubsOf(shell, p as PlaceId).map((hub) => hubPoint(shell, hub)[2]),
  );
  const floor = Math.min(
    ...Array.from({ length: hubCount(shell) }, (_, h) => hubPoint(shell, h as HubId)[2]),
  );
  return {
    saved,
    spared: places.length,
    seamsCut,
    hubsFreed,
    offWind: windFrom === undefined ? null : angleBetween(passage.azimuth, windFrom),
    sill: Math.min(...heights) - floor,
    top: Math.max(...heights) - floor,
    edge: reveal.reduce((sum, { length }) => sum + length, 0),
  };
}

/** Angle between two azimuths, radians, 0 … π. */
function angleBetween(a: number, b: number): number {
  const off = (((a - b) % TAU) + TAU) % TAU;
  return Math.min(off, TAU - off);
}

/** Openings with their figures, by what is asked for in turn, then by fewest panels; ties as they
 * come. */
export function rankOpenings(
  shell: Shell,
  openings: readonly Opening[],
  question: RankQuestion,
  order: readonly OpeningRank[],
): { readonly opening: Opening; readonly figures: OpeningFigures }[] {
  const ranks: readonly OpeningRank[] = [...order, 'fewest panels', 'least harm'];
  return openings
    .map((opening) => ({ opening, figures: openingFigures(shell, opening, question) }))
    .sort((a, b) => {
      for (const rank of ranks) {
        const off = costOf(a.figures, rank) - costOf(b.figures, rank);
        if (Math.abs(off) > SAME) return off;
      }
      return 0;
    });
}

/** Harm by count: seams cut and hubs freed. How stiff the shell is left, stiffness.ts says, and
 * `withStiffness` puts first. */
export const harmOf = ({ seamsCut, hubsFreed }: Pick<Opening, 'seamsCut' | 'hubsFreed'>): number =>
  seamsCut + hubsFreed;

/** Figures nearer than this are a tie. */
const SAME = 1e-6;

const costOf = (figures: OpeningFigures, rank: OpeningRank): number => {
  switch (rank) {
    case 'stock saved':
      return -figures.saved;
    case 'least harm':
      return harmOf(figures);
    case 'away from wind':
      return -(figures.offWind ?? 0);
    case 'in reach':
      return figures.top;
    case 'shortest edge':
      return figures.edge;
    case 'fewest panels':
      return figures.spared;
  }
};
