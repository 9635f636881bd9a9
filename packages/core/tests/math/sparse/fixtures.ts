// Matrices to try the sparse factor on, and the dense way to hold it against.

import type { Random } from '../../../src/math/random.ts';
import { type SymmetricMatrix, symmetricOf } from '../../../src/math/sparse/symmetric.ts';

type Entry = readonly [number, number, number];

/** Sum of springs between random pairs and to the ground: positive definite, sparse. */
export function springs(random: Random, n: number, pairs: number, ground = 0.1): SymmetricMatrix {
  const entries: Entry[] = [];
  for (let i = 0; i < n; i++) entries.push([i, i, ground]);
  for (let k = 0; k < pairs; k++) {
    const i = random.below(n);
    const j = random.below(n);
    if (i === j) continue;
    const stiffness = 0.5 + random.uniform();
    entries.push([i, i, stiffness], [j, j, stiffness], [i, j, -stiffness]);
  }
  return symmetricOf(n, entries);
}

/** A grid of nodes of `width` unknowns each, every node coupled with its eight neighbours: the
 * pattern of a stiffness matrix, diagonally dominant. */
export function grid(random: Random, across: number, width: number): SymmetricMatrix {
  const entries: Entry[] = [];
  const sums = new Float64Array(across * across * width);
  const unknown = (x: number, y: number, k: number): number => (x * across + y) * width + k;
  for (let x = 0; x < across; x++)
    for (let y = 0; y < across; y++)
      for (const [dx, dy] of [
        [0, 0],
        [1, 0],
        [0, 1],
        [1, 1],
        [1, -1],
      ]) {
        const [u, v] = [x + dx, y + dy];
        if (u >= across || v < 0 || v >= across) continue;
        for (let a = 0; a < width; a++)
          for (let b = 0; b < width; b++) {
            const i = unknown(x, y, a);
            const j = unknown(u, v, b);
            if (i >= j && dx === 0 && dy === 0) continue;
            const value = random.normal();
            entries.push([i, j, value]);
            sums[i] += Math.abs(value);
            sums[j] += Math.abs(value);
          }
      }
  sums.forEach((sum, i) => {
    entries.push([i, i, sum + 1]);
  });
  return symmetricOf(sums.length, entries);
}

/** The whole matrix, by rows. */
export function denseOf({ n, start, row, value }: SymmetricMatrix): Float64Array {
  const full = new Float64Array(n * n);
  for (let j = 0; j < n; j++)
    for (let e = start[j]; e < start[j + 1]; e++) {
      full[row[e] * n + j] = value[e];
      full[j * n + row[e]] = value[e];
    }
  return full;
}

/** x of A x = b by Gauss with exchange of rows. */
export function denseSolve(full: Float64Array, b: ArrayLike<number>): Float64Array {
  const n = b.length;
  const a = full.slice();
  const x = Float64Array.from(b);
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++)
      if (Math.abs(a[i * n + k]) > Math.abs(a[best * n + k])) best = i;
    if (best !== k) {
      for (let j = 0; j < n; j++) {
        const held = a[k * n + j];
        a[k * n + j] = a[best * n + j];
        a[best * n + j] = held;
      }
      [x[k], x[best]] = [x[best], x[k]];
    }
    for (let i = k + 1; i < n; i++) {
      const f = a[i * n + k] / a[k * n + k];
      if (f === 0) continue;
      for (let j = k; j < n; j++) a[i * n + j] -= f * a[k * n + j];
      x[i] -= f * x[k];
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    for (let j = k + 1; j < n; j++) x[k] -= a[k * n + j] * x[j];
    x[k] /= a[k * n + k];
  }
  return x;
}

/** Largest difference of two lists. */
export const farthest = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  let most = 0;
  for (let i = 0; i < a.length; i++) most = Math.max(most, Math.abs(a[i] - b[i]));
  return most;
};
