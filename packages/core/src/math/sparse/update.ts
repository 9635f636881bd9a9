// Changing a factor when a few outer products are added to its matrix: A + Σ ± w wᵀ, on the same
// pattern. Only the columns on the way from the first unknown touched to the root change (method C1
// of P. E. Gill, G. H. Golub, W. Murray, M. A. Saunders, Math. Comp. 28 (1974) 505, along the paths of
// T. A. Davis and W. W. Hager, SIAM J. Matrix Anal. Appl. 22 (2001) 997). In place: a hot loop.

import type { SymbolicFactor } from './symbolic.ts';

/** Vectors of an update: vector v has `value[k]` at unknown `unknown[k]`, k from start[v]; unknowns
 * of −1 are left out. All unknowns of one vector must be coupled with each other in the pattern. */
export interface UpdateVectors {
  readonly start: Int32Array;
  readonly unknown: Int32Array;
  readonly value: Float64Array;
}

/** Vectors that are taken through the factor together. */
const AT_ONCE = 16;

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
  const n = symbolic.order.length;
  const width = Math.min(AT_ONCE, count);
  const spread = new Float64Array(n * width);
  for (let first = 0; first < count; first += width) {
    const last = Math.min(count, first + width);
    const touched = new Uint8Array(symbolic.parent.length);
    for (let v = first; v < last; v++)
      for (let k = vectors.start[v]; k < vectors.start[v + 1]; k++) {
        if (vectors.unknown[k] < 0) continue;
        const position = symbolic.position[vectors.unknown[k]];
        spread[position * width + v - first] += vectors.value[k];
        touched[superAt(symbolic, position)] = 1;
      }
    walk(values, d, symbolic, spread, width, touched, sign);
  }
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
  symbolic: SymbolicFactor,
  spread: Float64Array,
  width: number,
  touched: Uint8Array,
  sign: number,
): void {
  const { column, rowStart, row, valueStart, parent } = symbolic;
  const alpha = new Float64Array(width).fill(sign);
  // By column of the supernode and vector: what is taken from the vector, what is given to L.
  const taken = new Float64Array(width * widest(column));
  const given = new Float64Array(taken.length);
  for (let s = 0; s < parent.length; s++) {
    if (!touched[s]) continue;
    if (parent[s] >= 0) touched[parent[s]] = 1;
    const first = column[s];
    const columns = column[s + 1] - first;
    for (let j = 0; j < columns; j++) {
      const at = first + j;
      for (let v = 0; v < width; v++) {
        const p = spread[at * width + v];
        const before = d[at];
        const after = before + alpha[v] * p * p;
        taken[j * width + v] = p;
        given[j * width + v] = p === 0 ? 0 : (alpha[v] * p) / after;
        if (p !== 0) {
          alpha[v] *= before / after;
          d[at] = after;
        }
        spread[at * width + v] = 0;
      }
      for (let i = j + 1; i < columns; i++)
        passRow(
          values,
          valueStart[s] + i * columns + j,
          1,
          spread,
          first + i,
          width,
          taken,
          given,
          j,
        );
    }
    let at = valueStart[s] + columns * columns;
    let r = rowStart[s];
    for (; r + 3 < rowStart[s + 1]; r += 4, at += 4 * columns)
      passFourRows(values, at, columns, spread, row, r, width, taken, given);
    for (; r < rowStart[s + 1]; r++, at += columns)
      passRow(values, at, columns, spread, row[r], width, taken, given, 0);
  }
}

/** Takes all vectors through `columns` entries of one row of L, from column `from` of the supernode. */
function passRow(
  values: Float64Array,
  at: number,
  columns: number,
  spread: Float64Array,
  position: number,
  width: number,
  taken: Float64Array,
  given: Float64Array,
  from: number,
): void {
  const w = position * width;
  for (let j = 0; j < columns; j++) {
    let l = values[at + j];
    const p = (from + j) * width;
    for (let v = 0; v < width; v++) {
      const x = spread[w + v] - taken[p + v] * l;
      spread[w + v] = x;
      l += given[p + v] * x;
    }
    values[at + j] = l;
  }
}

/** The same for four rows of L at once: what is done to one waits for what was, four fill the wait. */
function passFourRows(
  values: Float64Array,
  at: number,
  columns: number,
  spread: Float64Array,
  row: Int32Array,
  r: number,
  width: number,
  taken: Float64Array,
  given: Float64Array,
): void {
  const w0 = row[r] * width;
  const w1 = row[r + 1] * width;
  const w2 = row[r + 2] * width;
  const w3 = row[r + 3] * width;
  for (let j = 0; j < columns; j++) {
    const a = at + j;
    let l0 = values[a];
    let l1 = values[a + columns];
    let l2 = values[a + 2 * columns];
    let l3 = values[a + 3 * columns];
    const p = j * width;
    for (let v = 0; v < width; v++) {
      const t = taken[p + v];
      const g = given[p + v];
      const x0 = spread[w0 + v] - t * l0;
      const x1 = spread[w1 + v] - t * l1;
      const x2 = spread[w2 + v] - t * l2;
      const x3 = spread[w3 + v] - t * l3;
      spread[w0 + v] = x0;
      spread[w1 + v] = x1;
      spread[w2 + v] = x2;
      spread[w3 + v] = x3;
      l0 += g * x0;
      l1 += g * x1;
      l2 += g * x2;
      l3 += g * x3;
    }
    values[a] = l0;
    values[a + columns] = l1;
    values[a + 2 * columns] = l2;
    values[a + 3 * columns] = l3;
  }
}

function widest(column: Int32Array): number {
  let most = 0;
  for (let s = 0; s + 1 < column.length; s++) most = Math.max(most, column[s + 1] - column[s]);
  return most;
}
