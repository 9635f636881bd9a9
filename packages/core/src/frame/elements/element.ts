// The elements of a structure. Every one is told in the same way, by a few natural strains: rows
// that give them from the movements of its nodes, and moduli that give the natural forces. Then
// stiffness = rowsᵀ · moduli · rows, of rank as many as there are strains, which is also what adds
// one element to a factor. Metres, newtons, radians; global axes.

import type { Vec3 } from '../../math/vector.ts';

/** A straight bar between two nodes that carries force along itself only. */
export interface Bar {
  readonly kind: 'bar';
  readonly nodes: readonly [number, number];
  /** Square metres. */
  readonly area: number;
  /** Young's modulus, pascals. */
  readonly young: number;
  /** Kilograms per cubic metre; 0 where left out. */
  readonly density?: number;
  /** Carries pull only, or push only; both where left out. */
  readonly only?: 'pull' | 'push';
  /** Pull in it before any load, newtons; 0 where left out. */
  readonly pretension?: number;
}

/** A cross-section of a beam about its own axes y and z, square to its length. */
export interface Section {
  /** Square metres. */
  readonly area: number;
  /** Second moments of area about y and z, metres⁴. */
  readonly iy: number;
  readonly iz: number;
  /** Torsion constant, metres⁴. */
  readonly torsion: number;
  /** Areas that carry shear along y and z, square metres; no shear strain where left out. */
  readonly shearY?: number;
  readonly shearZ?: number;
}

/** Stiffness of the joint between a beam's end and its node against bending about y and z, newton
 * metres per radian; Infinity holds, 0 is a hinge. */
export interface EndJoint {
  readonly y: number;
  readonly z: number;
}

/** A straight beam between two nodes. */
export interface Beam {
  readonly kind: 'beam';
  readonly nodes: readonly [number, number];
  readonly section: Section;
  /** Young's and shear modulus, pascals. */
  readonly young: number;
  readonly shear: number;
  /** A direction that, made square to the beam, is its axis y. */
  readonly axisY: Vec3;
  /** Joints at both ends; held where left out. */
  readonly ends?: readonly [EndJoint, EndJoint];
  /** Kilograms per cubic metre; 0 where left out. */
  readonly density?: number;
}

/** A flat triangle that carries forces in its plane only, with constant strain. */
export interface Membrane {
  readonly kind: 'membrane';
  readonly nodes: readonly [number, number, number];
  /** Metres. */
  readonly thickness: number;
  /** Young's modulus, pascals. */
  readonly young: number;
  readonly poisson: number;
  readonly density?: number;
}

/** A flat triangle that carries forces in its plane and bends out of it. */
export interface Facet {
  readonly kind: 'facet';
  readonly nodes: readonly [number, number, number];
  readonly thickness: number;
  readonly young: number;
  readonly poisson: number;
  readonly density?: number;
  /** Thickness that counts for bending, metres, where it is another than that in the plane (a
   * sandwich); the thickness where left out. */
  readonly bendingThickness?: number;
}

/** Springs between a node and the ground. */
export interface Spring {
  readonly kind: 'spring';
  readonly nodes: readonly [number];
  /** Along x, y, z, newtons per metre, and about them, newton metres per radian. */
  readonly stiffness: Six;
}

/** A prop from the ground: it pushes its node along a direction and cannot pull. */
export interface Prop {
  readonly kind: 'prop';
  readonly nodes: readonly [number];
  /** Direction in which it pushes; any length but 0. */
  readonly along: Vec3;
  /** Newtons per metre. */
  readonly stiffness: number;
}

/** A joint that resists turning of one node against another; their movements are none of its own. */
export interface Joint {
  readonly kind: 'joint';
  readonly nodes: readonly [number, number];
  /** Newton metres per radian, about every axis. */
  readonly stiffness: number;
}

/** Six numbers for the six directions of a node. */
export type Six = readonly [number, number, number, number, number, number];

/** Any element. */
export type Element = Bar | Beam | Membrane | Facet | Spring | Prop | Joint;

/** An element by its natural strains. */
export interface Natural {
  /** Columns of `rows`: three or six for each node, its movement and then its rotation. */
  readonly width: number;
  /** Strain by movement, by rows. */
  readonly rows: Float64Array;
  /** Force by strain, symmetric, by rows. */
  readonly moduli: Float64Array;
}

/** Unknowns that an element has at each of its nodes: 3, its movement; 6, its rotation too. */
export function unknownsPerNode(element: Element): 3 | 6 {
  if (element.kind === 'spring') return element.stiffness.slice(3).some((k) => k > 0) ? 6 : 3;
  return ['beam', 'facet', 'joint'].includes(element.kind) ? 6 : 3;
}

/** Natural strains of an element whose nodes move by `u` (width long). */
export function strainsOf({ width, rows }: Natural, u: ArrayLike<number>): Float64Array {
  const strains = new Float64Array(rows.length / width);
  for (let r = 0; r < strains.length; r++)
    for (let k = 0; k < width; k++) strains[r] += rows[r * width + k] * u[k];
  return strains;
}

/** Natural forces of an element under natural strains. */
export function forcesOf({ moduli }: Natural, strains: Float64Array): Float64Array {
  const count = strains.length;
  const forces = new Float64Array(count);
  for (let r = 0; r < count; r++)
    for (let k = 0; k < count; k++) forces[r] += moduli[r * count + k] * strains[k];
  return forces;
}

/** Forces on the nodes that go with natural forces. */
export function nodeForces({ width, rows }: Natural, forces: Float64Array): Float64Array {
  const onNodes = new Float64Array(width);
  for (let r = 0; r < forces.length; r++)
    for (let k = 0; k < width; k++) onNodes[k] += rows[r * width + k] * forces[r];
  return onNodes;
}

/** Stiffness of an element, width × width, by rows. */
export function stiffnessOf(natural: Natural): Float64Array {
  const { width, rows, moduli } = natural;
  const count = rows.length / width;
  const half = new Float64Array(count * width);
  for (let r = 0; r < count; r++)
    for (let s = 0; s < count; s++) {
      const modulus = moduli[r * count + s];
      if (modulus === 0) continue;
      for (let k = 0; k < width; k++) half[r * width + k] += modulus * rows[s * width + k];
    }
  const stiffness = new Float64Array(width * width);
  for (let r = 0; r < count; r++)
    for (let i = 0; i < width; i++) {
      const x = rows[r * width + i];
      if (x === 0) continue;
      for (let j = 0; j <= i; j++) stiffness[i * width + j] += x * half[r * width + j];
    }
  for (let i = 0; i < width; i++)
    for (let j = 0; j < i; j++) stiffness[j * width + i] = stiffness[i * width + j];
  return stiffness;
}
