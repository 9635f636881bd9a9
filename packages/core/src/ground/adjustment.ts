// Least squares over readings, with what a survey needs of it: corrected values, how sure each is,
// and which reading does not go with the others. Dense, for up to a few hundred unknowns. A reading
// is value = Σ coefficient · unknown + error; its residual over the deviation that residual should
// have is the test of W. Baarda (1968), as in any text on adjustment: 1 in 370 is over 3 by chance.

/** One reading, linear in the unknowns. */
export interface AdjustmentRow {
  /** Unknowns that it depends on, each once, with their coefficients. */
  readonly terms: readonly (readonly [number, number])[];
  /** What was read, less what the unknowns at 0 give. */
  readonly value: number;
  /** Its standard deviation, in its own unit; over 0. */
  readonly sd: number;
}

/** Readings adjusted. */
export interface Adjustment {
  readonly values: Float64Array;
  /** Covariance of the unknowns, n × n, from the readings' own deviations. */
  readonly covariance: Float64Array;
  /** Row → reading less what the adjusted unknowns give. */
  readonly residuals: Float64Array;
  /** Row → residual over its own standard deviation; 0 where nothing else checks the reading. */
  readonly tests: Float64Array;
}

/** A reading whose residual is known to less than this share of its deviation is checked by no
 * other. */
const UNCHECKED = 1e-6;

/** The unknowns that fit the rows best, each weighted by 1/sd²; null where the rows do not fix
 * them all. */
export function adjust(rows: readonly AdjustmentRow[], unknowns: number): Adjustment | null {
  const normal = new Float64Array(unknowns * unknowns);
  const right = new Float64Array(unknowns);
  for (const { terms, value, sd } of rows)
    for (const [i, a] of terms) {
      right[i] = (right[i] as number) + (a * value) / sd ** 2;
      for (const [j, b] of terms) {
        const at = i * unknowns + j;
        normal[at] = (normal[at] as number) + (a * b) / sd ** 2;
      }
    }
  const covariance = inverseOf(normal, unknowns);
  if (covariance === null) return null;
  const at = (i: number, j: number): number => covariance[i * unknowns + j] as number;
  const values = Float64Array.from({ length: unknowns }, (_, i) =>
    right.reduce((sum, r, j) => sum + at(i, j) * r, 0),
  );
  const residuals = Float64Array.from(
    rows,
    ({ terms, value }) => value - terms.reduce((sum, [i, a]) => sum + a * (values[i] as number), 0),
  );
  const tests = Float64Array.from(rows, ({ terms, sd }, r) => {
    let fitted = 0;
    for (const [i, a] of terms) for (const [j, b] of terms) fitted += a * b * at(i, j);
    const free = 1 - fitted / sd ** 2;
    return free < UNCHECKED ? 0 : (residuals[r] as number) / (sd * Math.sqrt(free));
  });
  return { values, covariance, residuals, tests };
}

/** A pivot this small, against the diagonal it came from, fixes nothing. */
const VANISHED = 1e-11;

/** The inverse of a symmetric positive definite matrix, by Cholesky; null where it is not. */
function inverseOf(matrix: Float64Array, n: number): Float64Array | null {
  const l = new Float64Array(n * n);
  const get = (m: Float64Array, i: number, j: number): number => m[i * n + j] as number;
  for (let j = 0; j < n; j++)
    for (let i = j; i < n; i++) {
      let sum = get(matrix, i, j);
      for (let k = 0; k < j; k++) sum -= get(l, i, k) * get(l, j, k);
      if (i > j) l[i * n + j] = sum / get(l, j, j);
      else if (sum > VANISHED * get(matrix, j, j)) l[i * n + j] = Math.sqrt(sum);
      else return null;
    }
  const inverse = new Float64Array(n * n);
  for (let column = 0; column < n; column++) {
    const x = new Float64Array(n);
    for (let i = column; i < n; i++) {
      let sum = i === column ? 1 : 0;
      for (let k = column; k < i; k++) sum -= get(l, i, k) * (x[k] as number);
      x[i] = sum / get(l, i, i);
    }
    for (let i = n - 1; i >= 0; i--) {
      let sum = x[i] as number;
      for (let k = i + 1; k < n; k++) sum -= get(l, k, i) * (inverse[k * n + column] as number);
      inverse[i * n + column] = sum / get(l, i, i);
    }
  }
  return inverse;
}
