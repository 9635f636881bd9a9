// The path of a truss under a growing load with large movements, past its limit: arc-length steps
// (E. Riks, J. Appl. Mech. 39 (1972) 1060; E. Ramm, in Nonlinear Finite Element Analysis in
// Structural Mechanics, 1981). Bars keep to engineering strain: N = E A (l − L)/L. Metres, newtons.

import { dotOf } from '../math/eigen/krylov.ts';
import { seededRandom } from '../math/random.ts';
import { type Factor, factorize } from '../math/sparse/factor.ts';
import { solve } from '../math/sparse/solve.ts';
import { addBlockInto } from '../math/sparse/symmetric.ts';
import type { Bar } from './elements/element.ts';
import { gather, type Numbering, numberUnknowns, spread, unknownsAt } from './numbering.ts';
import type { Structure } from './structure.ts';

/** One state on the path. */
export interface PathPoint {
  /** Part of the load that acts. */
  readonly factor: number;
  /** Movements, stride 6. */
  readonly moved: Float64Array;
  /** Negative pivots of the stiffness there: 0 while it is stable. */
  readonly negative: number;
}

/** Where a path leads. */
export interface BarPath {
  /** 'limit': the load can grow no further; 'branch': the stiffness vanishes while it still grows
   * (the truss leaves the path sideways); 'goes on': neither within the steps; 'stuck': a step found
   * no balance; 'unstable': it moves without resistance from the start. */
  readonly status: 'limit' | 'branch' | 'goes on' | 'stuck' | 'unstable';
  /** The limit or branch point; null where there is none. */
  readonly critical: PathPoint | null;
  /** States from the start. */
  readonly points: readonly PathPoint[];
}

/** How to follow a path. */
export interface PathOptions {
  /** Length of a step in movements of all unknowns together, metres. */
  readonly step: number;
  /** Most steps; 200 where left out. */
  readonly steps?: number;
  /** Go on past the limit for all steps; false where left out: stop there. */
  readonly beyond?: boolean;
}

/** Out-of-balance force, as a part of the load at hand, at which a state counts as in balance. */
const IN_BALANCE = 1e-10;
const MOST_TURNS = 40;

/** A movement takes part in a load when it does this part of what it could with it. */
const DRIVEN = 1e-4;

/** The path of a truss from rest under `load` (stride 6, of factor 1). Throws RangeError where an
 * element is no two-way bar, or the step is no length. */
export function barPath(structure: Structure, load: Float64Array, options: PathOptions): BarPath {
  if (!(options.step > 0 && options.step < Infinity))
    throw new RangeError(`the step is ${options.step}, expected a length`);
  const walk = new Walk(structure, load);
  const start = walk.start();
  if (start.factored.weak.length > 0 || start.factored.negative > 0)
    return { status: 'unstable', critical: null, points: [] };
  const points: PathPoint[] = [walk.point(start)];
  let critical: PathPoint | null = null;
  let status: BarPath['status'] = 'goes on';
  let [before, direction]: [State, Float64Array | null] = [start, null];
  for (let k = 0; k < (options.steps ?? 200); k++) {
    const next = walk.step(before, direction, options.step);
    if (!next) return { status: critical ? status : 'stuck', critical, points };
    if (!critical && next.factored.negative > 0) {
      const at = walk.critical(before, direction, options.step);
      critical = walk.point(at);
      status = walk.atLimit(at) ? 'limit' : 'branch';
      points.push(critical);
      if (!options.beyond) return { status, critical, points };
    }
    points.push(walk.point(next));
    direction = next.u.map((x, i) => x - before.u[i]);
    before = next;
  }
  return { status, critical, points };
}

interface State {
  readonly u: Float64Array;
  readonly factor: number;
  readonly factored: Factor;
}

class Walk {
  private readonly numbering: Numbering;
  private readonly load: Float64Array;
  private readonly structure: Structure;
  private readonly bars: readonly Bar[];
  private readonly size: number;

  constructor(structure: Structure, load: Float64Array) {
    this.bars = structure.elements.map((element) => {
      if (element.kind !== 'bar' || element.only !== undefined)
        throw new RangeError(`a ${element.kind} that is no two-way bar stands in the truss`);
      return element;
    });
    this.structure = structure;
    this.numbering = numberUnknowns(structure);
    this.load = gather(this.numbering, load);
    this.size = Math.sqrt(dotOf(this.load, this.load));
    if (!(this.size > 0)) throw new RangeError('the load acts on nothing that can move');
  }

  start(): State {
    const u = new Float64Array(this.numbering.count);
    return { u, factor: 0, factored: this.factored(u) };
  }

  point({ u, factor, factored }: State): PathPoint {
    return { factor, moved: spread(this.numbering, u), negative: factored.negative };
  }

