// A membrane triangle of constant strain (M. J. Turner, R. W. Clough, H. C. Martin, L. J. Topp,
// J. Aeronaut. Sci. 23 (1956) 805). Natural strains: εx, εy, γ in its own axes; natural forces:
// the stresses there times its volume.

import type { Vec3 } from '../../math/vector.ts';
import type { Membrane, Natural } from './element.ts';
import { flatTriangle, membraneRows, planeStress } from './triangle.ts';

/** A membrane between three points by its strains. */
export function membraneNatural(
  { nodes, thickness, young, poisson }: Membrane,
  points: readonly [Vec3, Vec3, Vec3],
): Natural {
  const flat = flatTriangle(nodes, points);
  const volume = flat.area * thickness;
  return {
    width: 9,
    rows: membraneRows(flat),
    moduli: planeStress(young, poisson).map((x) => x * volume),
  };
}
