// Solving with a factor. Unknowns that were held because their pivot vanished come out as 0.

import { type Factor, factorize } from './factor.ts';
import { symbolicFactor } from './symbolic.ts';
import type { SymmetricMatrix } from './symmetric.ts';

/** x of A x = b. Throws RangeError where b is of another length. */
export function solve(factor: Factor, b: Float64Array): Float64Array {
  const x = new Float64Array(b.length);
  solveInto(x, factor, b, new Float64Array(2 * b.length));
  return x;
}

/** Writes x of A x = b into `x`, which may be `b` itself; `work` is twice as long as b. */
export function solveInto(
  x: Float64Array,
  factor: Factor,
  b: Float64Array,
  work: Float64Array,
): void {
  const { order } = factor.symbolic;
  const n = order.length;
  if (b.length !== n) throw new RangeError(`${b.length} numbers for ${n} unknowns`);
  for (let k = 0; k < n; k++) work[k] = b[order[k]];
  forward(factor, work);
  for (let k = 0; k < n; k++) work[k] /= factor.d[k];
  backward(factor, work, n);
  for (let k = 0; k < n; k++) x[order[k]] = work[k];
}

function forward({ symbolic, values }: Factor, y: Float64Array): void {
  const { column, rowStart, row, valueStart } = symbolic;
  for (let s = 0; s + 1 < column.length; s++) {
    const first = column[s];
    const columns = column[s + 1] - first;
    let at = valueStart[s];
    for (let i = 0; i < columns; i++, at += columns) {
      let sum = 0;
      for (let k = 0; k < i; k++) sum += values[at + k] * y[first + k];
      y[first + i] -= sum;
    }
    let r = rowStart[s];
    for (; r + 3 < rowStart[s + 1]; r += 4, at += 4 * columns) {
      let [a, b, c, e] = [0, 0, 0, 0];
      for (let k = 0; k < columns; k++) {
        const from = y[first + k];
        a += values[at + k] * from;
        b += values[at + columns + k] * from;
        c += values[at + 2 * columns + k] * from;
        e += values[at + 3 * columns + k] * from;
      }
      y[row[r]] -= a;
      y[row[r + 1]] -= b;
      y[row[r + 2]] -= c;
      y[row[r + 3]] -= e;
    }
    for (; r < rowStart[s + 1]; r++, at += columns) {
      let sum = 0;
      for (let k = 0; k < columns; k++) sum += values[at + k] * y[first + k];
      y[row[r]] -= sum;
    }
  }
}

function backward({ symbolic, values }: Factor, y: Float64Array, sums: number): void {
  const { column, rowStart, row, valueStart } = symbolic;
  for (let s = column.length - 2; s >= 0; s--) {
    const first = column[s];
    const columns = column[s + 1] - first;
    const below = valueStart[s] + columns * columns;
    y.fill(0, sums, sums + columns);
    let [r, at] = [rowStart[s], below];
    for (; r + 3 < rowStart[s + 1]; r += 4, at += 4 * columns) {
      const [a, b, c, e] = [y[row[r]], y[row[r + 1]], y[row[r + 2]], y[row[r + 3]]];
      for (let k = 0; k < columns; k++)
        y[sums + k] +=
          values[at + k] * a +
          values[at + columns + k] * b +
          (values[at + 2 * columns + k] * c + values[at + 3 * columns + k] * e);
    }
    for (; r < rowStart[s + 1]; r++, at += columns) {
      const value = y[row[r]];
      for (let k = 0; k < columns; k++) y[sums + k] += values[at + k] * value;
    }
    for (let i = columns - 1; i >= 0; i--) {
      const value = y[first + i] - y[sums + i];
      y[first + i] = value;
      const at = valueStart[s] + i * columns;
      for (let k = 0; k < i; k++) y[sums + k] += values[at + k] * value;
    }
  }
}

/** x of A x = b from scratch: order, factor, solve. Null where A is singular. */
export function solveSymmetric(matrix: SymmetricMatrix, b: Float64Array): Float64Array | null {
  const factor = factorize(symbolicFactor(matrix), matrix);
  return factor.weak.length > 0 ? null : solve(factor, b);
}
