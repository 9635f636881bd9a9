// Panels that stand on two base hubs by themselves: one leaning leaf each.

import { baseSupports } from '../../../src/frame/from-shell.ts';
import type { PlaceId } from '../../../src/shell/ids.ts';
import { hubsOf, placeCount, type Shell } from '../../../src/shell/shell.ts';

/** A panel by its place, and the hub that it has above the base. */
export interface Leaf {
  readonly place: number;
  readonly top: number;
}

/** All leaves of a shell. */
export function leaves(shell: Shell): Leaf[] {
  const base = new Set(baseSupports(shell).map(({ hub }) => hub));
  return [...Array(placeCount(shell)).keys()].flatMap((place) => {
    const hubs = hubsOf(shell, place as PlaceId);
    const above = hubs.filter((hub) => !base.has(hub));
    return above.length === 1 ? [{ place, top: above[0] as number }] : [];
  });
}
