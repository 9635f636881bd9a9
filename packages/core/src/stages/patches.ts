// Patches: sets of hubs that have a free movement though every other hub is held. Whatever props a
// stage is given, one of them must stand under each patch; so patches prove how many it takes.

import { neededHubs, unknownsInOrder } from './needed-hubs.ts';
import type { Tied } from './tied.ts';
import { FAR_TURNS, LOOSE, MOST_PATCH, NEAR_PATCH, NEAR_TURNS } from './tolerances.ts';

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
  /** Working room, an entry for each unknown: −1 between uses. */
  readonly place: Int32Array;
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
  return { tied, unknowns, beside, ...rows, place: new Int32Array(tied.matrix.n).fill(-1) };
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
  const reached = reachedFrom(ties, from, list);
  const is = new Set(reached);
  return [...reached, ...list.filter((hub) => !is.has(hub))];
}

/** Hubs of a list that ties reach from one of them through others, from the nearest on; `most` of
 * them. */
export function reachedFrom(
  ties: TiesByHub,
  from: number,
  list: Iterable<number>,
  most = Number.POSITIVE_INFINITY,
): number[] {
  const left = new Set(list);
  const order = [from];
  left.delete(from);
  for (let k = 0; k < order.length && order.length < most; k++)
    for (const hub of ties.beside.get(order[k] as number) ?? [])
      if (left.delete(hub)) order.push(hub);
  return order.slice(0, most);
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
  // goes out, and so on; once few are left the others that are needed are found at once.
  for (let needed = 0; ; needed++) {
    const length = firstPatch(ties, list);
    if (length === 0) return null;
    const many = length > NEAR_PATCH;
    if (length <= needed || (many && needed >= FAR_TURNS)) return ascending(list.slice(0, length));
    const last = list[length - 1] as number;
    const rest = nearestFirst(ties, last, list.slice(needed, length));
    list = [...list.slice(0, needed), ...rest];
    if (many || needed < NEAR_TURNS) continue;
    const least = neededHubs(ties, list);
    if (least !== null && firstPatch(ties, least) > 0) return ascending(least);
  }
}

const ascending = (hubs: readonly number[]): Patch => [...hubs].sort((a, b) => a - b);

/** A patch of a stage like this one, as far as it is one here: its first hubs, from one of them on;
 * null where it is none any more. */
export function stillPatch(ties: TiesByHub, patch: Patch): Patch | null {
  const hubs = patch.filter((hub) => ties.unknowns.has(hub));
  if (hubs.length === 0) return null;
  const order = nearestFirst(ties, hubs[0] as number, hubs);
  const length = firstPatch(ties, order);
  return length === 0 ? null : ascending(order.slice(0, length));
}

/** How many of the first hubs are a patch; 0 where all are none. */
function firstPatch(ties: TiesByHub, hubs: readonly number[]): number {
  const { all, end } = unknownsInOrder(ties, hubs);
  for (let k = 0; k < all.length; k++) ties.place[all[k]] = k;
  const at = firstNegative(ties, all);
  for (const one of all) ties.place[one] = -1;
  return at < 0 ? 0 : end.findIndex((one) => one > at) + 1;
}

/** The first negative pivot of the unknowns' part of the ties' matrix less LOOSE, −1 where there is
 * none: up to it the part is positive definite. L D Lᵀ row by row. */
function firstNegative({ start, other, value, place }: TiesByHub, all: Int32Array): number {
  // Row k of L from its first entry on, at rowAt[k] − first[k] + column.
  const first = new Int32Array(all.length);
  const rowAt = new Int32Array(all.length + 1);
  for (let k = 0; k < all.length; k++) {
    first[k] = k;
    for (let e = start[all[k]]; e < start[all[k] + 1]; e++) {
      const at = place[other[e]];
      if (at >= 0 && at < first[k]) first[k] = at;
    }
    rowAt[k + 1] = rowAt[k] + k - first[k];
  }
  const rows = new Float64Array(rowAt[all.length]);
  const d = new Float64Array(all.length);
  for (let k = 0; k < all.length; k++) {
    const i = all[k];
    const mine = rowAt[k] - first[k];
    let pivot = -LOOSE;
    for (let e = start[i]; e < start[i + 1]; e++) {
      const at = place[other[e]];
      if (at === k) pivot += value[e];
      else if (at >= 0 && at < k) rows[mine + at] = value[e];
    }
    for (let j = first[k]; j < k; j++) {
      const from = Math.max(first[k], first[j]);
      rows[mine + j] -= dotWithin(rows, mine + from, rowAt[j] - first[j] + from, j - from);
    }
    for (let j = first[k]; j < k; j++) {
      const x = rows[mine + j];
      const l = x / d[j];
      pivot -= x * l;
      rows[mine + j] = l;
    }
    if (pivot < 0) return k;
    d[k] = pivot;
  }
  return -1;
}

/** Product of two runs of an array, in four sums that do not wait for each other. */
function dotWithin(array: Float64Array, a: number, b: number, count: number): number {
  let [s, t, u, v] = [0, 0, 0, 0];
  let c = 0;
  for (; c + 3 < count; c += 4) {
    s += array[a + c] * array[b + c];
    t += array[a + c + 1] * array[b + c + 1];
    u += array[a + c + 2] * array[b + c + 2];
    v += array[a + c + 3] * array[b + c + 3];
  }
  for (; c < count; c++) s += array[a + c] * array[b + c];
  return s + t + (u + v);
}
