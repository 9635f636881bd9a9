// From the loads on the panels to the forces at the base hubs, shared as under a stiff base. Statics:
// over the hubs the lifts sum to the load's upward force and their moments to its moment.

import type { PanelFaces } from '../../loads/panels.ts';
import { commonPractice, mergeSources, type Provenance } from '../../loads/provenance.ts';
import { type PanelForces, totalsOf } from '../../loads/totals.ts';
import type { Base } from '../base.ts';
import type { BaseForces } from './demand.ts';

/** One load case on the panels. */
export interface PanelCase {
  readonly name: string;
  readonly wind: PanelForces;
  /** Weights of the panels that stand. */
  readonly weight: PanelForces;
  readonly sources: readonly Provenance[];
}

/** The forces at the base hubs of a load case: lift and weight in equal parts and by their moments in
 * proportion to the distance from the axis, shear in equal parts. A hub that the wind presses down
 * has a negative lift; a weight that would lift a hub (a stage far out of balance) is 0 there and its
 * lift is added to the wind's. */
export function baseForces(base: Base, faces: PanelFaces, load: PanelCase): BaseForces {
  const wind = upwardShares(base, faces, load.wind);
  const weight = upwardShares(base, faces, load.weight);
  return {
    name: load.name,
    hubs: base.hubs.map(({ number }, k) => {
      const down = -(weight.up[k] as number);
      return {
        hub: number,
        lift: (wind.up[k] as number) + Math.max(0, -down),
        weight: Math.max(0, down),
        shear: wind.along / base.hubs.length,
      };
    }),
    sources: mergeSources(load.sources, [
      commonPractice('forces shared over the base hubs as under a stiff base'),
    ]),
  };
}

/** What each hub bears of the loads upwards, N, and the whole along the ground. */
function upwardShares(
  base: Base,
  faces: PanelFaces,
  loads: PanelForces,
): { readonly up: readonly number[]; readonly along: number } {
  const n = base.hubs.length;
  const mean = (i: 0 | 1): number => base.hubs.reduce((sum, { at }) => sum + at[i], 0) / n;
  const level = base.level + base.hubs.reduce((sum, { rise }) => sum + rise, 0) / n;
  const [cx, cy] = [mean(0), mean(1)];
  const { force, moment } = totalsOf(faces, loads, [cx, cy, level]);
  const arms = base.hubs.map(({ at: [x, y] }) => [x - cx, y - cy] as const);
  const second = (i: 0 | 1, j: 0 | 1): number => arms.reduce((sum, p) => sum + p[i] * p[j], 0);
  const [xx, xy, yy] = [second(0, 0), second(0, 1), second(1, 1)];
  const det = xx * yy - xy * xy;
  // Σ x·up = −My, Σ y·up = Mx.
  const a = (-moment[1] * yy - moment[0] * xy) / det;
  const b = (moment[0] * xx + moment[1] * xy) / det;
  return {
    up: arms.map(([x, y]) => force[2] / n + a * x + b * y),
    along: Math.hypot(force[0], force[1]),
  };
}
