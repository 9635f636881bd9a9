// A stage as ties between joints: stiff panels hinged along finger-tight seams, folding stiffly along
// snug ones, some hubs held. From one matrix, RᵀR, come the movements that nothing resists and, where
// there are none, the forces of the ties under loads. All ties give alike: where the ties are just
// enough the forces are exact whatever gives, else they are one of many states in balance.

import { type Joints, jointsOf } from '../frame/joints.ts';
import { gram, unknownsOf } from '../frame/mechanisms.ts';
import type { FrameModel } from '../frame/model.ts';
import { type RigidityRows, rigidityRows } from '../frame/rigidity.ts';
import { addScaledInto, dotOf } from '../math/eigen/krylov.ts';
import { seededRandom } from '../math/random.ts';
import { type Factor, factorize } from '../math/sparse/factor.ts';
import { solveInto } from '../math/sparse/solve.ts';
import { solveManyInto } from '../math/sparse/solve-many.ts';
import { type SymbolicFactor, symbolicFactor } from '../math/sparse/symbolic.ts';
import { multiplyInto, type SymmetricMatrix, shifted } from '../math/sparse/symmetric.ts';
import { LIFTED, LOOSE, TURNS } from './tolerances.ts';

/** The ties of a frame. */
export interface Tied {
  readonly model: FrameModel;
  readonly joints: Joints;
  readonly rows: RigidityRows;
  /** Joint and direction, stride 3 → unknown, −1 where held. */
  readonly unknown: Int32Array;
  /** RᵀR; 0 unknowns where every joint is held. */
  readonly matrix: SymmetricMatrix;
  /** Its order of elimination, for every factor of it; null where every joint is held. */
  readonly symbolic: SymbolicFactor | null;
}

/** The ties of a frame; its guys are left out. */
export function tiedFrame(model: FrameModel): Tied {
  const joints = jointsOf(model);
  const rows = rigidityRows(model, joints);
  const unknown = unknownsOf(model, joints, rows);
  const matrix = gram(rows, unknown);
  const symbolic = matrix.n === 0 ? null : symbolicFactor(matrix);
  return { model, joints, rows, unknown, matrix, symbolic };
}

/** The same ties with more hubs held. The order of elimination stays: what is newly held keeps its
 * row in the matrix, tied to itself alone. */
export function heldToo(tied: Tied, hubs: readonly number[]): Tied {
  const { model, joints } = tied;
  const more = new Set(hubs);
  const unknown = tied.unknown.slice();
  const held = new Uint8Array(tied.matrix.n);
  joints.hub.forEach((hub, joint) => {
    if (!more.has(hub)) return;
    for (let i = 3 * joint; i < 3 * joint + 3; i++) {
      if (unknown[i] >= 0) held[unknown[i]] = 1;
      unknown[i] = -1;
    }
  });
  const supports = [...model.supports, ...[...more].map((hub) => ({ hub, stiffness: null }))];
  return {
    ...tied,
    model: { ...model, supports },
    unknown,
    matrix: withoutRows(tied.matrix, held),
  };
}

/** A matrix in which the flagged unknowns are coupled with nothing, each with 1 on its diagonal. */
function withoutRows(matrix: SymmetricMatrix, flagged: Uint8Array): SymmetricMatrix {
  const { n, start, row } = matrix;
  const value = matrix.value.slice();
  for (let j = 0; j < n; j++)
    for (let e = start[j]; e < start[j + 1]; e++)
      if (flagged[j] || flagged[row[e]]) value[e] = row[e] === j ? 1 : 0;
  return { ...matrix, value };
}

/** How many independent movements nothing resists, or next to nothing (see LOOSE). */
export function freeCount({ matrix, symbolic }: Tied): number {
  return symbolic === null ? 0 : factorize(symbolic, shifted(matrix, -LOOSE), 0).negative;
}

/** An orthonormal basis of the movements that nothing resists, or next to nothing (see LOOSE), by
 * unknown; empty where the stage stands. Their number is sure (Sylvester); they themselves are as
 * sharp as the choice of props needs. */
