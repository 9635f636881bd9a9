// The dense work of the sparse factor, in place on flat arrays: these are the hot loops, so rows are
// taken four and columns two at a time to keep the sums in registers.

/** Factors the left block of a front: `values` from `at` holds (columns + rows) rows of `columns`
 * numbers, of which the lower triangle of the top is read. Afterwards it holds the unit lower
 * triangular L (its diagonal not set) and `d` from `dAt` the pivots. `scaled` receives, for the rows
 * below, L times D. A pivot whose size is no more than `least[dAt + k]` is taken as infinite: the
 * unknown is held; `onWeak` is told its place. */
export function factorLeftInto(
  values: Float64Array,
  at: number,
  columns: number,
  rows: number,
  d: Float64Array,
  dAt: number,
  scaled: Float64Array,
  least: Float64Array,
  onWeak: (place: number) => void,
): void {
  factorTop(values, at, columns, d, dAt, least, onWeak);
  const below = at + columns * columns;
  let i = 0;
  for (; i + 3 < rows; i += 4)
    solveFour(values, at, columns, below + i * columns, scaled, i * columns);
  for (; i < rows; i++) solveOne(values, at, columns, below + i * columns, scaled, i * columns);
  for (let r = 0; r < rows; r++)
    for (let k = 0; k < columns; k++)
      values[below + r * columns + k] = scaled[r * columns + k] / d[dAt + k];
}

function factorTop(
  values: Float64Array,
  at: number,
  columns: number,
  d: Float64Array,
  dAt: number,
  least: Float64Array,
  onWeak: (place: number) => void,
): void {
  for (let i = 0; i < columns; i++) {
    const ri = at + i * columns;
    let j = 0;
    for (; j + 1 < i; j += 2) {
      const rj = at + j * columns;
      const rk = rj + columns;
      let a = values[ri + j];
      let b = values[ri + j + 1];
      for (let k = 0; k < j; k++) {
        const x = values[ri + k];
        a -= x * values[rj + k];
        b -= x * values[rk + k];
      }
      values[ri + j] = a;
      values[ri + j + 1] = b - a * values[rk + j];
    }
    for (; j < i; j++) {
      const rj = at + j * columns;
      let a = values[ri + j];
      for (let k = 0; k < j; k++) a -= values[ri + k] * values[rj + k];
      values[ri + j] = a;
    }
    let pivot = values[ri + i];
    for (let k = 0; k < i; k++) {
      const x = values[ri + k];
      const l = x / d[dAt + k];
      pivot -= x * l;
      values[ri + k] = l;
    }
    if (!(Math.abs(pivot) > least[dAt + i])) {
      onWeak(dAt + i);
      pivot = Number.POSITIVE_INFINITY;
    }
    d[dAt + i] = pivot;
  }
}

function solveFour(
  values: Float64Array,
  at: number,
  columns: number,
  row: number,
  scaled: Float64Array,
  to: number,
): void {
  const t1 = to + columns;
  const t2 = t1 + columns;
  const t3 = t2 + columns;
  let j = 0;
  for (; j + 1 < columns; j += 2) {
    const p = at + j * columns;
    const q = p + columns;
    let a0 = 0;
    let a1 = 0;
    let a2 = 0;
    let a3 = 0;
    let b0 = 0;
    let b1 = 0;
    let b2 = 0;
    let b3 = 0;
    for (let k = 0; k < j; k++) {
      const x = values[p + k];
      const y = values[q + k];
      const s0 = scaled[to + k];
      const s1 = scaled[t1 + k];
      const s2 = scaled[t2 + k];
      const s3 = scaled[t3 + k];
      a0 += x * s0;
      b0 += y * s0;
      a1 += x * s1;
      b1 += y * s1;
      a2 += x * s2;
      b2 += y * s2;
      a3 += x * s3;
      b3 += y * s3;
    }
    const l = values[q + j];
    const r = row + j;
    a0 = values[r] - a0;
    a1 = values[r + columns] - a1;
    a2 = values[r + 2 * columns] - a2;
    a3 = values[r + 3 * columns] - a3;
    scaled[to + j] = a0;
    scaled[t1 + j] = a1;
    scaled[t2 + j] = a2;
    scaled[t3 + j] = a3;
    scaled[to + j + 1] = values[r + 1] - b0 - l * a0;
    scaled[t1 + j + 1] = values[r + columns + 1] - b1 - l * a1;
    scaled[t2 + j + 1] = values[r + 2 * columns + 1] - b2 - l * a2;
    scaled[t3 + j + 1] = values[r + 3 * columns + 1] - b3 - l * a3;
  }
  if (j < columns)
    for (let i = 0; i < 4; i++) {
      const t = to + i * columns;
      let a = values[row + i * columns + j];
      for (let k = 0; k < j; k++) a -= values[at + j * columns + k] * scaled[t + k];
      scaled[t + j] = a;
    }
}

function solveOne(
  values: Float64Array,
  at: number,
  columns: number,
  row: number,
  scaled: Float64Array,
  to: number,
): void {
  for (let j = 0; j < columns; j++) {
    const p = at + j * columns;
    let a = values[row + j];
    for (let k = 0; k < j; k++) a -= values[p + k] * scaled[to + k];
    scaled[to + j] = a;
  }
}

/** Subtracts L D Lᵀ of the rows below from the update: `update` from `to`, `rows` × `rows` by rows,
 * its lower triangle right afterwards (what stands above it is not). */
export function subtractOuterInto(
  update: Float64Array,
  to: number,
  values: Float64Array,
  below: number,
  columns: number,
  rows: number,
  scaled: Float64Array,
): void {
  let i = 0;
  for (; i + 3 < rows; i += 4)
    subtractFour(update, to + i * rows, values, below, columns, rows, scaled, i);
  for (; i < rows; i++)
    for (let j = 0; j <= i; j++) {
      let a = 0;
      for (let k = 0; k < columns; k++)
        a += scaled[i * columns + k] * values[below + j * columns + k];
      update[to + i * rows + j] -= a;
    }
}

function subtractFour(
  update: Float64Array,
  to: number,
  values: Float64Array,
  below: number,
  columns: number,
  rows: number,
  scaled: Float64Array,
  i: number,
): void {
  const g0 = i * columns;
  const g1 = g0 + columns;
  const g2 = g1 + columns;
  const g3 = g2 + columns;
  for (let j = 0; j < i + 4; j += 2) {
    const p = below + j * columns;
    const q = p + columns;
    let a0 = 0;
    let a1 = 0;
    let a2 = 0;
    let a3 = 0;
    let b0 = 0;
    let b1 = 0;
    let b2 = 0;
    let b3 = 0;
    for (let k = 0; k < columns; k++) {
      const x = values[p + k];
      const y = values[q + k];
      const s0 = scaled[g0 + k];
      const s1 = scaled[g1 + k];
      const s2 = scaled[g2 + k];
      const s3 = scaled[g3 + k];
      a0 += x * s0;
      b0 += y * s0;
      a1 += x * s1;
      b1 += y * s1;
      a2 += x * s2;
      b2 += y * s2;
      a3 += x * s3;
      b3 += y * s3;
    }
    const u = to + j;
    update[u] -= a0;
    update[u + 1] -= b0;
    update[u + rows] -= a1;
    update[u + rows + 1] -= b1;
    update[u + 2 * rows] -= a2;
    update[u + 2 * rows + 1] -= b2;
    update[u + 3 * rows] -= a3;
    update[u + 3 * rows + 1] -= b3;
  }
}
