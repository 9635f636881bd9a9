// What is asked of the anchors of each base hub. Forces at the base come from the loads as they are;
// where only the whole shell's drag, lift and weight are known they are shared over the hubs here.

import { commonPractice, type Provenance } from '../../loads/provenance.ts';
import { assertNumber } from '../../math/doors.ts';
import type { Base } from '../base.ts';
import type { Practice } from './practice.ts';

/** Forces at one base hub in one load case, N, before any factor. */
export interface HubForce {
  /** Number of the base hub. */
  readonly hub: number;
  /** What the wind lifts there; negative where it presses down. */
  readonly lift: number;
  /** What the shell's own weight presses there. */
  readonly weight: number;
  /** What the wind pushes along the ground there. */
  readonly shear: number;
}

/** One load case at the base: a wind on a stage. */
export interface BaseForces {
  /** The case in words: `25 m/s from 40°, whole shell`. */
  readonly name: string;
  readonly hubs: readonly HubForce[];
  readonly sources: readonly Provenance[];
}

/** What the wind does to the shell as a whole, N and metres. */
export interface WholeForces {
  readonly drag: number;
  readonly lift: number;
  readonly weight: number;
  /** Height above the base at which the drag acts: on a sphere its centre, whatever the law, as
   * every normal pressure points there. */
  readonly armHeight: number;
}

/** The whole's forces shared over the base hubs as under a stiff base: weight and shear in equal
 * parts, lift in equal parts and by the overturning moment drag × arm in proportion to the distance
 * from its axis (the bolt-group formula). Wind from the worst direction for each hub. On a regular
 * ring of radius r the most is (L − G)/N + 2 M/(N r). RangeError for a force that is no number. */
export function sharedForces(base: Base, whole: WholeForces, name: string): BaseForces {
  for (const [key, value] of Object.entries(whole)) assertNumber(key, value);
  const n = base.hubs.length;
  const mean = [0, 1].map((i) => base.hubs.reduce((sum, { at }) => sum + (at[i] as number), 0) / n);
  const points = base.hubs.map(({ at }) => at.map((c, i) => c - (mean[i] as number)));
  const moment = (i: number, j: number): number =>
    points.reduce((sum, p) => sum + (p[i] as number) * (p[j] as number), 0);
  const [xx, xy, yy] = [moment(0, 0), moment(0, 1), moment(1, 1)];
  const det = xx * yy - xy * xy;
  const overturning = Math.abs(whole.drag * whole.armHeight);
  return {
    name,
    hubs: base.hubs.map(({ number }, k) => {
      const [x, y] = points[k] as [number, number];
      const lever = Math.hypot(yy * x - xy * y, xx * y - xy * x) / det;
      return {
        hub: number,
        lift: whole.lift / n + overturning * lever,
        weight: whole.weight / n,
        shear: Math.abs(whole.drag) / n,
      };
    }),
    sources: [commonPractice('forces shared over the base hubs as under a stiff base')],
  };
}

/** What is asked of one hub, N, factors in. */
export interface Demand {
  readonly hub: number;
  /** Upward; 0 where weight holds it. */
  readonly up: number;
  /** Weight left over where it more than holds the hub down; else 0. */
  readonly spare: number;
  /** Along the ground. */
  readonly shear: number;
  /** The load case that asks most. */
  readonly from: string;
}

/** The case that asks most of each hub by what `asked` makes of it (ties: the first); hubs that no
 * case speaks of are left out. */
export function demands(
  base: Base,
  cases: readonly BaseForces[],
  practice: Practice,
  asked: (demand: Demand) => number,
): Demand[] {
  return base.hubs.flatMap(({ number }) => {
    const all = cases.flatMap(({ name, hubs }) =>
      hubs.filter(({ hub }) => hub === number).map((force) => demandOf(force, name, practice)),
    );
    const worst = all.reduce<Demand | null>(
      (best, one) => (best === null || asked(one) > asked(best) ? one : best),
      null,
    );
    return worst === null ? [] : [worst];
  });
}

function demandOf(force: HubForce, name: string, practice: Practice): Demand {
  const net = practice.wind * force.lift - practice.weight * force.weight;
  return {
    hub: force.hub,
    up: Math.max(0, net),
    spare: Math.max(0, -net),
    shear: practice.wind * practice.sliding * force.shear,
    from: name,
  };
}
