// Where a joined group may stand: runs of places around one hub whose families come in the group's
// order, all within an outline. A group that goes all the way round needs a whole star.

import { turned } from '../../math/cyclic.ts';
import type { JoinedGroup } from '../../pile/kind.ts';
import type { Shell } from '../../shell/shell.ts';
import { type Star, starsOf } from '../../shell/stars.ts';

/** A sort of joined group in families. */
export interface FamilyGroup {
  /** Families anticlockwise seen from outside around the hub. */
  readonly around: readonly number[];
  readonly closed: boolean;
  readonly count: number;
}

/** The groups in families; those with a panel of no known family are left out. */
export function familyGroups(
  groups: readonly JoinedGroup[],
  familyOf: (id: string) => number | undefined,
): FamilyGroup[] {
  return groups.flatMap(({ around, closed, count }) => {
    const own = around.map(familyOf);
    return own.every((f) => f !== undefined) ? [{ around: own as number[], closed, count }] : [];
  });
}

/** Every set of places of a closed net that a group may take, each once, its places in the group's
 * order. An open run may go all the way round a hub: its ends are then bolted as well. */
export function runsFor(shell: Shell, family: ArrayLike<number>, group: FamilyGroup): number[][] {
  const found = new Map<string, number[]>();
  for (const star of starsOf(shell)) {
    for (const places of runsAround(shell, star, group)) {
      if (!places.every((p, i) => family[p] === group.around[i])) continue;
      const key = [...places].sort((a, b) => a - b).join();
      if (!found.has(key)) found.set(key, places);
    }
  }
  return [...found.values()];
}

/** Groups that can stay joined within some places of a closed net, taken one after the other where they
 * first fit: so many at least. */
export function groupsWithin(
  shell: Shell,
  family: ArrayLike<number>,
  groups: readonly FamilyGroup[],
  places: Iterable<number>,
): number {
  const free = new Set(places);
  let count = 0;
  for (const group of groups) {
    let left = group.count;
    for (const run of runsFor(shell, family, group)) {
      if (left === 0) break;
      if (!run.every((p) => free.has(p))) continue;
      for (const p of run) free.delete(p);
      left--;
      count++;
    }
  }
  return count;
}

/** Runs of as many places around a hub, from each corner on. */
function runsAround(shell: Shell, { corners, closed }: Star, group: FamilyGroup): number[][] {
  const length = group.around.length;
  const places = corners.map((side) => shell.sidePlace[side] as number);
  if (group.closed ? !closed || length !== places.length : length > places.length) return [];
  if (!closed) return places.slice(length - 1).map((_, from) => places.slice(from, from + length));
  return places.map((_, from) => turned(places, from).slice(0, length));
}
