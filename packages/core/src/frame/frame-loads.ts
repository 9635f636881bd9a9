// Loads on a frame, on the nodes of its mesh.

import { cross, norm, pointAt, scale, subtract, type Vec3 } from '../math/vector.ts';
import type { FrameMesh } from './mesh.ts';
import type { FrameParts } from './parts.ts';

/** Standard gravity, metres per second squared (3rd General Conference on Weights and Measures,
 * 1901). */
export const GRAVITY = 9.80665;

/** What acts on a frame. */
export interface FrameLoad {
  /** Pressure on each panel, pascals, in the order of the model's panels: positive where it presses
   * on the outside. */
  readonly pressure?: ArrayLike<number>;
  /** How many times its weight the frame bears, downwards (along −z); 1 where left out. */
  readonly weight?: number;
  /** Mass of each panel with its flanges, kilograms; null: by the density of its material. */
  readonly masses?: readonly (number | null)[];
  /** Forces on hubs, newtons: hub, then along x, y, z. */
  readonly hubForces?: readonly (readonly [hub: number, force: Vec3])[];
}

/** The load on each node, stride 6. Throws RangeError where a pressure or mass is missing or no
 * number, and where a force acts on a hub that nothing has reached. */
export function nodeLoads(mesh: FrameMesh, parts: FrameParts, load: FrameLoad): Float64Array {
  const full = new Float64Array(2 * mesh.structure.nodes.length);
  addPanels(full, mesh, parts, load);
  if (!load.masses?.some((mass) => mass !== null)) addFlanges(full, mesh, load);
  for (const [hub, force] of load.hubForces ?? []) {
    const node = mesh.hubOfNode.indexOf(hub);
    if (node < 0) throw new RangeError(`a force acts on hub ${hub}, where nothing stands`);
    for (let k = 0; k < 3; k++) full[6 * node + k] += force[k];
  }
  return full;
}

function addPanels(
  full: Float64Array,
  mesh: FrameMesh,
  { thickness, density }: FrameParts,
  load: FrameLoad,
): void {
  const { pressure, masses, weight = 1 } = load;
  const count = mesh.facets.length;
  for (const [name, list] of [
    ['pressures', pressure],
    ['masses', masses],
  ] as const)
    if (list !== undefined && list.length !== count)
      throw new RangeError(`${list.length} ${name} for ${count} panels`);
  mesh.facets.forEach((facets, p) => {
    const areas = facets.map((e) => areaVector(mesh, e));
    const whole = areas.reduce((sum, area) => sum + norm(area), 0);
    const pressed = pressure?.[p] ?? 0;
    const mass = masses?.[p] ?? null;
    if (!Number.isFinite(pressed) || !(mass === null || (mass >= 0 && mass < Infinity)))
      throw new RangeError(`panel ${p} has a pressure of ${pressed} and a mass of ${mass}`);
    const heavy = mass === null ? density * thickness : mass / whole;
    facets.forEach((e, i) => {
      const force = scale(areas[i], -pressed);
      const down = heavy * norm(areas[i]) * GRAVITY * weight;
      for (const node of mesh.structure.elements[e].nodes)
        for (let k = 0; k < 3; k++) full[6 * node + k] += (force[k] - (k === 2 ? down : 0)) / 3;
    });
  });
}

/** The weight of flanges, where no panel's mass is known that would hold it. */
function addFlanges(full: Float64Array, mesh: FrameMesh, { weight = 1 }: FrameLoad): void {
  for (const element of mesh.structure.elements) {
    if (element.kind !== 'beam') continue;
    const [a, b] = element.nodes;
    const along = subtract(pointAt(mesh.structure.nodes, b), pointAt(mesh.structure.nodes, a));
    const down = (element.density ?? 0) * element.section.area * norm(along) * GRAVITY * weight;
    full[6 * a + 2] -= down / 2;
    full[6 * b + 2] -= down / 2;
  }
}

/** Area of a facet along its outward normal, square metres. */
function areaVector(mesh: FrameMesh, e: number): Vec3 {
  const [a, b, c] = mesh.structure.elements[e].nodes.map((node) =>
    pointAt(mesh.structure.nodes, node as number),
  );
  return scale(cross(subtract(b, a), subtract(c, a)), 0.5);
}
