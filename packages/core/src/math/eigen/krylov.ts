// The outermost eigenvalues of a self-adjoint operator that is only known by what it does to a
// vector: block Lanczos with every vector made orthogonal to all before it (G. H. Golub and
// R. Underwood, in Mathematical Software III, 1977). With the inverse of a shifted matrix as the
// operator this finds the eigenvalues nearest to the shift. A block finds eigenvalues that occur
// several times, as those of a symmetric structure do.

import type { Random } from '../random.ts';
import { symmetricEigen } from './dense.ts';

/** A self-adjoint operator: inner(x, A y) = inner(A x, y) with the inner product xᵀ B y. */
export interface Operator {
  readonly n: number;
  /** A x. */
  readonly apply: (x: Float64Array) => Float64Array;
  /** B x, positive definite; left out where B is the identity. */
  readonly inner?: (x: Float64Array) => Float64Array;
}

/** What to look for. */
export interface KrylovOptions {
  /** How many eigenvalues. */
  readonly count: number;
  /** Which come first: the largest, or the largest by size of either sign. */
  readonly which: 'largest' | 'largest by size';
  readonly random: Random;
  /** Vectors in a block. Default 3. */
  readonly block?: number;
  /** Part of the eigenvalue by which it may still be off. Default 1e-10. */
  readonly tolerance?: number;
  /** Most vectors kept. Default 20 more than six times the count, and never over n. */
  readonly most?: number;
}

/** Eigenvalues found, the outermost first. */
export interface KrylovResult {
  readonly values: readonly number[];
  /** Vectors of length 1 in the inner product. */
  readonly vectors: readonly Float64Array[];
  /** Whether every one of them is as sharp as asked for. */
  readonly converged: boolean;
  /** The largest eigenvalue seen, by size: values a rounding of it are none. */
  readonly scale: number;
}

/** The outermost eigenvalues of an operator. Fewer than asked for where n is less. */
export function outermostEigen(operator: Operator, options: KrylovOptions): KrylovResult {
  const { n } = operator;
  const count = Math.min(options.count, n);
  if (count === 0) return { values: [], vectors: [], converged: true, scale: 0 };
  const block = Math.min(options.block ?? 3, n);
  const most = Math.min(n, options.most ?? 6 * count + 20);
  const basis = new Basis(operator, options.random);
  let fresh = basis.extend(
    [...Array(block)].map(() => basis.randomVector()),
    block,
  );
  let next = Math.min(most, count + block);
  for (;;) {
    const images = fresh.map((v) => operator.apply(v));
    basis.record(images, fresh.length);
    if (basis.size >= next) {
      const found = ritz(basis, options, count);
      if (found.converged || basis.size >= most) return found;
      next = Math.min(most, Math.ceil(basis.size * CHECK_AGAIN));
    }
    fresh = basis.extend(images, Math.min(block, most - basis.size));
    if (fresh.length === 0) return ritz(basis, options, count);
  }
}

/** How much larger the space of vectors gets before the eigenvalues are looked at again. */
const CHECK_AGAIN = 1.2;

class Basis {
  readonly vectors: Float64Array[] = [];
  /** B times each vector. */
  readonly duals: Float64Array[] = [];
  /** Row k: inner products of vector k's image with all vectors up to k. */
  readonly projected: Float64Array[] = [];
  /** Image of each vector, kept for the residuals. */
  readonly images: Float64Array[] = [];
  private readonly operator: Operator;
  private readonly random: Random;

  constructor(operator: Operator, random: Random) {
    this.operator = operator;
    this.random = random;
  }

  get size(): number {
    return this.vectors.length;
  }

  randomVector(): Float64Array {
    return Float64Array.from({ length: this.operator.n }, () => this.random.normal());
  }

  dual(x: Float64Array): Float64Array {
    return this.operator.inner ? this.operator.inner(x) : x;
  }

  /** Adds `wanted` vectors, made of the candidates; of random ones where those depend on what is
   * there already. */
  extend(candidates: readonly Float64Array[], wanted: number): Float64Array[] {
    const added: Float64Array[] = [];
    for (const candidate of candidates) {
      if (added.length >= wanted) break;
      const one = this.orthogonal(candidate);
      if (one) added.push(one);
    }
    for (let tries = 0; added.length < wanted && tries < 3 * wanted; tries++) {
      const one = this.orthogonal(this.randomVector());
      if (one) added.push(one);
    }
    return added;
  }

  private orthogonal(candidate: Float64Array): Float64Array | null {
    const x = candidate.slice();
    let before = Math.sqrt(Math.max(0, dotOf(x, this.dual(x))));
    if (!(before > 0)) return null;
    const first = before;
    for (let pass = 0; pass < 4; pass++) {
      for (let k = 0; k < this.duals.length; k++)
        addScaledInto(x, -dotOf(x, this.duals[k]), this.vectors[k]);
      const after = Math.sqrt(Math.max(0, dotOf(x, this.dual(x))));
      if (after <= 1e-12 * first) return null;
      const settled = after > 0.7 * before;
      before = after;
      if (settled && pass > 0) break;
    }
    for (let i = 0; i < x.length; i++) x[i] /= before;
    this.vectors.push(x);
    this.duals.push(this.dual(x));
    return x;
  }

  record(images: readonly Float64Array[], fresh: number): void {
    const from = this.vectors.length - fresh;
    images.forEach((image, i) => {
      this.images.push(image);
      const row = new Float64Array(from + i + 1);
      for (let k = 0; k < row.length; k++) row[k] = dotOf(image, this.duals[k]);
      this.projected.push(row);
    });
  }
}

function ritz(basis: Basis, options: KrylovOptions, count: number): KrylovResult {
  const k = basis.size;
  const full = new Float64Array(k * k);
  basis.projected.forEach((row, i) => {
    row.forEach((x, j) => {
      full[i * k + j] = x;
      full[j * k + i] = x;
    });
  });
  const { values, vectors } = symmetricEigen(full, k);
  const rank = options.which === 'largest' ? (x: number) => x : Math.abs;
  const order = [...values.keys()].sort((i, j) => rank(values[j]) - rank(values[i]) || i - j);
  const found = order.slice(0, count);
  const tolerance = options.tolerance ?? 1e-10;
  const scale = values.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  const sums = found.map((i) => vectors.subarray(i * k, i * k + k));
  const lifted = sums.map((s) => combined(basis.vectors, s));
  const converged = found.every((i, at) => {
    const residual = combined(basis.images, sums[at]);
    addScaledInto(residual, -values[i], lifted[at]);
    const size = Math.sqrt(Math.max(0, dotOf(residual, basis.dual(residual))));
    // An eigenvalue is off by the square of the residual over the gap to the next: a third of the
    // digits of the residual is left in hand. Below what rounding leaves of the largest, no more.
    return size <= Math.max(Math.sqrt(tolerance) * Math.abs(values[i]), 1e-13 * scale);
  });
  return { values: found.map((i) => values[i]), vectors: lifted, converged, scale };
}

function combined(vectors: readonly Float64Array[], weights: ArrayLike<number>): Float64Array {
  const sum = new Float64Array(vectors[0].length);
  for (let k = 0; k < vectors.length; k++) addScaledInto(sum, weights[k], vectors[k]);
  return sum;
}

/** xᵀ y. */
export function dotOf(x: Float64Array, y: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < x.length; i++) sum += x[i] * y[i];
  return sum;
}

/** y += s x. */
export function addScaledInto(y: Float64Array, s: number, x: Float64Array): void {
  for (let i = 0; i < y.length; i++) y[i] += s * x[i];
}
