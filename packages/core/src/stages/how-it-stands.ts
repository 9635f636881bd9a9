// Whether a stage stands: what moves freely in it, and the fewest hubs to prop so that nothing does.

import type { FrameModel } from '../frame/model.ts';
import type { Shell } from '../shell/shell.ts';
import { fewestProps, type PropSearch } from './fewest-props.ts';
import type { Patch } from './patches.ts';
import { frameOfStage, type Stage } from './stage.ts';
import { freeMovements, heldToo, type Tied, tiedFrame } from './tied.ts';

/** How a stage stands. */
export interface HowItStands {
  /** Independent movements that nothing resists, its own props in place; 0: it stands. */
  readonly movements: number;
  /** The hub that they move most, and the places whose panels they move; null and none where it
   * stands. */
  readonly at: number | null;
  readonly moving: readonly number[];
  /** Hubs to prop besides, the most helpful first; none where it stands. */
  readonly props: readonly number[];
  /** Whether fewer were shown not to be enough. */
  readonly proved: boolean;
  /** Patches that show it: one hub of each must be held. The next stage has most of them too. */
  readonly patches: readonly Patch[];
  /** The ties of the stage with all those props in place. */
  readonly propped: Tied;
}

/** How a stage stands where too few hubs may be propped. */
export type CannotBePropped = Omit<HowItStands, 'props' | 'propped'> & { readonly props: null };

/** How a stage stands that has no faults. Any hub of a placed panel may be propped unless `mayProp`
 * says no; `props` is then null where the allowed ones are not enough. */
export function howItStands(
  shell: Shell,
  stage: Stage,
  options: PropSearch = {},
): HowItStands | CannotBePropped {
  return howFrameStands(frameOfStage(shell, stage), options);
}

/** How a frame stands, its own props held. */
export function howFrameStands(
  model: FrameModel,
  options: PropSearch = {},
): HowItStands | CannotBePropped {
  const tied = tiedFrame(model);
  const space = freeMovements(tied);
  if (space.length === 0)
    return {
      movements: 0,
      at: null,
      moving: [],
      props: [],
      proved: true,
      patches: [],
      propped: tied,
    };
  const told = { movements: space.length, ...whereOf(tied, space) };
  const found = fewestProps(tied, space, options);
  if (found === null) return { ...told, props: null, proved: true, patches: [] };
  const { hubs: props, proved, patches } = found;
  return { ...told, props, proved, patches, propped: heldToo(tied, props) };
}

/** The hub that moves most, and the places with a corner at a hub that moves. */
function whereOf(
  { model, joints, unknown }: Tied,
  space: readonly Float64Array[],
): { readonly at: number; readonly moving: number[] } {
  const sizes = new Map<number, number>();
  joints.hub.forEach((hub, joint) => {
    let size = sizes.get(hub) ?? 0;
    for (const i of unknown.subarray(3 * joint, 3 * joint + 3))
      if (i >= 0) for (const v of space) size += v[i] * v[i];
    sizes.set(hub, size);
  });
  let [at, most] = [-1, 0];
  for (const [hub, own] of [...sizes].sort(([a], [b]) => a - b))
    if (own > most * (1 + 1e-6)) [at, most] = [hub, own];
  const moves = (hub: number): boolean => (sizes.get(hub) ?? 0) > 1e-6 * most;
  return {
    at,
    moving: model.panels.flatMap(({ place, hubs }) => (hubs.some(moves) ? [place] : [])),
  };
}
