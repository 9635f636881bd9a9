// Solving with a factor for many right sides at once, four abreast: the factor is read once for four, and
// their sums do not wait for each other.

import type { Factor } from './factor.ts';

/** Writes x of A x = b in place of each b of the list. Unknowns that were held because their pivot
 * vanished come out as 0. Throws RangeError where one is of another length. */
export function solveManyInto(factor: Factor, list: readonly Float64Array[]): void {
  const { order } = factor.symbolic;
  const n = order.length;
  const odd = list.find((one) => one.length !== n);
  if (odd) throw new RangeError(`${odd.length} numbers for ${n} unknowns`);
  const work = new Float64Array(8 * n);
  for (let from = 0; from < list.length; from += 4) {
    const four = list.slice(from, from + 4);
    work.fill(0, 0, 4 * n);
    four.forEach((b, c) => {
      for (let k = 0; k < n; k++) work[4 * k + c] = b[order[k]];
    });
    forward(factor, work);
    for (let k = 0; k < n; k++) for (let c = 4 * k; c < 4 * k + 4; c++) work[c] /= factor.d[k];
    backward(factor, work, 4 * n);
    four.forEach((x, c) => {
      for (let k = 0; k < n; k++) x[order[k]] = work[4 * k + c];
    });
  }
}

/** Takes from the four of row `to` the row of values at `at` times those from `first` on. */
function takeRow(
  y: Float64Array,
  values: Float64Array,
  at: number,
  first: number,
  count: number,
  to: number,
): void {
  let [s, t, u, v] = [0, 0, 0, 0];
  for (let k = 0, q = 4 * first; k < count; k++, q += 4) {
    const value = values[at + k];
    s += value * y[q];
    t += value * y[q + 1];
    u += value * y[q + 2];
    v += value * y[q + 3];
  }
  y[4 * to] -= s;
  y[4 * to + 1] -= t;
  y[4 * to + 2] -= u;
  y[4 * to + 3] -= v;
}

function forward({ symbolic, values }: Factor, y: Float64Array): void {
  const { column, rowStart, row, valueStart } = symbolic;
  for (let s = 0; s + 1 < column.length; s++) {
    const first = column[s];
    const columns = column[s + 1] - first;
    let at = valueStart[s];
    for (let i = 0; i < columns; i++, at += columns) takeRow(y, values, at, first, i, first + i);
    for (let r = rowStart[s]; r < rowStart[s + 1]; r++, at += columns)
      takeRow(y, values, at, first, columns, row[r]);
  }
}

/** Adds the row of values at `at` times the four at `from` to the four of each sum. */
function addRow(
  y: Float64Array,
  values: Float64Array,
  at: number,
  from: number,
  sums: number,
  count: number,
): void {
  const [a, b, c, d] = [y[from], y[from + 1], y[from + 2], y[from + 3]];
  for (let k = 0, q = sums; k < count; k++, q += 4) {
    const value = values[at + k];
    y[q] += value * a;
    y[q + 1] += value * b;
    y[q + 2] += value * c;
    y[q + 3] += value * d;
  }
}

function backward({ symbolic, values }: Factor, y: Float64Array, sums: number): void {
  const { column, rowStart, row, valueStart } = symbolic;
  for (let s = column.length - 2; s >= 0; s--) {
    const first = column[s];
    const columns = column[s + 1] - first;
    y.fill(0, sums, sums + 4 * columns);
    let at = valueStart[s] + columns * columns;
    for (let r = rowStart[s]; r < rowStart[s + 1]; r++, at += columns)
      addRow(y, values, at, 4 * row[r], sums, columns);
    for (let i = columns - 1; i >= 0; i--) {
      const to = 4 * (first + i);
      for (let c = 0; c < 4; c++) y[to + c] -= y[sums + 4 * i + c];
      addRow(y, values, valueStart[s] + i * columns, to, sums, i);
    }
  }
}
