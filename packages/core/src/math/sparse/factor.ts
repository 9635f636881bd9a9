// A = L D Lᵀ of a sparse symmetric matrix, without exchange of rows, front by front (I. S. Duff and
// J. K. Reid, ACM Trans. Math. Softw. 9 (1983) 302). D may have either sign: the number of negative
// pivots is that of negative eigenvalues (Sylvester).

import { factorLeftInto, subtractOuterInto } from './front.ts';
import type { SymbolicFactor } from './symbolic.ts';
import type { SymmetricMatrix } from './symmetric.ts';

/** A factor of a sparse symmetric matrix. */
export interface Factor {
  readonly symbolic: SymbolicFactor;
  /** Left blocks of the supernodes; see symbolic.ts. */
  readonly values: Float64Array;
  /** Position → pivot; infinite where the unknown was held because its pivot vanished. */
  readonly d: Float64Array;
  /** Number of negative pivots. */
  readonly negative: number;
  /** Unknowns whose pivot vanished, in the order of elimination: the matrix is singular there. They
   * were held at zero, and the rest was factored. */
  readonly weak: readonly number[];
}

/** A pivot vanishes at this part of its diagonal entry: what rounding leaves of a sum that cancels,
 * over some ten thousand additions. */
export const VANISHED = 1e-12;

/** The factor of a matrix with the pattern that the symbolic factor was made of. `vanished` is the
 * part of its diagonal entry at which a pivot counts as zero. Throws where the matrix has another
 * pattern or a value that is no number. */
export function factorize(
  symbolic: SymbolicFactor,
  matrix: SymmetricMatrix,
  vanished = VANISHED,
): Factor {
  assertSamePattern(symbolic, matrix);
  const { column, rowStart, valueStart } = symbolic;
  const n = symbolic.order.length;
  const values = new Float64Array(symbolic.entries);
  const d = new Float64Array(n);
  const least = leastPivots(symbolic, matrix, vanished);
  const weak: number[] = [];
  const onWeak = (place: number): void => {
    weak.push(symbolic.order[place]);
  };
  const stack = new Float64Array(symbolic.stackSize);
  const scaled = new Float64Array(mostScaled(symbolic));
  const children: number[][] = symbolic.parent.reduce<number[][]>(
    (lists, parent, s) => {
      if (parent >= 0) lists[parent].push(s);
      return lists;
    },
    Array.from(symbolic.parent, () => []),
  );
  let top = 0;
  for (let s = 0; s + 1 < column.length; s++) {
    const columns = column[s + 1] - column[s];
    const rows = rowStart[s + 1] - rowStart[s];
    const at = valueStart[s];
    for (let k = symbolic.scatterStart[s]; k < symbolic.scatterStart[s + 1]; k++)
      values[symbolic.scatterTo[k]] += matrix.value[symbolic.scatterEntry[k]];
    stack.fill(0, top, top + rows * rows);
    let base = top;
    for (let c = children[s].length - 1; c >= 0; c--) {
      const child = children[s][c];
      base -= (rowStart[child + 1] - rowStart[child]) ** 2;
      addChildInto(values, at, columns, stack, top, rows, symbolic, child, base);
    }
    factorLeftInto(values, at, columns, rows, d, column[s], scaled, least, onWeak);
    const below = at + columns * columns;
    subtractOuterInto(stack, top, values, below, columns, rows, scaled);
    if (base < top) stack.copyWithin(base, top, top + rows * rows);
    top = base + rows * rows;
  }
  return { symbolic, values, d, negative: d.reduce((k, x) => k + (x < 0 ? 1 : 0), 0), weak };
}

/** Adds a child's update, on the stack from `from`, to its parent's left block and update. */
function addChildInto(
  values: Float64Array,
  at: number,
  columns: number,
  stack: Float64Array,
  to: number,
  rows: number,
  { rowStart, inParent }: SymbolicFactor,
  child: number,
  from: number,
): void {
  const first = rowStart[child];
  const width = rowStart[child + 1] - first;
  let own = 0;
  while (own < width && inParent[first + own] < columns) own++;
  for (let a = 0; a < width; a++) {
    const i = inParent[first + a];
    const source = from + a * width;
    const left = at + i * columns;
    const mine = Math.min(own, a + 1);
    for (let b = 0; b < mine; b++) values[left + inParent[first + b]] += stack[source + b];
    if (a < own) continue;
    const right = to + (i - columns) * rows - columns;
    for (let b = own; b <= a; b++) stack[right + inParent[first + b]] += stack[source + b];
  }
}

function assertSamePattern({ pattern }: SymbolicFactor, matrix: SymmetricMatrix): void {
  if (pattern.n !== matrix.n || pattern.row.length !== matrix.row.length)
    throw new Error(
      `a matrix of ${matrix.n} unknowns and ${matrix.row.length} entries for a pattern of ${pattern.n} and ${pattern.row.length}`,
    );
  const odd = matrix.value.findIndex((x) => !Number.isFinite(x));
  if (odd >= 0) throw new Error(`entry ${odd} of the matrix is ${matrix.value[odd]}`);
}

function leastPivots(
  { position }: SymbolicFactor,
  { n, start, value }: SymmetricMatrix,
  vanished: number,
): Float64Array {
  const least = new Float64Array(n);
  for (let j = 0; j < n; j++) least[position[j]] = vanished * Math.abs(value[start[j]]);
  return least;
}

function mostScaled({ column, rowStart }: SymbolicFactor): number {
  let most = 0;
  for (let s = 0; s + 1 < column.length; s++)
    most = Math.max(most, (column[s + 1] - column[s]) * (rowStart[s + 1] - rowStart[s]));
  return most;
}
