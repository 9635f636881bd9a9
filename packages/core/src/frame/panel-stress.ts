// Stress in the panels and forces across their sides, from the facets of a frame at rest.
// Membrane forces are newtons per metre, moments newtons (newton metres per metre).

import { cross, dot, normalize, pointAt, subtract, type Vec3 } from '../math/vector.ts';
import type { Facet } from './elements/element.ts';
import { type FlatTriangle, flatTriangle } from './elements/triangle.ts';
import type { AtRest } from './statics.ts';
import type { Structure } from './structure.ts';

/** Forces in a facet, in its own axes. */
export interface FacetForces {
  readonly flat: FlatTriangle;
  /** Along x, along y, shear: newtons per metre. */
  readonly membrane: Vec3;
  /** Moments that go with κx, κy, 2κxy at the middles of the sides 1–2, 2–3, 3–1: newtons. */
  readonly moments: readonly [Vec3, Vec3, Vec3];
}

/** Forces in one facet of a structure at rest. */
export function facetForces(structure: Structure, rest: AtRest, e: number): FacetForces {
  const facet = structure.elements[e] as Facet;
  const [a, b, c] = facet.nodes.map((node) => pointAt(structure.nodes, node));
  const flat = flatTriangle(facet.nodes, [a, b, c]);
  const natural = rest.forces[e];
  const part = (at: number, by: number): Vec3 => [
    natural[at] / by,
    natural[at + 1] / by,
    natural[at + 2] / by,
  ];
  return {
    flat,
    membrane: part(0, flat.area),
    moments: [part(3, flat.area / 3), part(6, flat.area / 3), part(9, flat.area / 3)],
  };
}

/** Largest equivalent stress (von Mises) in a facet, pascals: at the middle of each side, on both
 * faces. */
export function largestStress(facet: Facet, { membrane, moments }: FacetForces): number {
  const bending = facet.bendingThickness ?? facet.thickness;
  let most = 0;
  for (const moment of moments)
    for (const face of [-1, 1]) {
      const [x, y, t] = membrane.map(
        (n, k) => n / facet.thickness + (face * 6 * moment[k]) / bending ** 2,
      );
      most = Math.max(most, Math.sqrt(x * x - x * y + y * y + 3 * t * t));
    }
  return most;
}

/** Forces across a side of a facet. */
export interface SideForces {
  /** Pull across the side in the plane of the facet, newtons per metre. */
  readonly pull: number;
  /** Force along the side, newtons per metre, of either sign. */
  readonly along: number;
  /** Moment about the side, newtons; positive where it presses the outer face. */
  readonly moment: number;
}

/** Forces across the side from corner `side` to the next, 0 to 2. */
export function sideForces(
  structure: Structure,
  facet: Facet,
  forces: FacetForces,
  side: number,
): SideForces {
  const { axes } = forces.flat;
  const [a, b] = [facet.nodes[side], facet.nodes[(side + 1) % 3]];
  const s = normalize(subtract(pointAt(structure.nodes, b), pointAt(structure.nodes, a)));
  const n = cross(s, axes[2]);
  const [nx, ny] = [dot(n, axes[0]), dot(n, axes[1])];
  const [sx, sy] = [dot(s, axes[0]), dot(s, axes[1])];
  const across = ([x, y, t]: Vec3): number => x * nx * nx + y * ny * ny + 2 * t * nx * ny;
  const shear = ([x, y, t]: Vec3): number => x * nx * sx + y * ny * sy + t * (nx * sy + ny * sx);
  return {
    pull: across(forces.membrane),
    along: shear(forces.membrane),
    moment: -across(forces.moments[side]),
  };
}
