// Patches: sets of hubs that have a free movement though every other hub is held. Whatever props a
// stage is given, one of them must stand under each patch; so patches prove how many it takes.

import type { Tied } from './tied.ts';
import { FAR_TURNS, LOOSE, MOST_PATCH, NEAR_PATCH } from './tolerances.ts';

/** Hubs of a patch, ascending. */
export type Patch = readonly number[];

/** The ties, hub by hub. */
export interface TiesByHub {
  readonly tied: Tied;
  /** Hub → its unknowns; only hubs that are free. */
  readonly unknowns: ReadonlyMap<number, readonly number[]>;
  /** Hub → hubs that ties join it to. */
  readonly beside: ReadonlyMap<number, readonly number[]>;
  /** Unknown → entries of the matrix in its row, both triangles: the other unknown, the value. */
  readonly start: Int32Array;
  readonly other: Int32Array;
  readonly value: Float64Array;
}

/** The ties of a stage, hub by hub. */
export function tiesByHub(tied: Tied): TiesByHub {
  const unknowns = new Map<number, number[]>();
  const hubOf = new Int32Array(tied.matrix.n).fill(-1);
  tied.joints.hub.forEach((hub, joint) => {
    for (let i = 3 * joint; i < 3 * joint + 3; i++) {
      const unknown = tied.unknown[i];
      if (unknown < 0) continue;
      hubOf[unknown] = hub;
      const list = unknowns.get(hub);
      if (list) list.push(unknown);
      else unknowns.set(hub, [unknown]);
    }
  });
  const rows = bothTriangles(tied);
  const beside = new Map<number, number[]>();
  for (const [hub, list] of unknowns) {
    const near = new Set<number>();
    for (const i of list)
      for (let e = rows.start[i]; e < rows.start[i + 1]; e++) {
        const one = hubOf[rows.other[e]];
        if (one >= 0 && one !== hub) near.add(one);
      }
    beside.set(hub, [...near]);
  }
  return { tied, unknowns, beside, ...rows };
}

function bothTriangles({ matrix }: Tied): Pick<TiesByHub, 'start' | 'other' | 'value'> {
  const { n, start, row, value } = matrix;
  const first = new Int32Array(n + 1);
  for (let j = 0; j < n; j++)
    for (let e = start[j]; e < start[j + 1]; e++) {
      first[j + 1]++;
      if (row[e] !== j) first[row[e] + 1]++;
    }
  for (let j = 0; j < n; j++) first[j + 1] += first[j];
  const at = first.slice();
  const other = new Int32Array(first[n]);
  const values = new Float64Array(first[n]);
  for (let j = 0; j < n; j++)
    for (let e = start[j]; e < start[j + 1]; e++) {
      const i = row[e];
      other[at[j]] = i;
      values[at[j]++] = value[e];
      if (i === j) continue;
      other[at[i]] = j;
      values[at[i]++] = value[e];
    }
  return { start: first, other, value: values };
}

/** Hubs of a list from the nearest to a hub on, counted in ties; those that no tie reaches last. */
export function nearestFirst(ties: TiesByHub, from: number, list: readonly number[]): number[] {
  const left = new Set(list);
  const order = [from];
  left.delete(from);
  for (let k = 0; k < order.length; k++)
    for (const hub of ties.beside.get(order[k] as number) ?? [])
      if (left.delete(hub)) order.push(hub);
  return [...order, ...left];
}

/** A patch among hubs in order, as few of them as need be and rather the first ones; null where
 * the first of them (`most`, MOST_PATCH where left out) are none. One of many hubs may have some
 * more than need be. Hubs that are held are left out. */
export function leastPatch(
  ties: TiesByHub,
  order: readonly number[],
  most: number = MOST_PATCH,
): Patch | null {
  let list = order.filter((hub) => ties.unknowns.has(hub)).slice(0, most);
  // What ends the shortest beginning that is a patch is needed: it goes to the front, what follows
  // goes out, and so on until all that is left is needed.
  for (let needed = 0; ; needed++) {
    const length = firstPatch(ties, list);
    if (length === 0) return null;
    if (length <= needed || (length > NEAR_PATCH && needed >= FAR_TURNS))
      return list.slice(0, length).sort((a, b) => a - b);
    const last = list[length - 1] as number;
    const rest = nearestFirst(ties, last, list.slice(needed, length));
    list = [...list.slice(0, needed), ...rest];
  }
}

/** A patch of a stage like this one, as far as it is one here: its first hubs, from one of them on;
 * null where it is none any more. */
export function stillPatch(ties: TiesByHub, patch: Patch): Patch | null {
  const hubs = patch.filter((hub) => ties.unknowns.has(hub));
  if (hubs.length === 0) return null;
  const order = nearestFirst(ties, hubs[0] as number, hubs);
  const length = firstPatch(ties, order);
  return length === 0 ? null : order.slice(0, length).sort((a, b) => a - b);
}

/** How many of the first hubs are a patch; 0 where all are none. Row by row of L D Lᵀ of their part
 * of the ties' matrix less LOOSE: up to the first negative pivot it is positive definite. */
function firstPatch(ties: TiesByHub, hubs: readonly number[]): number {
  const { unknowns, start, other, value, tied } = ties;
  const place = new Int32Array(tied.matrix.n).fill(-1);
  const end: number[] = [];
  const all: number[] = [];
  for (const hub of hubs) {
    for (const one of unknowns.get(hub) as readonly number[]) place[one] = all.push(one) - 1;
    end.push(all.length);
  }
  // Row k of L from its first entry on, at rowAt[k] − first[k] + column.
  const first = new Int32Array(all.length);
  const rowAt = new Int32Array(all.length + 1);
  all.forEach((i, k) => {
    first[k] = k;
    for (let e = start[i]; e < start[i + 1]; e++) {
      const at = place[other[e]];
      if (at >= 0 && at < first[k]) first[k] = at;
    }
    rowAt[k + 1] = rowAt[k] + k - first[k];
  });
  const rows = new Float64Array(rowAt[all.length]);
  const d = new Float64Array(all.length);
  for (let k = 0, hub = 0; k < all.length; k++) {
    while ((end[hub] as number) <= k) hub++;
    const i = all[k] as number;
    const mine = rowAt[k] - first[k];
    let pivot = -LOOSE;
    for (let e = start[i]; e < start[i + 1]; e++) {
      const at = place[other[e]];
      if (at === k) pivot += value[e];
      else if (at >= 0 && at < k) rows[mine + at] = value[e];
    }
    for (let j = first[k]; j < k; j++) {
      const theirs = rowAt[j] - first[j];
      let sum = rows[mine + j];
      for (let c = Math.max(first[k], first[j]); c < j; c++)
        sum -= rows[mine + c] * rows[theirs + c];
      rows[mine + j] = sum;
    }
    for (let j = first[k]; j < k; j++) {
      const x = rows[mine + j];
      const l = x / d[j];
      pivot -= x * l;
      rows[mine + j] = l;
    }
    if (pivot < 0) return hub + 1;
    d[k] = pivot;
  }
  return 0;
}
