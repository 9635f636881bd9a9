// Linear buckling and natural frequency: the lowest eigenvalues, by block Lanczos with the inverse
// stiffness (shift-invert at zero), and then checked: a factor of the matrix just beyond the last
// one found has as many negative pivots as eigenvalues lie before it (Sylvester), so none is missed.

import { outermostEigen } from '../math/eigen/krylov.ts';
import { seededRandom } from '../math/random.ts';
import { factorize } from '../math/sparse/factor.ts';
import { solve } from '../math/sparse/solve.ts';
import { combine, multiply, type SymmetricMatrix } from '../math/sparse/symmetric.ts';
import { stiffnessMatrix } from './assemble.ts';
import { geometricMatrix } from './geometric.ts';
import { type MassSharing, massMatrix } from './mass.ts';
import { type Numbering, spread } from './numbering.ts';
import type { AtRest, Prepared } from './statics.ts';
import { BEYOND_LAST, EIGEN_OFF, NO_EFFECT, SHORT_OF_FIRST } from './tolerances.ts';

/** Lowest eigenvalues with their modes. */
export interface Modes {
  /** Buckling: load factors, those of the load as it acts, ascending. Vibration: hertz, ascending. */
  readonly values: readonly number[];
  /** Movements and rotations, stride 6; the largest movement 1. A direction. */
  readonly modes: readonly Float64Array[];
  /** Whether it was checked that none lies between, and all are as sharp as wanted. */
  readonly complete: boolean;
}

/** The lowest load factors at which a structure at rest under a load buckles: small movements before,
 * forces in proportion to the load, elements that hang slack left out. Fewer than asked for, or none,
 * where the load (in this direction) buckles nothing. Real shells buckle below this: imperfect ones
 * at a third or a fifth. */
export function bucklingFactors(prepared: Prepared, rest: AtRest, count: number): Modes {
  const { structure, numbering } = prepared;
  const slack = rest.slack.some((flag) => flag === 1);
  const stiffness = slack
    ? stiffnessMatrix(structure, numbering, prepared.naturals, rest.slack)
    : prepared.matrix;
  const geometric = geometricMatrix(structure, numbering, rest);
  const negated = { ...geometric, value: geometric.value.map((x) => -x) };
  return lowest(prepared, stiffness, negated, count);
}

/** The lowest natural frequencies of a structure, hertz; every one-way element at work. Null where
 * it moves without resistance. */
export function naturalFrequencies(
  prepared: Prepared,
  count: number,
  sharing: MassSharing = 'consistent',
  added: ArrayLike<number> = [],
): Modes | null {
  if (prepared.factor.weak.length > 0 || prepared.factor.negative > 0) return null;
  const mass = massMatrix(prepared.structure, prepared.numbering, sharing, added);
  const found = lowest(prepared, prepared.matrix, mass, count);
  return { ...found, values: found.values.map((value) => Math.sqrt(value) / (2 * Math.PI)) };
}

/** Lowest positive λ of K x = λ M x, K positive definite, M of any sign. The first is found roughly
 * from zero; all are then found from a shift just below it, where a crowd of near-equal ones, as
 * symmetric shells have, lies well apart. */
function lowest(
  { numbering }: Prepared,
  k: SymmetricMatrix,
  m: SymmetricMatrix,
  count: number,
): Modes {
  const rough = around(numbering, k, m, 0, { count: 1, tolerance: 1e-3, seed: 1, block: 2 });
  const first = rough?.values[0];
  if (first === undefined) return { values: [], modes: [], complete: true };
  let wanted = Math.min(count, k.n);
  for (let tries = 0; ; tries++) {
    const options = { count: wanted, tolerance: EIGEN_OFF, seed: 2 + tries, block: 3 + 2 * tries };
    const found = around(numbering, k, m, SHORT_OF_FIRST ** (1 + tries) * first, options);
    const missed = found ? missing(numbering, k, m, found.values) : 0;
    const complete = found !== null && missed === 0 && found.converged;
    if (found && (complete || tries === 3))
      return {
        values: found.values.slice(0, count),
        modes: found.vectors.slice(0, count).map((x) => scaledMode(numbering, x)),
        complete,
      };
    wanted += missed;
  }
}

/** Eigenvalues above a shift, ascending; null where the shift lies above one. */
function around(
  { symbolic }: Numbering,
  k: SymmetricMatrix,
  m: SymmetricMatrix,
  shift: number,
  {
    count,
    tolerance,
    seed,
    block,
  }: {
    readonly count: number;
    readonly tolerance: number;
    readonly seed: number;
    readonly block: number;
  },
): {
  readonly values: readonly number[];
  readonly vectors: readonly Float64Array[];
  readonly converged: boolean;
} | null {
  const factor = factorize(symbolic, shift === 0 ? k : combine(1, k, -shift, m), 0);
  if (factor.negative > 0) return null;
  const found = outermostEigen(
    {
      n: k.n,
      apply: (x) => solve(factor, multiply(m, x)),
      inner: (x) => multiply(k, x),
    },
    {
      count,
      which: 'largest',
      random: seededRandom(seed),
      block,
      tolerance,
      most: Math.min(k.n, 8 * count + 60),
    },
  );
  const positive = found.values.filter((value) => value > NO_EFFECT * found.scale);
  return {
    values: positive.map((value) => shift + 1 / value),
    vectors: found.vectors.slice(0, positive.length),
    converged: found.converged || positive.length < found.values.length,
  };
}

function scaledMode(numbering: Numbering, x: Float64Array): Float64Array {
  const mode = spread(numbering, x);
  const most = mode.reduce((s, u, i) => (i % 6 < 3 ? Math.max(s, Math.abs(u)) : s), 0);
  return mode.map((u) => u / most);
}

/** How many eigenvalues below the last one found were not found. */
function missing(
  { symbolic }: Numbering,
  k: SymmetricMatrix,
  m: SymmetricMatrix,
  values: readonly number[],
): number {
  const last = values.at(-1);
  if (last === undefined) return 0;
  const beyond = factorize(symbolic, combine(1, k, -last * (1 + BEYOND_LAST), m), 0);
  return Math.max(0, beyond.negative - values.length);
}
