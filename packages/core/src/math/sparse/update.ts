// Changing a factor when a few outer products are added to its matrix: A + Σ ± w wᵀ, on the same
// pattern. Only the columns on the way from the first unknown touched to the root change (along the
// paths of T. A. Davis and W. W. Hager, SIAM J. Matrix Anal. Appl. 22 (2001) 997; after P. E. Gill,
// G. H. Golub, W. Murray, M. A. Saunders, Math. Comp. 28 (1974) 505, four vectors W at once, A + W M Wᵀ
// with a small square M, so that nothing waits for its neighbour). In place: a hot loop.

import type { SymbolicFactor } from './symbolic.ts';

/** Vectors of an update: vector v has `value[k]` at unknown `unknown[k]`, k from start[v]; unknowns
 * of −1 are left out. All unknowns of one vector must be coupled with each other in the pattern. */
export interface UpdateVectors {
  readonly start: Int32Array;
  readonly unknown: Int32Array;
  readonly value: Float64Array;
}

/** Vectors that are taken through the factor together: as many as the registers hold for two rows. */
const FOUR = 4;

/** Adds `sign` times the outer product of each vector to the matrix that `values` and `d` factor.
 * A pivot may come out as 0 or of the other sign: the caller looks at `d`. */
export function updateFactorInto(
  values: Float64Array,
  d: Float64Array,
  symbolic: SymbolicFactor,
  vectors: UpdateVectors,
  sign: 1 | -1,
): void {
  const count = vectors.start.length - 1;
  // By position and vector: what of the four is not yet taken through. Zeros again after each walk.
  const left = new Float64Array(FOUR * symbolic.order.length);
  const most = FOUR * widest(symbolic.column);
  const work: Four = { left, taken: new Float64Array(most), given: new Float64Array(most) };
  for (let first = 0; first < count; first += FOUR) {
    const touched = new Uint8Array(symbolic.parent.length);
    for (let v = first; v < Math.min(count, first + FOUR); v++)
      for (let k = vectors.start[v]; k < vectors.start[v + 1]; k++) {
        if (vectors.unknown[k] < 0) continue;
        const position = symbolic.position[vectors.unknown[k]];
        left[position * FOUR + v - first] += vectors.value[k];
        touched[superAt(symbolic, position)] = 1;
      }
    walk(values, d, symbolic, work, touched, sign);
  }
}

/** Four vectors on their way. */
interface Four {
  readonly left: Float64Array;
  /** By column of the supernode and vector: what is taken from the vectors, what is given to L. */
  readonly taken: Float64Array;
  readonly given: Float64Array;
}

function superAt({ column }: SymbolicFactor, position: number): number {
  let low = 0;
  let high = column.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (column[middle] <= position) low = middle;
    else high = middle - 1;
  }
  return low;
}

function walk(
  values: Float64Array,
  d: Float64Array,
  { column, rowStart, row, valueStart, parent }: SymbolicFactor,
  work: Four,
  touched: Uint8Array,
  sign: number,
): void {
  const middle = new Float64Array(FOUR * FOUR);
  for (let v = 0; v < FOUR; v++) middle[v * FOUR + v] = sign;
  for (let s = 0; s < parent.length; s++) {
    if (!touched[s]) continue;
    if (parent[s] >= 0) touched[parent[s]] = 1;
    const first = column[s];
    const columns = column[s + 1] - first;
    let at = valueStart[s];
    // The square on top, two rows at a time: the columns before them, then their own pivots.
    for (let i = 0; i < columns; i += 2, at += 2 * columns) {
      const w = (first + i) * FOUR;
      if (i + 1 === columns) passOneRow(values, at, 0, i, work, w);
      else passTwoRows(values, at, columns, i, work, w, w + FOUR);
      passPivot(d, first + i, i, work, middle);
      if (i + 1 === columns) break;
      passOneRow(values, at + columns, i, i + 1, work, w + FOUR);
      passPivot(d, first + i + 1, i + 1, work, middle);
    }
    at = valueStart[s] + columns * columns;
    let r = rowStart[s];
    for (; r + 1 < rowStart[s + 1]; r += 2, at += 2 * columns)
      passTwoRows(values, at, columns, columns, work, row[r] * FOUR, row[r + 1] * FOUR);
    if (r < rowStart[s + 1]) passOneRow(values, at, 0, columns, work, row[r] * FOUR);
  }
}

