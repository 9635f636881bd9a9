// Sparse symmetric matrices: the lower triangle by columns, diagonal included. Column j holds the
// entries start[j] … start[j + 1] − 1; their rows (≥ j) ascend and none occurs twice.

/** Pattern of a sparse symmetric matrix: the lower triangle by columns. */
export interface SymmetricPattern {
  /** Number of rows and of columns. */
  readonly n: number;
  /** First entry of each column; n + 1 long. */
  readonly start: Int32Array;
  /** Entry → row, ascending within a column. */
  readonly row: Int32Array;
}

/** A sparse symmetric matrix. */
export interface SymmetricMatrix extends SymmetricPattern {
  /** Entry → value, in the caller's unit. */
  readonly value: Float64Array;
}

/** Groups of unknowns that are coupled all with all, such as those of one finite element: group g
 * holds `unknown[start[g]] … unknown[start[g + 1] − 1]`; −1 stands for one that is held. */
export interface Cliques {
  readonly start: Int32Array;
  readonly unknown: Int32Array;
}

/** Cliques from one list of unknowns a group. */
export function cliquesOf(lists: readonly ArrayLike<number>[]): Cliques {
  const start = new Int32Array(lists.length + 1);
  lists.forEach((list, g) => {
    start[g + 1] = start[g] + list.length;
  });
  const unknown = new Int32Array(start[lists.length]);
  lists.forEach((list, g) => {
    unknown.set(list, start[g]);
  });
  return { start, unknown };
}

/** The pattern of n unknowns coupled within each clique, with a full diagonal. Throws RangeError
 * where a clique names an unknown of n or more. */
export function patternOfCliques(n: number, cliques: Cliques): SymmetricPattern {
  const groupsOf = invert(n, cliques);
  const seen = new Int32Array(n).fill(-1);
  const start = new Int32Array(n + 1);
  let rows = new Int32Array(Math.max(16, 4 * cliques.unknown.length));
  let count = 0;
  for (let j = 0; j < n; j++) {
    const first = count;
    seen[j] = j;
    if (count + n > rows.length) rows = grown(rows, count + n);
    rows[count++] = j;
    for (let k = groupsOf.start[j]; k < groupsOf.start[j + 1]; k++) {
      const g = groupsOf.group[k];
      for (let e = cliques.start[g]; e < cliques.start[g + 1]; e++) {
        const i = cliques.unknown[e];
        if (i <= j || seen[i] === j) continue;
        seen[i] = j;
        rows[count++] = i;
      }
    }
    rows.subarray(first, count).sort();
    start[j + 1] = count;
  }
  return { n, start, row: rows.slice(0, count) };
}

function grown(rows: Int32Array, least: number): Int32Array<ArrayBuffer> {
  const wider = new Int32Array(Math.max(2 * rows.length, least));
  wider.set(rows);
  return wider;
}

function invert(
  n: number,
  { start, unknown }: Cliques,
): { readonly start: Int32Array; readonly group: Int32Array } {
  const first = new Int32Array(n + 1);
  for (const i of unknown) {
    if (i >= n) throw new RangeError(`unknown ${i} of ${n}`);
    if (i >= 0) first[i + 1]++;
  }
  for (let i = 0; i < n; i++) first[i + 1] += first[i];
  const at = first.slice();
  const group = new Int32Array(first[n]);
  for (let g = 0; g + 1 < start.length; g++)
    for (let e = start[g]; e < start[g + 1]; e++) if (unknown[e] >= 0) group[at[unknown[e]]++] = g;
  return { start: first, group };
}

/** Where the entry (i, j) of the lower triangle stands, −1 where the pattern has none. */
export function entryAt({ start, row }: SymmetricPattern, i: number, j: number): number {
  const column = Math.min(i, j);
  const wanted = Math.max(i, j);
  let low = start[column];
  let high = start[column + 1] - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    if (row[middle] === wanted) return middle;
    if (row[middle] < wanted) low = middle + 1;
    else high = middle - 1;
  }
  return -1;
}

/** Adds a dense symmetric block to `value`: entry (a, b) of `block` (row-major, as wide as
 * `unknowns` is long, its lower triangle read) goes to the unknowns a and b; those of −1 are left
 * out. Throws where the pattern lacks an entry. */
