// What the forces in a structure at rest do to its stiffness: pulls stiffen it across, pushes soften
// it. The matrix goes with the forces, so under a times the load it is a times as large.

import type { SymmetricMatrix } from '../math/sparse/symmetric.ts';
import { pointAt } from '../math/vector.ts';
import { assembled } from './assemble.ts';
import { barGeometric } from './elements/bar.ts';
import { beamGeometric } from './elements/beam.ts';
import type { Element } from './elements/element.ts';
import { flatTriangle, triangleGeometric } from './elements/triangle.ts';
import type { Numbering } from './numbering.ts';
import type { AtRest } from './statics.ts';
import type { Structure } from './structure.ts';

/** The geometric stiffness of a structure under the forces of a state at rest, newtons per metre. */
export const geometricMatrix = (
  structure: Structure,
  numbering: Numbering,
  rest: AtRest,
): SymmetricMatrix =>
  assembled(structure, numbering, (element, e) => block(structure, element, rest.forces[e]));

function block({ nodes }: Structure, element: Element, forces: Float64Array): Float64Array | null {
  switch (element.kind) {
    case 'bar': {
      const [a, b] = element.nodes.map((node) => pointAt(nodes, node));
      return barGeometric(element, a, b).map((x) => x * forces[0]);
    }
    case 'beam': {
      const [a, b] = element.nodes.map((node) => pointAt(nodes, node));
      return beamGeometric(element, a, b).map((x) => x * forces[0]);
    }
    case 'membrane':
    case 'facet': {
      const [a, b, c] = element.nodes.map((node) => pointAt(nodes, node));
      const flat = flatTriangle(element.nodes, [a, b, c]);
      const stress = [forces[0], forces[1], forces[2]].map((x) => x / flat.area);
      const small = triangleGeometric(flat, [stress[0], stress[1], stress[2]]);
      return element.kind === 'membrane' ? small : widened(small);
    }
    case 'spring':
    case 'prop':
    case 'joint':
      return null;
  }
}

/** A 9 × 9 block of movements as one of movements and rotations, 18 × 18. */
function widened(small: Float64Array): Float64Array {
  const wide = new Float64Array(324);
  const at = (i: number): number => 6 * Math.floor(i / 3) + (i % 3);
  for (let i = 0; i < 9; i++)
    for (let j = 0; j < 9; j++) wide[at(i) * 18 + at(j)] = small[i * 9 + j];
  return wide;
}
