// First-order mechanisms: movements that stretch nothing and fold no snug seam. They are the null
// space of the rigidity matrix R, found from one sparse factor of RᵀR − τ: its negative pivots count
// them, and the same factor, as the inverse of the shifted matrix, gives their modes.
// S. Pellegrino and C. R. Calladine, Int. J. Solids Struct. 22 (1986) 409 (mechanisms and states of
// self-stress as the null spaces of R).

import { addScaledInto, dotOf, outermostEigen } from '../math/eigen/krylov.ts';
import { seededRandom } from '../math/random.ts';
import { factorize } from '../math/sparse/factor.ts';
import { solve } from '../math/sparse/solve.ts';
import { symbolicFactor } from '../math/sparse/symbolic.ts';
import {
  addBlockInto,
  type Cliques,
  multiply,
  patternOfCliques,
  type SymmetricMatrix,
  shifted,
} from '../math/sparse/symmetric.ts';
import { type Joints, jointsOf } from './joints.ts';
import type { FrameModel } from './model.ts';
import { type RigidityOptions, type RigidityRows, rigidityRows } from './rigidity.ts';
import { NO_RESISTANCE, SAME_MOVEMENT, SHARP } from './tolerances.ts';

/** One way in which a frame moves without resistance. */
export interface Mechanism {
  /** The hub that moves most. */
  readonly hub: number;
  /** Movement of every corner, stride 3, in the order of the model's panels; the largest is 1 long.
   * A direction: it may as well be the other way. */
  readonly corners: Float64Array;
  /** Indices of the panels of which a corner moves. */
  readonly panels: readonly number[];
}

/** What resists, and what does not. */
export interface Mechanisms {
  /** Independent movements without resistance; 0: it stands, to first order. */
  readonly count: number;
  /** As many modes (or as asked for), each as much as can be about the hub it is named for; what
   * moves most comes first. */
  readonly modes: readonly Mechanism[];
  /** Strain of all ties together (root of the sum of squares) under the softest movement that is
   * resisted, of length 1: far below 0.01 the stage stands only on paper. Null where not asked for
   * or where nothing can move. */
  readonly softest: number | null;
  /** That movement. */
  readonly softestMode: Mechanism | null;
}

/** Options of `mechanisms`. */
export interface MechanismOptions extends RigidityOptions {
  /** Look for the softest resisted movement too; true if left out. */
  readonly softest?: boolean;
  /** Most modes to give; all if left out. The count is that of all. */
  readonly modes?: number;
}

/** The first-order mechanisms of a frame with its supports held. A frame that hangs free has its six
 * movements as a whole among them. Its springs count as held. */
export function mechanisms(model: FrameModel, options: MechanismOptions = {}): Mechanisms {
  const joints = jointsOf(model);
  const rows = rigidityRows(model, joints, options);
  const unknown = unknownsOf(model, joints, rows);
  const matrix = gram(rows, unknown);
  const none: Mechanisms = { count: 0, modes: [], softest: null, softestMode: null };
  if (matrix.n === 0) return none;
  const factor = factorize(symbolicFactor(matrix), shifted(matrix, -NO_RESISTANCE), 0);
  const count = factor.negative;
  const softestWanted = options.softest !== false;
  const inverse = (x: Float64Array): Float64Array => solve(factor, x);
  const wanted = softestWanted || (options.modes ?? count) > 0;
  const space = wanted ? unresisted(matrix, inverse, count) : [];
  const toMode = (x: Float64Array): Mechanism => modeOf(model, joints, unknown, x);
  const modes = localised(space, options.modes ?? count).map(toMode);
  const soft = !softestWanted ? null : softestBeside(matrix.n, inverse, space);
  return {
    count,
    modes,
    softest: soft?.strain ?? null,
    softestMode: soft && toMode(soft.vector),
  };
}

/** The space without resistance: random vectors taken through the inverse of the shifted matrix, by
 * which that part of them grows a thousand to a million times more than any other, until they are
 * strained no more. Orthonormal. */
function unresisted(
  matrix: SymmetricMatrix,
  inverse: (x: Float64Array) => Float64Array,
  count: number,
): Float64Array[] {
  const random = seededRandom(1);
  let space: Float64Array[] = [...Array(count)].map(() =>
    Float64Array.from({ length: matrix.n }, () => random.normal()),
  );
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    space = orthonormal(space.map(inverse));
    const strained = Math.max(0, ...space.map((x) => dotOf(x, multiply(matrix, x))));
    if (turn > 0 && strained <= SHARP) break;
  }
  return space;
}

/** Turns after which what is left is rounding. */
const MOST_TURNS = 6;

/** Vectors of the same space, square to each other and of length 1 (Gram and Schmidt, twice over). */
function orthonormal(vectors: readonly Float64Array[]): Float64Array[] {
  const made: Float64Array[] = [];
  for (const vector of vectors) {
    const x = vector.slice();
    for (let pass = 0; pass < 2; pass++) {
      const before = Math.sqrt(dotOf(x, x));
      for (let i = 0; i < x.length; i++) x[i] /= before;
      for (const v of made) addScaledInto(x, -dotOf(x, v), v);
    }
    const length = Math.sqrt(dotOf(x, x));
    made.push(x.map((value) => value / length));
  }
  return made;
}