export function addBlockInto(
  value: Float64Array,
  pattern: SymmetricPattern,
  unknowns: ArrayLike<number>,
  block: ArrayLike<number>,
): void {
  const width = unknowns.length;
  for (let a = 0; a < width; a++) {
    const i = unknowns[a];
    if (i < 0) continue;
    for (let b = 0; b <= a; b++) {
      const j = unknowns[b];
      if (j < 0) continue;
      const at = entryAt(pattern, i, j);
      if (at < 0) throw new Error(`the pattern has no entry ${i}, ${j}`);
      // Two ends of one element on one unknown: both off-diagonal entries fall on the diagonal.
      value[at] += a !== b && i === j ? 2 * block[a * width + b] : block[a * width + b];
    }
  }
}

/** The matrix with the entries (i[k], j[k], value[k]), in either triangle; equal places add up. The
 * diagonal is always there. Throws RangeError where an index is none. */
export function symmetricOf(
  n: number,
  entries: readonly (readonly [i: number, j: number, value: number])[],
): SymmetricMatrix {
  const pattern = patternOfCliques(n, cliquesOf(entries.map(([i, j]) => [i, j])));
  const value = new Float64Array(pattern.row.length);
  for (const [i, j, v] of entries) {
    if (!(i >= 0 && j >= 0)) throw new RangeError(`entry ${i}, ${j} of a matrix of ${n}`);
    value[entryAt(pattern, i, j)] += v;
  }
  return { ...pattern, value };
}

/** y = A x, written into `y`. */
export function multiplyInto(y: Float64Array, a: SymmetricMatrix, x: Float64Array): void {
  const { n, start, row, value } = a;
  y.fill(0);
  for (let j = 0; j < n; j++) {
    const xj = x[j];
    let sum = 0;
    for (let e = start[j]; e < start[j + 1]; e++) {
      const i = row[e];
      if (i === j) {
        sum += value[e] * xj;
        continue;
      }
      sum += value[e] * x[i];
      y[i] += value[e] * xj;
    }
    y[j] += sum;
  }
}

/** A x. */
export function multiply(a: SymmetricMatrix, x: Float64Array): Float64Array {
  const y = new Float64Array(a.n);
  multiplyInto(y, a, x);
  return y;
}

/** A with `by` added to every entry of its diagonal, which its pattern must have (all made here do). */
export function shifted(a: SymmetricMatrix, by: number): SymmetricMatrix {
  const value = a.value.slice();
  for (let j = 0; j < a.n; j++) value[a.start[j]] += by;
  return { ...a, value };
}

/** alpha A + beta B, on the union of both patterns. Throws where the sizes differ. */
export function combine(
  alpha: number,
  a: SymmetricMatrix,
  beta: number,
  b: SymmetricMatrix,
): SymmetricMatrix {
  if (a.n !== b.n) throw new RangeError(`a matrix of ${a.n} and one of ${b.n}`);
  const start = new Int32Array(a.n + 1);
  const row = new Int32Array(a.row.length + b.row.length);
  const value = new Float64Array(row.length);
  let count = 0;
  for (let j = 0; j < a.n; j++) {
    let p = a.start[j];
    let q = b.start[j];
    while (p < a.start[j + 1] || q < b.start[j + 1]) {
      const i = p < a.start[j + 1] ? a.row[p] : a.n;
      const k = q < b.start[j + 1] ? b.row[q] : a.n;
      row[count] = Math.min(i, k);
      value[count++] = (i <= k ? alpha * a.value[p++] : 0) + (k <= i ? beta * b.value[q++] : 0);
    }
    start[j + 1] = count;
  }
  return { n: a.n, start, row: row.slice(0, count), value: value.slice(0, count) };
}

/** The diagonal of a matrix. */
export function diagonalOf(a: SymmetricMatrix): Float64Array {
  const diagonal = new Float64Array(a.n);
  for (let j = 0; j < a.n; j++) if (a.row[a.start[j]] === j) diagonal[j] = a.value[a.start[j]];
  return diagonal;
}
