// Hands and ids: mirror pairs are found, and kinds without an id in the file are numbered from the
// smallest (by sum of sides), a left and right pair under one number.

import { lowestTurn, turned } from '../math/cyclic.ts';
import type { Hand } from './kind.ts';
import { fromOtherFace, handOf, nearestTurn } from './polygon.ts';
import { PAIR_GAIN } from './tolerances.ts';

/** A kind before it has its id. */
export interface Unnamed {
  /** The id in the file, or null. */
  readonly id: string | null;
  readonly sides: readonly number[];
  readonly sds: readonly number[];
  /** Whether its readings allow it to be its own mirror image. */
  readonly mirror: boolean;
}

/** What numbering settles of one kind. */
export interface Named {
  readonly id: string;
  readonly hand: Hand;
  /** How far the sides were turned; a kind of the file is never turned. */
  readonly turn: number;
  /** Index of its mirror image among the kinds, or null. */
  readonly partner: number | null;
}

/** Ids, hands and turns of all kinds. `sameShape` says whether a squared misfit in standard
 * deviations over that many sides is noise. */
export function nameKinds(
  kinds: readonly Unnamed[],
  sameShape: (chiSquare: number, sides: number) => boolean,
): Named[] {
  const partners = partnersOf(kinds, sameShape);
  const hands = kinds.map((kind, k): Hand => {
    const partner = partners[k];
    if (partner === null || partner === undefined) return kind.mirror ? null : handOf(kind.sides);
    return handOf(levelled(kind, kinds[partner] as Unnamed));
  });
  const ids = idsOf(kinds, partners, hands);
  return kinds.map((kind, k) => ({
    id: ids[k] as string,
    hand: hands[k] as Hand,
    turn: kind.id === null ? lowestTurn(kind.sides) : 0,
    partner: partners[k] ?? null,
  }));
}

/** How well the mirror image of `a` lies on `b`: chi-square over their sides. */
function mirrorMisfit(a: Unnamed, b: Unnamed): number {
  const back = fromOtherFace(a.sides);
  const sds = fromOtherFace(a.sds);
  return nearestTurn(
    back,
    b.sides,
    (i, j) => 1 / ((sds[i] as number) ** 2 + (b.sds[j] as number) ** 2),
  ).cost;
}

/** Each kind's mirror image among the others: nearer than the kind is to its own mirror image, and
 * each other's nearest. */
function partnersOf(
  kinds: readonly Unnamed[],
  sameShape: (chiSquare: number, sides: number) => boolean,
): (number | null)[] {
  const nearest = kinds.map((kind, k) => {
    const self = mirrorMisfit(kind, kind);
    let best: { at: number; misfit: number } | null = null;
    kinds.forEach((other, j) => {
      if (j === k || other.sides.length !== kind.sides.length) return;
      const misfit = mirrorMisfit(kind, other);
      if (
        misfit < self - (kind.mirror ? PAIR_GAIN : 0) &&
        sameShape(misfit, kind.sides.length) &&
        (!best || misfit < best.misfit)
      )
        best = { at: j, misfit };
    });
    return best === null ? null : (best as { at: number }).at;
  });
  return nearest.map((at, k) => (at !== null && nearest[at] === k ? at : null));
}

/** The mean of a kind and its partner seen in the mirror, in the kind's own order. */
function levelled(kind: Unnamed, partner: Unnamed): number[] {
  const back = fromOtherFace(partner.sides);
  const { turn } = nearestTurn(back, kind.sides);
  return turned(back, turn).map((x, i) => (x + (kind.sides[i] as number)) / 2);
}

function idsOf(
  kinds: readonly Unnamed[],
  partners: readonly (number | null)[],
  hands: readonly Hand[],
): string[] {
  const ids = kinds.map((kind) => kind.id);
  const used = new Set(ids.filter((id) => id !== null));
  const size = (k: number): number => (kinds[k] as Unnamed).sides.reduce((sum, x) => sum + x, 0);
  const sizeOfPair = (k: number): number => {
    const partner = partners[k];
    return partner === null || partner === undefined ? size(k) : (size(k) + size(partner)) / 2;
  };
  const fresh = ids.flatMap((id, k) => (id === null ? [k] : []));
  fresh.sort((a, b) => sizeOfPair(a) - sizeOfPair(b) || a - b);
  let number = 0;
  const taken = (n: number): boolean => ['', 'L', 'R'].some((hand) => used.has(`${n}${hand}`));
  for (const k of fresh) {
    if (ids[k] !== null) continue;
    const partner = partners[k];
    const known = partner === null || partner === undefined ? null : ids[partner];
    const beside = known === null ? null : /^(.*)[LR]$/.exec(known as string);
    if (beside && !used.has(`${beside[1]}${hands[k]}`)) ids[k] = `${beside[1]}${hands[k]}`;
    else {
      do number++;
      while (taken(number));
      ids[k] = `${number}${hands[k] ?? ''}`;
      if (known === null && partner !== null && partner !== undefined)
        ids[partner] = `${number}${hands[partner] ?? ''}`;
    }
    used.add(ids[k] as string);
  }
  return ids as string[];
}