/** The softest movement square to those without resistance; null where none is left. */
function softestBeside(
  n: number,
  inverse: (x: Float64Array) => Float64Array,
  space: readonly Float64Array[],
): { readonly strain: number; readonly vector: Float64Array } | null {
  if (space.length >= n) return null;
  const square = (x: Float64Array): Float64Array => {
    for (const v of space) addScaledInto(x, -dotOf(x, v), v);
    return x;
  };
  const found = outermostEigen(
    { n, apply: (x) => square(inverse(square(x.slice()))) },
    { count: 1, which: 'largest', random: seededRandom(2), most: 60 },
  );
  const strain = Math.sqrt(Math.max(0, NO_RESISTANCE + 1 / found.values[0]));
  return { strain, vector: found.vectors[0] };
}

/** Joint and direction (stride 3) → unknown, −1 where held. */
export function unknownsOf(model: FrameModel, joints: Joints, rows: RigidityRows): Int32Array {
  const held = new Uint8Array(model.hubs.length / 3);
  for (const support of model.supports) held[support.hub] = 1;
  const unknown = new Int32Array(3 * rows.joints).fill(-1);
  let n = 0;
  for (let joint = 0; joint < rows.joints; joint++)
    if (joint >= joints.hub.length || !held[joints.hub[joint]])
      for (let k = 0; k < 3; k++) unknown[3 * joint + k] = n++;
  return unknown;
}

/** RᵀR over the unknowns: how much the ties are strained, every tie counted alike. */
export function gram(rows: RigidityRows, unknown: Int32Array): SymmetricMatrix {
  const list = new Int32Array(rows.value.length);
  rows.joint.forEach((joint, k) => {
    for (let axis = 0; axis < 3; axis++) list[3 * k + axis] = unknown[3 * joint + axis];
  });
  const cliques: Cliques = { start: rows.start.map((k) => 3 * k), unknown: list };
  const n = unknown.reduce((most, i) => Math.max(most, i + 1), 0);
  const pattern = patternOfCliques(n, cliques);
  const value = new Float64Array(pattern.row.length);
  for (let r = 0; r + 1 < rows.start.length; r++) {
    const from = 3 * rows.start[r];
    const to = 3 * rows.start[r + 1];
    const by = rows.value.subarray(from, to);
    const block = new Float64Array(by.length ** 2);
    for (let a = 0; a < by.length; a++)
      for (let b = 0; b <= a; b++) block[a * by.length + b] = by[a] * by[b];
    addBlockInto(value, pattern, list.subarray(from, to), block);
  }
  return { ...pattern, value };
}

/** Another basis of the same space: time and again the movement that moves one joint most, for the
 * joint that the space can move most (the lowest of equals). Vectors are orthonormal. */
function localised(space: readonly Float64Array[], most: number): Float64Array[] {
  const left = space.map((v) => v.slice());
  const modes: Float64Array[] = [];
  while (left.length > 0 && modes.length < most) {
    const at = mostMovable(left);
    const mode = left[0].map(() => 0);
    for (const v of left) for (let i = 0; i < mode.length; i++) mode[i] += v[at] * v[i];
    modes.push(mode);
    takeOut(left, mode);
  }
  return modes;
}

function mostMovable(space: readonly Float64Array[]): number {
  const size = (i: number): number => space.reduce((sum, v) => sum + v[i] * v[i], 0);
  let best = 0;
  let most = 0;
  for (let i = 0; i < space[0].length; i++) {
    const one = size(i);
    if (one <= most * (1 + SAME_MOVEMENT)) continue;
    most = one;
    best = i;
  }
  return best;
}

/** Leaves the part of a space that is square to one of its vectors, as an orthonormal basis. */
function takeOut(space: Float64Array[], mode: Float64Array): void {
  const length = Math.sqrt(dotOf(mode, mode));
  const unit = mode.map((x) => x / length);
  const weights = space.map((v) => dotOf(v, unit));
  // The vector that shares most with the mode goes; a Householder reflection makes it the only one.
  const first = weights.reduce((at, w, k) => (Math.abs(w) > Math.abs(weights[at]) ? k : at), 0);
  const sign = weights[first] < 0 ? -1 : 1;
  const h = weights.slice();
  h[first] += sign;
  const scale = 1 / (1 + Math.abs(weights[first]));
  const sum = unit.map((_, i) => space.reduce((total, v, k) => total + h[k] * v[i], 0));
  space.forEach((v, k) => {
    for (let i = 0; i < v.length; i++) v[i] -= scale * h[k] * sum[i];
  });
  space.splice(first, 1);
}

/** A vector of unknowns as the movement of corners. */
function modeOf(
  model: FrameModel,
  joints: Joints,
  unknown: Int32Array,
  x: Float64Array,
): Mechanism {
  const moved = Float64Array.from(joints.hub.subarray(0, joints.hub.length), () => 0);
  const size = (joint: number): number =>
    Math.hypot(...[0, 1, 2].map((k) => at(unknown[3 * joint + k])));
  const at = (i: number): number => (i < 0 ? 0 : x[i]);
  let best = 0;
  let most = 0;
  moved.forEach((_, joint) => {
    const one = size(joint);
    moved[joint] = one;
    if (one <= most * (1 + SAME_MOVEMENT)) return;
    most = one;
    best = joint;
  });
  const corners = new Float64Array(3 * joints.jointOfCorner.length);
  joints.jointOfCorner.forEach((joint, corner) => {
    for (let k = 0; k < 3; k++) corners[3 * corner + k] = at(unknown[3 * joint + k]) / most;
  });
  const panels = [...model.panels.keys()].filter((p) =>
    joints.jointOfCorner
      .subarray(joints.cornerStart[p], joints.cornerStart[p + 1])
      .some((joint) => moved[joint] > SAME_MOVEMENT * most),
  );
  return { hub: joints.hub[best], corners, panels };
}
