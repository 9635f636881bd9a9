// The holes that somebody counted along the sides of a pile's panels, kind by kind.

import type { PileKinds } from '../pile/kinds.ts';
import type { Pile } from '../pile/schema.ts';
import type { HoleCounts } from './seam-bolts.ts';

/** Holes counted along each kind's sides, in the order of the kinds: the kind's row first, else the
 * first reading that counted them; null for a kind nobody counted. */
export function countedHoles(pile: Pile, { kinds, assigned }: PileKinds): HoleCounts {
  const rows = new Map(pile.kinds.map((row) => [row.id, row.holes]));
  return kinds.map((kind) => {
    const counts: (number | null)[] = kind.sides.map(
      (_, side) => rows.get(kind.id)?.[side] ?? null,
    );
    for (const { reading, kind: id, liesOn } of assigned) {
      const holes = id === kind.id ? pile.readings[reading]?.holes : null;
      for (const [written, side] of liesOn.entries()) counts[side] ??= holes?.[written] ?? null;
    }
    return counts.every((n) => n === null) ? null : counts;
  });
}
