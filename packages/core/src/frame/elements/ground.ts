// What stands between a node and the ground: springs, and props that only push.

import { norm, scale } from '../../math/vector.ts';
import type { Natural, Prop, Spring } from './element.ts';
import { unknownsPerNode } from './element.ts';

/** Springs by the movements (and rotations, where a spring resists them) of their node. */
export function springNatural(spring: Spring): Natural {
  const width = unknownsPerNode(spring);
  const rows = new Float64Array(width * width);
  const moduli = new Float64Array(width * width);
  for (let k = 0; k < width; k++) {
    rows[k * (width + 1)] = 1;
    moduli[k * (width + 1)] = spring.stiffness[k];
  }
  return { width, rows, moduli };
}

/** A prop by how far its node moves along it; a negative force is its push. Throws RangeError where
 * it has no direction. */
export function propNatural({ nodes, along, stiffness }: Prop): Natural {
  const length = norm(along);
  if (!(length > 0)) throw new RangeError(`the prop at node ${nodes[0]} pushes along ${along}`);
  return {
    width: 3,
    rows: Float64Array.from(scale(along, 1 / length)),
    moduli: Float64Array.of(stiffness),
  };
}
