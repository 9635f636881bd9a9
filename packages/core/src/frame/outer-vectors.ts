// The stiffness of an element as a sum of outer products, as few as its rank: what a factor is changed
// by when the element is added. An element that has more natural strains than ways to be strained (a
// bent facet has fifteen for twelve) gives no more vectors than that.

import type { Natural } from './elements/element.ts';

/** Vectors (width long, 0 where `unknown` is −1: held there) whose outer products add up to an
 * element's stiffness between its unknowns. None for one without stiffness. */
export function outerVectors(natural: Natural, unknown: ArrayLike<number>): Float64Array[] {
  const strained = rootRows(natural);
  for (const row of strained) for (let k = 0; k < row.length; k++) if (unknown[k] < 0) row[k] = 0;
  return independentRows(strained);
}

/** The rows of the strains, combined by the root of the moduli (Cholesky; moduli of 0, as at hinges,
 * give none): their outer products add up to the stiffness. */
function rootRows({ width, rows, moduli }: Natural): Float64Array[] {
  const count = rows.length / width;
  const left = moduli.slice();
  const vectors: Float64Array[] = [];
  for (let k = 0; k < count; k++) {
    const pivot = left[k * count + k];
    if (!(pivot > 1e-14 * moduli[k * count + k])) continue;
    const root = Math.sqrt(pivot);
    const column = Float64Array.from({ length: count }, (_, i) => left[i * count + k] / root);
    for (let i = k; i < count; i++)
      for (let j = k; j < count; j++) left[i * count + j] -= column[i] * column[j];
    const vector = new Float64Array(width);
    for (let i = k; i < count; i++)
      if (column[i] !== 0)
        for (let j = 0; j < width; j++) vector[j] += column[i] * rows[i * width + j];
    vectors.push(vector);
  }
  return vectors;
}

/** Rows B as fewer rows R with RᵀR = BᵀB: reflections (Householder) that clear one column after the
 * other, each time the one that has most left of what it had. In place. */
function independentRows(rows: Float64Array[]): Float64Array[] {
  const width = rows[0]?.length ?? 0;
  const columns = [...Array(width).keys()].filter((k) => sumOfSquares(rows, 0, k) > 0);
  const whole = columns.map((k) => sumOfSquares(rows, 0, k));
  for (let r = 0; r < rows.length; r++) {
    let [best, most] = [-1, NOTHING_LEFT];
    columns.forEach((k, c) => {
      const part = sumOfSquares(rows, r, k) / whole[c];
      if (part > most) [best, most] = [k, part];
    });
    if (best < 0) return rows.slice(0, r);
    reflect(rows, r, best);
  }
  return rows;
}

/** Part of the sum of its squares at which a column counts as cleared: rounding, squared. */
const NOTHING_LEFT = 1e-26;

function sumOfSquares(rows: readonly Float64Array[], from: number, column: number): number {
  let sum = 0;
  for (let r = from; r < rows.length; r++) sum += rows[r][column] ** 2;
  return sum;
}

/** Turns the rows from r on so that of column k only row r is left. */
function reflect(rows: Float64Array[], r: number, k: number): void {
  const size = Math.sqrt(sumOfSquares(rows, r, k));
  const mirror = rows.slice(r).map((row) => row[k]);
  mirror[0] += mirror[0] < 0 ? -size : size;
  const square = mirror.reduce((sum, x) => sum + x * x, 0);
  for (let j = 0; j < rows[r].length; j++) {
    let dot = 0;
    mirror.forEach((x, i) => {
      dot += x * rows[r + i][j];
    });
    const part = (2 * dot) / square;
    mirror.forEach((x, i) => {
      rows[r + i][j] -= part * x;
    });
  }
  for (let i = r + 1; i < rows.length; i++) rows[i][k] = 0;
}