/** The pivot at a position, with what is left there of the vectors, p: d' = d + pᵀ M p, then
 * M' = M − M p pᵀ M / d'. */
function passPivot(
  d: Float64Array,
  position: number,
  j: number,
  { left, taken, given }: Four,
  middle: Float64Array,
): void {
  const w = position * FOUR;
  const to = j * FOUR;
  let after = d[position];
  let none = true;
  for (let v = 0; v < FOUR; v++) {
    let sum = 0;
    for (let u = 0; u < FOUR; u++) sum += middle[v * FOUR + u] * left[w + u];
    given[to + v] = sum;
    taken[to + v] = left[w + v];
    if (left[w + v] !== 0) none = false;
    after += sum * left[w + v];
  }
  left.fill(0, w, w + FOUR);
  if (none) return;
  d[position] = after;
  for (let v = 0; v < FOUR; v++) {
    const part = given[to + v] / after;
    for (let u = v; u < FOUR; u++) {
      middle[v * FOUR + u] -= part * given[to + u];
      middle[u * FOUR + v] = middle[v * FOUR + u];
    }
  }
  for (let v = 0; v < FOUR; v++) given[to + v] /= after;
}

/** Takes the vectors through columns `from` to `to` of one row of L. */
function passOneRow(
  values: Float64Array,
  at: number,
  from: number,
  to: number,
  { left, taken, given }: Four,
  w: number,
): void {
  for (let j = from; j < to; j++) {
    const l = values[at + j];
    let sum = l;
    for (let v = 0; v < FOUR; v++) {
      left[w + v] -= taken[j * FOUR + v] * l;
      sum += given[j * FOUR + v] * left[w + v];
    }
    values[at + j] = sum;
  }
}

/** The same through the first `to` columns of two rows that lie `columns` apart: eight sums. */
function passTwoRows(
  values: Float64Array,
  at: number,
  columns: number,
  to: number,
  { left, taken, given }: Four,
  w: number,
  z: number,
): void {
  let a0 = left[w];
  let a1 = left[w + 1];
  let a2 = left[w + 2];
  let a3 = left[w + 3];
  let b0 = left[z];
  let b1 = left[z + 1];
  let b2 = left[z + 2];
  let b3 = left[z + 3];
  for (let j = 0, p = 0; j < to; j++, p += 4) {
    const l = values[at + j];
    const m = values[at + columns + j];
    const t0 = taken[p];
    const t1 = taken[p + 1];
    const t2 = taken[p + 2];
    const t3 = taken[p + 3];
    a0 -= t0 * l;
    b0 -= t0 * m;
    a1 -= t1 * l;
    b1 -= t1 * m;
    a2 -= t2 * l;
    b2 -= t2 * m;
    a3 -= t3 * l;
    b3 -= t3 * m;
    const g0 = given[p];
    const g1 = given[p + 1];
    const g2 = given[p + 2];
    const g3 = given[p + 3];
    values[at + j] = l + (g0 * a0 + g1 * a1) + (g2 * a2 + g3 * a3);
    values[at + columns + j] = m + (g0 * b0 + g1 * b1) + (g2 * b2 + g3 * b3);
  }
  left[w] = a0;
  left[w + 1] = a1;
  left[w + 2] = a2;
  left[w + 3] = a3;
  left[z] = b0;
  left[z + 1] = b1;
  left[z + 2] = b2;
  left[z + 3] = b3;
}

function widest(column: Int32Array): number {
  let most = 0;
  for (let s = 0; s + 1 < column.length; s++) most = Math.max(most, column[s + 1] - column[s]);
  return most;
}
