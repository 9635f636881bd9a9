// Linear statics: small movements, elements that may carry pull or push only. A structure that moves
// without resistance is told with the place and the movement, and has no other result.

import { type Factor, factorize } from '../math/sparse/factor.ts';
import { solve } from '../math/sparse/solve.ts';
import { multiply, type SymmetricMatrix } from '../math/sparse/symmetric.ts';
import { naturalsOf, stiffnessMatrix } from './assemble.ts';
import {
  type Element,
  forcesOf,
  type Natural,
  nodeForces,
  strainsOf,
  unknownsPerNode,
} from './elements/element.ts';
import { gather, movementsAt, type Numbering, numberUnknowns, spread } from './numbering.ts';
import type { Structure } from './structure.ts';
import { AT_REST, MOST_CHANGES } from './tolerances.ts';

/** A structure at rest under a load. */
export interface AtRest {
  readonly status: 'stands';
  /** Movements and rotations, stride 6. */
  readonly moved: Float64Array;
  /** Natural forces of each element; zeros where it is slack. */
  readonly forces: readonly Float64Array[];
  /** Element → 1 where it carries pull or push only and hangs slack. */
  readonly slack: Uint8Array;
  /** Forces and moments of the ground on held directions, stride 6. Those of springs and props are
   * in `forces`. */
  readonly reactions: Float64Array;
  /** Largest force left over at an unknown, part of the largest load. */
  readonly leftOver: number;
}

/** A structure that moves without resistance. */
export interface Unstable {
  readonly status: 'unstable';
  /** The node that moves most. */
  readonly node: number;
  /** The movement, stride 6, its largest 1; a direction. */
  readonly mode: Float64Array;
}

/** A structure whose one-way elements found no state: slack and taut by turns. */
export interface Unsettled {
  readonly status: 'unsettled';
  /** Indices of the elements that went to and fro. */
  readonly elements: readonly number[];
}

/** What statics answers. */
export type Statics = AtRest | Unstable | Unsettled;

/** What is worked out once for a structure and used for every load. */
export interface Prepared {
  readonly structure: Structure;
  readonly numbering: Numbering;
  readonly naturals: readonly Natural[];
  /** Stiffness with every element at work, and its factor. */
  readonly matrix: SymmetricMatrix;
  readonly factor: Factor;
}

/** Numbers, assembles and factors a structure; with the numbering of another that has the same
 * elements between the same nodes and the same held directions, that is used again. */
export function prepare(structure: Structure, numbering?: Numbering): Prepared {
  const numbered = numbering ?? numberUnknowns(structure);
  const naturals = naturalsOf(structure);
  const matrix = stiffnessMatrix(structure, numbered, naturals);
  return {
    structure,
    numbering: numbered,
    naturals,
    matrix,
    factor: factorize(numbered.symbolic, matrix),
  };
}

/** A structure under loads on its nodes (stride 6: newtons and newton metres). Throws RangeError
 * where there are not as many loads as directions, or one is no number. */
export function statics(prepared: Prepared, load: Float64Array): Statics {
  assertLoad(prepared.structure, load);
  const quick = settle(prepared, load, false);
  // All that carry the wrong way at once may be more than need go: one after the other then.
  return quick.status === 'stands' || !oneWay(prepared.structure)
    ? quick
    : settle(prepared, load, true);
}

function settle(prepared: Prepared, load: Float64Array, oneByOne: boolean): Statics {
  const { structure, numbering, naturals } = prepared;
  const slack = new Uint8Array(structure.elements.length);
  const changes = new Int32Array(slack.length);
  let { factor, matrix } = prepared;
  for (;;) {
    if (factor.weak.length > 0 || factor.negative > 0) return unstable(prepared, matrix, factor);
    const moved = movedBy(prepared, factor, load, slack);
    const changed = changeSlack(prepared, moved, slack, oneByOne);
    for (const e of changed) changes[e]++;
    if (changed.length === 0) return atRest(prepared, load, moved, slack);
    if (changes.some((count) => count > MOST_CHANGES))
      return {
        status: 'unsettled',
        elements: [...changes.keys()].filter((e) => changes[e] > MOST_CHANGES / 2),
      };
    matrix = stiffnessMatrix(structure, numbering, naturals, slack);
    factor = factorize(numbering.symbolic, matrix);
  }
}

const oneWay = ({ elements }: Structure): boolean =>
  elements.some((element) => onlyOf(element) !== undefined);

function assertLoad({ nodes }: Structure, load: Float64Array): void {
  if (load.length !== 2 * nodes.length)
    throw new RangeError(`${load.length} loads for ${2 * nodes.length} directions`);
  const odd = load.findIndex((x) => !Number.isFinite(x));
  if (odd >= 0)
    throw new RangeError(`the load on node ${Math.floor(odd / 6)} is ${load[odd]}, not a number`);
}