  /** A step of a length along the path; null where none is found. */
  step(from: State, direction: Float64Array | null, length: number): State | null {
    const along = solve(from.factored, this.load);
    const size = Math.sqrt(dotOf(along, along));
    // Go on as before: the tangent is taken the way the last step went.
    const sign = direction && dotOf(direction, along) < 0 ? -1 : 1;
    const first = along.map((x) => (x * sign * length) / size);
    let factor = from.factor + (sign * length) / size;
    const u = from.u.map((x, i) => x + first[i]);
    for (let turn = 0; turn < MOST_TURNS; turn++) {
      const rest = this.internal(u).map((f, i) => factor * this.load[i] - f);
      const factored = this.factored(u);
      const scale = this.size * Math.max(Math.abs(factor), 1e-6);
      if (Math.sqrt(dotOf(rest, rest)) <= IN_BALANCE * scale) return { u, factor, factored };
      const byRest = solve(factored, rest);
      const byLoad = solve(factored, this.load);
      // Corrections stay square to the first guess (Riks' plane).
      const change = -dotOf(first, byRest) / dotOf(first, byLoad);
      if (!Number.isFinite(change)) return null;
      factor += change;
      for (let i = 0; i < u.length; i++) u[i] += byRest[i] + change * byLoad[i];
    }
    return null;
  }

  /** The point between a stable state and one step ahead where the stiffness first vanishes, by
   * halving the step. */
  critical(from: State, direction: Float64Array | null, length: number): State {
    let [low, high] = [0, length];
    let best = from;
    for (let k = 0; k < 60 && high - low > 1e-12 * length; k++) {
      const middle = (low + high) / 2;
      const state = this.step(from, direction, middle);
      if (state && state.factored.negative === 0) {
        low = middle;
        best = state;
      } else high = middle;
    }
    return best;
  }

  /** Whether the movement in which the stiffness vanishes is one that the load drives. */
  atLimit({ u }: State): boolean {
    const factored = this.factored(u, 0);
    const random = seededRandom(1);
    let mode: Float64Array = u.map(() => random.normal());
    for (let turn = 0; turn < 4; turn++) {
      mode = solve(factored, mode);
      const size = Math.sqrt(dotOf(mode, mode));
      mode = mode.map((x) => x / size);
    }
    return Math.abs(dotOf(mode, this.load)) > DRIVEN * this.size;
  }

  /** Forces of the bars on the unknowns. */
  private internal(u: Float64Array): Float64Array {
    const forces = new Float64Array(u.length);
    for (const bar of this.bars) {
      const { e, pull } = this.bar(bar, u);
      const at = unknownsAt(bar, this.numbering.unknown);
      for (let k = 0; k < 3; k++) {
        if (at[k] >= 0) forces[at[k]] -= pull * e[k];
        if (at[3 + k] >= 0) forces[at[3 + k]] += pull * e[k];
      }
    }
    return forces;
  }

  private bar(
    bar: Bar,
    u: Float64Array,
  ): {
    readonly e: number[];
    readonly length: number;
    readonly rest: number;
    readonly pull: number;
  } {
    const at = unknownsAt(bar, this.numbering.unknown);
    const { nodes } = this.structure;
    const span = [0, 1, 2].map((k) => nodes[3 * bar.nodes[1] + k] - nodes[3 * bar.nodes[0] + k]);
    const by = (i: number): number => (i < 0 ? 0 : u[i]);
    const change = [0, 1, 2].map((k) => by(at[3 + k]) - by(at[k]));
    const now = span.map((x, k) => x + change[k]);
    const rest = Math.hypot(...span);
    const length = Math.hypot(...now);
    // l² − L² by the movements: the difference of both lengths would lose its digits.
    const squares = now.reduce((sum, x, k) => sum + change[k] * (x + span[k]), 0);
    const longer = squares / (length + rest);
    const pull = (bar.young * bar.area * longer) / rest + (bar.pretension ?? 0);
    return { e: now.map((x) => x / length), length, rest, pull };
  }

  private factored(u: Float64Array, vanished?: number): Factor {
    const { pattern, unknown, symbolic } = this.numbering;
    const value = new Float64Array(pattern.row.length);
    for (const bar of this.bars) {
      const { e, length, rest, pull } = this.bar(bar, u);
      const along = (bar.young * bar.area) / rest;
      const block = new Float64Array(36);
      for (let i = 0; i < 3; i++)
        for (let j = 0; j < 3; j++) {
          const k = (along - pull / length) * e[i] * e[j] + (i === j ? pull / length : 0);
          block[i * 6 + j] = block[(i + 3) * 6 + j + 3] = k;
          block[i * 6 + j + 3] = block[(i + 3) * 6 + j] = -k;
        }
      addBlockInto(value, pattern, unknownsAt(bar, unknown), block);
    }
    return factorize(symbolic, { ...pattern, value }, vanished);
  }
}