export function freeMovements(tied: Tied): Float64Array[] {
  const { matrix, symbolic } = tied;
  const { n } = matrix;
  const negative = freeCount(tied);
  if (symbolic === null) return [];
  const random = seededRandom(1);
  const space = Array.from({ length: negative }, () =>
    Float64Array.from({ length: n }, () => random.normal()),
  );
  if (negative === 0) return space;
  const factor = factorize(symbolic, shifted(matrix, LIFTED), 0);
  for (let turn = 1; turn <= TURNS.most; turn++) {
    solveManyInto(factor, space);
    makeOrthonormal(space);
    if (turn >= TURNS.least && largestStrain(matrix, space) <= 2 * LOOSE) break;
  }
  return space;
}

function makeOrthonormal(space: readonly Float64Array[]): void {
  space.forEach((x, k) => {
    scaleInto(x);
    for (let pass = 0; pass < 2; pass++)
      for (const y of space.slice(0, k)) addScaledInto(x, -dotOf(x, y), y);
    scaleInto(x);
  });
}

function scaleInto(x: Float64Array): void {
  const length = Math.sqrt(dotOf(x, x));
  for (let i = 0; i < x.length; i++) x[i] /= length;
}

/** Largest sum of squares of strains under one of the movements. */
function largestStrain(matrix: SymmetricMatrix, space: readonly Float64Array[]): number {
  const y = new Float64Array(matrix.n);
  return space.reduce((most, x) => {
    multiplyInto(y, matrix, x);
    return Math.max(most, dotOf(x, y));
  }, 0);
}

/** A stage without free movements, ready for loads. */
export interface Standing {
  readonly tied: Tied;
  /** Null where every joint is held. */
  readonly factor: Factor | null;
  /** Rows that pull on something held. */
  readonly holding: Int32Array;
}

/** The factor of a stage. Throws where it has a free movement: ask `freeMovements` first. */
export function standing(tied: Tied): Standing {
  const holding = Int32Array.from(rowsAtHeld(tied));
  if (tied.symbolic === null) return { tied, factor: null, holding };
  const factor = factorize(tied.symbolic, tied.matrix);
  if (factor.weak.length > 0 || factor.negative > 0)
    throw new Error('a stage that moves without resistance has no forces');
  return { tied, factor, holding };
}

function rowsAtHeld({ rows, unknown }: Tied): number[] {
  const found: number[] = [];
  for (let r = 0; r + 1 < rows.start.length; r++)
    for (let k = rows.start[r]; k < rows.start[r + 1]; k++)
      if (unknown[3 * rows.joint[k]] < 0) {
        found.push(r);
        break;
      }
  return found;
}

/** Forces of what is held on the joints, stride 3, N, under forces on the joints (stride 3, N);
 * 0 where a joint is free. Their sum balances that of the loads, as do their moments. */
export function holdingForces(stage: Standing, load: Float64Array): Float64Array {
  const { unknown, rows, matrix } = stage.tied;
  const moved = new Float64Array(matrix.n);
  const held = new Float64Array(load.length);
  for (let i = 0; i < load.length; i++)
    if (unknown[i] >= 0) moved[unknown[i]] += load[i];
    else held[i] = -load[i];
  if (stage.factor) solveInto(moved, stage.factor, moved, new Float64Array(2 * matrix.n));
  for (const r of stage.holding) {
    let strain = 0;
    for (let k = rows.start[r]; k < rows.start[r + 1]; k++)
      for (let x = 0; x < 3; x++) {
        const i = unknown[3 * rows.joint[k] + x];
        if (i >= 0) strain += rows.value[3 * k + x] * moved[i];
      }
    for (let k = rows.start[r]; k < rows.start[r + 1]; k++)
      for (let x = 0; x < 3; x++) {
        const i = 3 * rows.joint[k] + x;
        if (unknown[i] < 0) held[i] += strain * rows.value[3 * k + x];
      }
  }
  return held;
}