function movedBy(
  { structure, numbering, naturals }: Prepared,
  factor: Factor,
  load: Float64Array,
  slack: Uint8Array,
): Float64Array {
  const total = load.slice();
  structure.elements.forEach((element, e) => {
    if (slack[e] || pretensionOf(element) === 0) return;
    const pulled = nodeForces(naturals[e], Float64Array.of(pretensionOf(element)));
    addAt(total, element, pulled, -1);
  });
  return spread(numbering, solve(factor, gather(numbering, total)));
}

const pretensionOf = (element: Element): number =>
  element.kind === 'bar' ? (element.pretension ?? 0) : 0;

/** Adds an element's forces on its nodes, `times` over. */
function addAt(full: Float64Array, element: Element, forces: Float64Array, times: number): void {
  const per = unknownsPerNode(element);
  element.nodes.forEach((node, i) => {
    for (let k = 0; k < per; k++) full[6 * node + k] += times * forces[per * i + k];
  });
}

/** Pull of an element that works one way, as if it were at work: its strain's force and what was in
 * it before; its sign is turned where it carries push only, so that it must be positive. */
function oneWayForce({ structure, naturals }: Prepared, moved: Float64Array, e: number): number {
  const element = structure.elements[e];
  const [force] = forcesOf(naturals[e], strainsOf(naturals[e], movementsAt(element, moved)));
  if (element.kind === 'prop') return -force;
  return (force + pretensionOf(element)) * (onlyOf(element) === 'push' ? -1 : 1);
}

const onlyOf = (element: Element): 'pull' | 'push' | undefined =>
  element.kind === 'bar' ? element.only : element.kind === 'prop' ? 'push' : undefined;

/** Slackens what would carry the wrong way (or the one that does so most), tightens what would carry
 * again; which. */
function changeSlack(
  prepared: Prepared,
  moved: Float64Array,
  slack: Uint8Array,
  oneByOne: boolean,
): number[] {
  const forces = prepared.structure.elements.map((element, e) =>
    onlyOf(element) === undefined ? null : oneWayForce(prepared, moved, e),
  );
  const tighten = forces.flatMap((force, e) =>
    force !== null && force >= 0 && slack[e] ? [e] : [],
  );
  const slacken = forces.flatMap((force, e) =>
    force !== null && force < 0 && !slack[e] ? [e] : [],
  );
  const worst = slacken.reduce(
    (most, e) => ((forces[e] as number) < (forces[most] as number) ? e : most),
    slacken[0] ?? -1,
  );
  const changed = !oneByOne
    ? [...tighten, ...slacken]
    : tighten.length > 0
      ? tighten.slice(0, 1)
      : slacken.length > 0
        ? [worst]
        : [];
  for (const e of changed) slack[e] = 1 - slack[e];
  return changed;
}

function atRest(
  { structure, numbering, naturals }: Prepared,
  load: Float64Array,
  moved: Float64Array,
  slack: Uint8Array,
): AtRest {
  const ground = load.map((x) => -x);
  const forces = structure.elements.map((element, e) => {
    if (slack[e]) return new Float64Array(naturals[e].rows.length / naturals[e].width);
    const own = forcesOf(naturals[e], strainsOf(naturals[e], movementsAt(element, moved)));
    own[0] += pretensionOf(element);
    addAt(ground, element, nodeForces(naturals[e], own), 1);
    return own;
  });
  const most = load.reduce((m, x) => Math.max(m, Math.abs(x)), 0);
  const rest = gather(numbering, ground).reduce((m, x) => Math.max(m, Math.abs(x)), 0);
  const reactions = ground.map((x, k) => (numbering.unknown[k] < 0 ? x : 0));
  return {
    status: 'stands',
    moved,
    forces,
    slack,
    reactions,
    leftOver: most > 0 ? rest / most : 0,
  };
}

/** The movement without resistance of a matrix that is singular: the held unknown moves by 1, the
 * others so that no force arises; where a pivot was negative, what the first one belongs to. */
function unstable({ numbering }: Prepared, matrix: SymmetricMatrix, factor: Factor): Unstable {
  const at = factor.weak[0] ?? factor.symbolic.order[factor.d.findIndex((x) => x < 0)];
  const one = new Float64Array(matrix.n);
  one[at] = 1;
  const forces = multiply(matrix, one).map((x) => -x);
  forces[at] = 0;
  const mode = solve(factor, forces);
  mode[at] += 1;
  const full = spread(numbering, mode);
  const most = full.reduce((m, x) => Math.max(m, Math.abs(x)), 0);
  const scaled = full.map((x) => x / most);
  return { status: 'unstable', node: Math.floor(loudest(scaled) / 6), mode: scaled };
}

function loudest(full: Float64Array): number {
  let best = 0;
  full.forEach((x, k) => {
    if (Math.abs(x) > Math.abs(full[best]) * (1 + AT_REST)) best = k;
  });
  return best;
}
