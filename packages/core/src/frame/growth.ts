// A structure that grows: the factor of what stands is kept and changed when elements are added, so
// that a stage of a large one costs a fraction of a factor. Unknowns that no element has reached yet
// are held by a spring each, which is taken away when one does. For callers who place many elements
// one after another; the stages of a build, which are reckoned by their ties, are factored anew.

import { type Factor, factorize, VANISHED } from '../math/sparse/factor.ts';
import { solve } from '../math/sparse/solve.ts';
import { type UpdateVectors, updateFactorInto } from '../math/sparse/update.ts';
import { naturalsOf, stiffnessMatrix } from './assemble.ts';
import type { Natural } from './elements/element.ts';
import { gather, type Numbering, numberUnknowns, spread, unknownsAt } from './numbering.ts';
import { outerVectors } from './outer-vectors.ts';
import type { Structure } from './structure.ts';

/** A structure of which some elements stand. */
export interface Growing {
  /** All elements there will be. */
  readonly structure: Structure;
  readonly numbering: Numbering;
  readonly naturals: readonly Natural[];
  /** Element → 1 once it stands. */
  readonly standing: Uint8Array;
  /** Unknown → 1 once an element that stands has a say in it. */
  readonly reached: Uint8Array;
  /** Unknown → its entry on the diagonal of the stiffness. */
  readonly diagonal: Float64Array;
  readonly factor: Factor;
}

/** Begins with the elements whose flag is set. Elements that pull or push only count as both. */
export function beginGrowth(structure: Structure, standing: ArrayLike<number>): Growing {
  const numbering = numberUnknowns(structure);
  const naturals = naturalsOf(structure);
  const flags = Uint8Array.from(structure.elements, (_, e) => (standing[e] ? 1 : 0));
  const slack = flags.map((flag) => 1 - flag);
  const matrix = stiffnessMatrix(structure, numbering, naturals, slack);
  const reached = new Uint8Array(numbering.count);
  flags.forEach((flag, e) => {
    if (flag)
      for (const i of unknownsAt(structure.elements[e], numbering.unknown))
        if (i >= 0) reached[i] = 1;
  });
  const diagonal = new Float64Array(numbering.count);
  for (let i = 0; i < numbering.count; i++) diagonal[i] = matrix.value[matrix.start[i]];
  const value = matrix.value.slice();
  const place = placeholder(naturals);
  reached.forEach((flag, i) => {
    if (!flag) value[matrix.start[i]] = place;
  });
  const factor = factorize(numbering.symbolic, { ...matrix, value });
  return { structure, numbering, naturals, standing: flags, reached, diagonal, factor };
}

/** The same with more elements standing: a new state, the old one stays good. Throws where the
 * structure was unstable before: its factor cannot be changed, begin anew. */
export function grow(growing: Growing, added: readonly number[]): Growing {
  if (growing.factor.weak.length > 0)
    throw new Error(`unknown ${growing.factor.weak[0]} moves without resistance: begin anew`);
  const { structure, numbering, naturals } = growing;
  const fresh = [...new Set(added)].filter((e) => !growing.standing[e]);
  const standing = growing.standing.slice();
  const reached = growing.reached.slice();
  const diagonal = growing.diagonal.slice();
  const values = growing.factor.values.slice();
  const d = growing.factor.d.slice();
  const vectors: { unknown: Int32Array; value: Float64Array }[] = [];
  const first: number[] = [];
  for (const e of fresh) {
    standing[e] = 1;
    const unknown = unknownsAt(structure.elements[e], numbering.unknown);
    for (const value of outerVectors(naturals[e], unknown)) {
      vectors.push({ unknown, value });
      unknown.forEach((i, k) => {
        if (i >= 0) diagonal[i] += value[k] * value[k];
      });
    }
    for (const i of unknown)
      if (i >= 0 && !reached[i]) {
        reached[i] = 1;
        first.push(i);
      }
  }
  updateFactorInto(values, d, numbering.symbolic, packed(vectors), 1);
  const root = Math.sqrt(placeholder(naturals));
  const placeholders = first.map((i) => ({
    unknown: Int32Array.of(i),
    value: Float64Array.of(root),
  }));
  updateFactorInto(values, d, numbering.symbolic, packed(placeholders), -1);
  const weak = weakOf(numbering, d, diagonal, reached);
  const negative = d.reduce((count, x) => count + (x < 0 ? 1 : 0), 0);
  const factor = { symbolic: numbering.symbolic, values, d, negative, weak };
  return { ...growing, standing, reached, diagonal, factor };
}

/** Movements (stride 6) of what stands under loads on nodes (stride 6); null where it moves without
 * resistance, to be worked out anew for the place. */
export function grownMovements(growing: Growing, load: Float64Array): Float64Array | null {
  const { factor, numbering, reached } = growing;
  if (factor.weak.length > 0 || factor.negative > 0) return null;
  const b = gather(numbering, load);
  reached.forEach((flag, i) => {
    if (!flag) b[i] = 0;
  });
  return spread(numbering, solve(factor, b));
}

function packed(list: readonly { unknown: Int32Array; value: Float64Array }[]): UpdateVectors {
  const start = new Int32Array(list.length + 1);
  list.forEach(({ unknown }, v) => {
    start[v + 1] = start[v] + unknown.length;
  });
  const unknown = new Int32Array(start[list.length]);
  const value = new Float64Array(unknown.length);
  list.forEach((one, v) => {
    unknown.set(one.unknown, start[v]);
    value.set(one.value, start[v]);
  });
  return { start, unknown, value };
}

/** Stiffness of the spring that holds what nothing has reached: about that of an element. */
function placeholder(naturals: readonly Natural[]): number {
  let most = 1;
  for (const { moduli } of naturals) most = Math.max(most, moduli[0]);
  return most;
}

function weakOf(
  numbering: Numbering,
  d: Float64Array,
  diagonal: Float64Array,
  reached: Uint8Array,
): number[] {
  const weak: number[] = [];
  numbering.symbolic.order.forEach((i, k) => {
    if (reached[i] && !(Math.abs(d[k]) > UPDATED * diagonal[i])) weak.push(i);
  });
  return weak;
}

/** A pivot vanishes at this part of its diagonal entry after an update, which leaves more rounding
 * than a factor made at once. */
const UPDATED = 1e3 * VANISHED;
