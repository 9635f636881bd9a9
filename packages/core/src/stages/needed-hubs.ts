// Which hubs of a patch are needed, all of them asked at once. Where A is the patch's part of the ties'
// matrix less LOOSE and B its inverse, leaving a hub out leaves as many negative eigenvalues as A has
// less those of the hub's own block of B (E. V. Haynsworth, Linear Algebra Appl. 1 (1968) 73). The
// inverse is made and taken back by sweeps, unknown by unknown (A. E. Beaton, 1964).

import type { TiesByHub } from './patches.ts';
import { LOOSE } from './tolerances.ts';

/** A pivot counts as vanished below this: far below LOOSE. */
const VANISHED = 1e-12;

/** Not yet swept in, in, and out again. */
const [IN, OUT] = [1, 2];

/** Hubs of a patch without those that need not be, the last ones left out first: what is left is a
 * patch, and is none without any one of them. All of them must be free; empty where they are no
 * patch, null where a pivot vanishes. */
export function neededHubs(ties: TiesByHub, hubs: readonly number[]): readonly number[] | null {
  const { all, end } = unknownsInOrder(ties, hubs);
  const n = all.length;
  const a = denseLessLoose(ties, all);
  const live = new Uint8Array(n);
  let negative = 0;
  for (let k = 0; k < n; k++) {
    const pivot = sweepInto(a, n, k, live);
    if (pivot === 0) return null;
    if (pivot < 0) negative++;
  }
  const kept = new Uint8Array(hubs.length).fill(1);
  for (let h = hubs.length - 1; h >= 0 && negative > 0; h--) {
    const [from, to] = [h === 0 ? 0 : end[h - 1], end[h]];
    const own = negativeOf(a, n, from, to);
    if (own >= negative) continue;
    negative -= own;
    kept[h] = 0;
    for (let k = from; k < to; k++) if (sweepInto(a, n, k, live) === 0) return null;
  }
  return negative === 0 ? [] : hubs.filter((_, h) => kept[h] === 1);
}

/** Unknowns of hubs, one hub after the other, and where each hub's end. */
export function unknownsInOrder(
  { unknowns }: TiesByHub,
  hubs: readonly number[],
): { readonly all: Int32Array; readonly end: Int32Array } {
  const end = new Int32Array(hubs.length);
  let count = 0;
  hubs.forEach((hub, h) => {
    count += (unknowns.get(hub) as readonly number[]).length;
    end[h] = count;
  });
  const all = new Int32Array(count);
  let k = 0;
  for (const hub of hubs) for (const one of unknowns.get(hub) as readonly number[]) all[k++] = one;
  return { all, end };
}

/** Part of the ties' matrix less LOOSE, dense, both triangles. */
function denseLessLoose(ties: TiesByHub, all: Int32Array): Float64Array {
  const { start, other, value, place } = ties;
  const n = all.length;
  const a = new Float64Array(n * n);
  for (let k = 0; k < n; k++) place[all[k]] = k;
  for (let k = 0; k < n; k++) {
    for (let e = start[all[k]]; e < start[all[k] + 1]; e++) {
      const at = place[other[e]];
      if (at >= 0) a[k * n + at] = value[e];
    }
    a[k * n + k] -= LOOSE;
  }
  for (let k = 0; k < n; k++) place[all[k]] = -1;
  return a;
}

/** Sweeps unknown k in, or out where `live` says that it is in; the pivot, 0 where it vanishes. Lower
 * triangle; what is in holds minus the inverse, what was swept out is touched no more. */
function sweepInto(a: Float64Array, n: number, k: number, live: Uint8Array): number {
  const pivot = a[k * n + k];
  if (Math.abs(pivot) < VANISHED) return 0;
  const out = live[k] === IN;
  const column = new Float64Array(n);
  for (let i = 0; i < n; i++) if (live[i] !== OUT) column[i] = i < k ? a[k * n + i] : a[i * n + k];
  column[k] = 0;
  for (let i = 0; i < n; i++) {
    if (column[i] === 0) continue;
    const by = column[i] / pivot;
    for (let j = 0; j <= i; j++) a[i * n + j] -= by * column[j];
    a[Math.max(i, k) * n + Math.min(i, k)] = out ? -by : by;
  }
  a[k * n + k] = -1 / pivot;
  live[k] = out ? OUT : IN;
  return pivot;
}

/** Negative eigenvalues of a block of the inverse, by the signs of its pivots; all of its unknowns are
 * in. A pivot that vanishes counts as none. */
function negativeOf(a: Float64Array, n: number, from: number, to: number): number {
  const size = to - from;
  const block = new Float64Array(size * size);
  for (let i = 0; i < size; i++)
    for (let j = 0; j <= i; j++) block[i * size + j] = -a[(from + i) * n + from + j];
  let negative = 0;
  for (let k = 0; k < size; k++) {
    const pivot = block[k * size + k];
    if (Math.abs(pivot) < VANISHED) continue;
    if (pivot < 0) negative++;
    for (let i = k + 1; i < size; i++)
      for (let j = k + 1; j <= i; j++)
        block[i * size + j] -= (block[i * size + k] * block[j * size + k]) / pivot;
  }
  return negative;
}
