// Bar and beam structures in few lines, for tests.

import type { Bar, Beam, Section } from '../../src/frame/elements/element.ts';
import { type AtRest, prepare, statics } from '../../src/frame/statics.ts';
import { type Held, nodeCount, type Structure } from '../../src/frame/structure.ts';
import type { Vec3 } from '../../src/math/vector.ts';

/** A truss: points, bars between them, area of each (or of all), modulus, pinned points. */
export function truss(
  points: readonly (readonly number[])[],
  bars: readonly (readonly [number, number])[],
  area: number | readonly number[],
  young: number,
  held: readonly (number | Held)[],
): Structure {
  return {
    nodes: Float64Array.from(points.flatMap(([x, y, z = 0]) => [x, y, z])),
    elements: bars.map(
      (nodes, b): Bar => ({
        kind: 'bar',
        nodes,
        area: typeof area === 'number' ? area : area[b],
        young,
      }),
    ),
    held: held.map((one) => (typeof one === 'number' ? { node: one, directions: null } : one)),
  };
}

/** All six directions of a node. */
export const clamped = (node: number): Held => ({ node, directions: Array(6).fill(true) });

/** Some of x, y, z and the rotations about them, as in 'xy' or 'zRx'. */
export const heldIn = (node: number, names: string): Held => ({
  node,
  directions: ['x', 'y', 'z', 'X', 'Y', 'Z'].map((name) => names.includes(name)),
});

/** A beam whose axis y is near `axisY`. */
export const beam = (
  nodes: readonly [number, number],
  section: Section,
  young: number,
  shear: number,
  axisY: Vec3 = [0, 0, 1],
): Beam => ({ kind: 'beam', nodes, section, young, shear, axisY });

/** Loads by node: forces and, where given, moments. */
export function loadOn(
  structure: Structure,
  loads: Readonly<Record<number, readonly number[]>>,
): Float64Array {
  const load = new Float64Array(6 * nodeCount(structure));
  for (const [node, values] of Object.entries(loads)) load.set(values, 6 * Number(node));
  return load;
}

/** The structure at rest; fails where it does not stand. */
export function rest(structure: Structure, load: Float64Array): AtRest {
  const found = statics(prepare(structure), load);
  if (found.status !== 'stands') throw new Error(`the structure is ${found.status}`);
  return found;
}

/** Six directions of a node. */
export const six = (full: Float64Array, node: number): number[] => [
  ...full.slice(6 * node, 6 * node + 6),
];

/** Largest part by which numbers differ from those wanted, of the largest wanted. */
export function off(found: ArrayLike<number>, wanted: ArrayLike<number>): number {
  let most = 0;
  let size = 0;
  for (let i = 0; i < wanted.length; i++) {
    most = Math.max(most, Math.abs(found[i] - wanted[i]));
    size = Math.max(size, Math.abs(wanted[i]));
  }
  return most / size;
}
