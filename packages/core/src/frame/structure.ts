// A structure of finite elements as plain data: nodes, elements, what is held. Global axes;
// metres, newtons, radians. Each node has six directions: x, y, z and rotation about them.

import { pointAt, type Vec3 } from '../math/vector.ts';
import { barNatural } from './elements/bar.ts';
import { beamNatural } from './elements/beam.ts';
import type { Element, Natural } from './elements/element.ts';
import { facetNatural } from './elements/facet.ts';
import { propNatural, springNatural } from './elements/ground.ts';
import { jointNatural } from './elements/joint.ts';
import { membraneNatural } from './elements/membrane.ts';

/** A node some of whose directions are held. */
export interface Held {
  readonly node: number;
  /** Which of the six directions are held; null: all three movements, no rotation. */
  readonly directions: readonly boolean[] | null;
}

/** A structure of finite elements. */
export interface Structure {
  /** Stride 3. */
  readonly nodes: Float64Array;
  readonly elements: readonly Element[];
  readonly held: readonly Held[];
  /** Node → node whose movements it shares, each keeping its rotations (a hinge); itself elsewhere.
   * Nodes move each by itself where left out. */
  readonly movesWith?: Int32Array;
}

/** Number of nodes. */
export const nodeCount = (structure: Structure): number => structure.nodes.length / 3;

/** An element by its natural strains where its nodes stand. */
export function naturalOf(element: Element, nodes: Float64Array): Natural {
  const at = (k: number): Vec3 => pointAt(nodes, element.nodes[k] as number);
  switch (element.kind) {
    case 'bar':
      return barNatural(element, at(0), at(1));
    case 'beam':
      return beamNatural(element, at(0), at(1));
    case 'membrane':
      return membraneNatural(element, [at(0), at(1), at(2)]);
    case 'facet':
      return facetNatural(element, [at(0), at(1), at(2)]);
    case 'spring':
      return springNatural(element);
    case 'prop':
      return propNatural(element);
    case 'joint':
      return jointNatural(element);
  }
}
