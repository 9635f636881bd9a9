// Which unknowns a structure has, and the pattern of its matrices: found once, used for every load
// and every change of stiffness that leaves elements and held directions as they are.

import { type SymbolicFactor, symbolicFactor } from '../math/sparse/symbolic.ts';
import { cliquesOf, patternOfCliques, type SymmetricPattern } from '../math/sparse/symmetric.ts';
import { type Element, unknownsPerNode } from './elements/element.ts';
import { nodeCount, type Structure } from './structure.ts';

/** The unknowns of a structure. */
export interface Numbering {
  /** Node and direction, stride 6 → unknown; −1 where held or where no element has a say. */
  readonly unknown: Int32Array;
  /** Number of unknowns. */
  readonly count: number;
  readonly pattern: SymmetricPattern;
  readonly symbolic: SymbolicFactor;
}

/** Numbers the unknowns of a structure and orders their elimination. Throws RangeError where an
 * element or a held node is none of the structure's. */
export function numberUnknowns(structure: Structure): Numbering {
  const unknown = unknownsOf(structure);
  const lists = structure.elements.map((element) => unknownsAt(element, unknown));
  const count = unknown.reduce((most, i) => Math.max(most, i + 1), 0);
  const pattern = patternOfCliques(count, cliquesOf(lists));
  return { unknown, count, pattern, symbolic: symbolicFactor(pattern) };
}

/** Unknowns of an element, node by node, −1 where held: in the order of its natural rows. */
export function unknownsAt(element: Element, unknown: Int32Array): Int32Array {
  const per = unknownsPerNode(element);
  const list = new Int32Array(per * element.nodes.length);
  element.nodes.forEach((node, i) => {
    for (let k = 0; k < per; k++) list[per * i + k] = unknown[6 * node + k];
  });
  return list;
}

function unknownsOf(structure: Structure): Int32Array {
  const nodes = nodeCount(structure);
  const leader = structure.movesWith ?? Int32Array.from({ length: nodes }, (_, i) => i);
  const free = new Uint8Array(6 * nodes);
  for (const element of structure.elements)
    for (const node of element.nodes) {
      if (!(Number.isInteger(node) && node >= 0 && node < nodes))
        throw new RangeError(`a ${element.kind} ends at node ${node} of ${nodes}`);
      free.fill(1, 6 * leader[node], 6 * leader[node] + 3);
      if (unknownsPerNode(element) === 6) free.fill(1, 6 * node + 3, 6 * node + 6);
    }
  for (const { node, directions } of structure.held) {
    if (!(Number.isInteger(node) && node >= 0 && node < nodes))
      throw new RangeError(`node ${node} of ${nodes} is held`);
    for (let k = 0; k < 6; k++)
      if (directions ? directions[k] : k < 3) free[6 * (k < 3 ? leader[node] : node) + k] = 0;
  }
  const unknown = new Int32Array(6 * nodes).fill(-1);
  let count = 0;
  for (let i = 0; i < unknown.length; i++) if (free[i]) unknown[i] = count++;
  leader.forEach((lead, node) => {
    for (let k = 0; k < 3; k++) unknown[6 * node + k] = unknown[6 * lead + k];
  });
  return unknown;
}

/** The unknowns' part of numbers by node and direction (stride 6); those of nodes that share an
 * unknown add up. */
export function gather(numbering: Numbering, full: Float64Array): Float64Array {
  const short = new Float64Array(numbering.count);
  numbering.unknown.forEach((i, k) => {
    if (i >= 0) short[i] += full[k];
  });
  return short;
}

/** Numbers by node and direction (stride 6) from those of the unknowns; 0 elsewhere. */
export function spread(numbering: Numbering, short: Float64Array): Float64Array {
  return Float64Array.from(numbering.unknown, (i) => (i < 0 ? 0 : short[i]));
}

/** What a node-and-direction vector holds for an element, in the order of its natural rows. */
export function movementsAt(element: Element, full: Float64Array): Float64Array {
  const per = unknownsPerNode(element);
  const list = new Float64Array(per * element.nodes.length);
  element.nodes.forEach((node, i) => {
    for (let k = 0; k < per; k++) list[per * i + k] = full[6 * node + k];
  });
  return list;
}
