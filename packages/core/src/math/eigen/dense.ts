// Eigenvalues and vectors of small full symmetric matrices by Jacobi's rotations: simple, exact to
// rounding, and quick up to some hundred rows.

import { assertNumber } from '../doors.ts';

/** Eigenvalues with their vectors. */
export interface Eigen {
  /** Ascending. */
  readonly values: Float64Array;
  /** Vector k, of length 1, at [k n … k n + n − 1]. */
  readonly vectors: Float64Array;
}

/** Sweeps over all pairs after which Jacobi's rotations have long since converged. */
const MOST_SWEEPS = 60;

/** Eigenvalues and vectors of the full symmetric n × n matrix `a`, by rows. Throws RangeError where
 * an entry is no number. */
export function symmetricEigen(a: ArrayLike<number>, n: number): Eigen {
  const m = Float64Array.from({ length: n * n }, (_, i) => a[i]);
  for (const x of m) assertNumber('an entry of the matrix', x);
  const v = new Float64Array(n * n);
  for (let i = 0; i < n; i++) v[i * n + i] = 1;
  const size = m.reduce((sum, x) => sum + x * x, 0);
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
    let off = 0;
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) off += m[p * n + q] ** 2;
    if (off <= 1e-32 * size) break;
    for (let p = 0; p < n; p++)
      for (let q = p + 1; q < n; q++) if (m[p * n + q] !== 0) rotate(m, v, n, p, q);
  }
  const order = [...Array(n).keys()].sort((i, j) => m[i * n + i] - m[j * n + j] || i - j);
  const vectors = new Float64Array(n * n);
  order.forEach((i, k) => {
    vectors.set(v.subarray(i * n, i * n + n), k * n);
  });
  return { values: Float64Array.from(order, (i) => m[i * n + i]), vectors };
}

/** Makes entry (p, q) zero; the rows of `v` are the vectors. */
function rotate(m: Float64Array, v: Float64Array, n: number, p: number, q: number): void {
  const apq = m[p * n + q];
  const theta = (m[q * n + q] - m[p * n + p]) / (2 * apq);
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
  const c = 1 / Math.sqrt(t * t + 1);
  const s = t * c;
  for (let k = 0; k < n; k++) {
    const x = m[k * n + p];
    const y = m[k * n + q];
    m[k * n + p] = c * x - s * y;
    m[k * n + q] = s * x + c * y;
  }
  for (let k = 0; k < n; k++) {
    const x = m[p * n + k];
    const y = m[q * n + k];
    m[p * n + k] = c * x - s * y;
    m[q * n + k] = s * x + c * y;
    const a = v[p * n + k];
    const b = v[q * n + k];
    v[p * n + k] = c * a - s * b;
    v[q * n + k] = s * a + c * b;
  }
}
