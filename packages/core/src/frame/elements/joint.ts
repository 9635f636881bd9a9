// A joint between two nodes that turn against each other: the same moment by turn about every axis.

import type { Joint, Natural } from './element.ts';

/** Natural strains of a joint: the turn of its second node against its first, about x, y and z. */
export function jointNatural({ stiffness }: Joint): Natural {
  const rows = new Float64Array(36);
  const moduli = new Float64Array(9);
  for (let k = 0; k < 3; k++) {
    rows[12 * k + 3 + k] = -1;
    rows[12 * k + 9 + k] = 1;
    moduli[4 * k] = stiffness;
  }
  return { width: 12, rows, moduli };
}
