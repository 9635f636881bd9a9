// Is this a sound shell: an oriented surface, its hubs on the sphere, every hub with one star?

import { norm } from '../math/vector.ts';
import { hubPoint, placeSolidAngle } from './geometry.ts';
import type { HubId, PlaceId } from './ids.ts';
import { rims } from './rims.ts';
import { hubCount, placeCount, type Shell, seamCount, sideCount } from './shell.ts';
import { fansOf } from './stars.ts';
import { COVERED_ONCE, OFF_SPHERE } from './tolerances.ts';

/** What `checkShell` finds. */
export interface ShellVerdict {
  /** True where nothing below is amiss: one piece, no pinched or loose hub, no place inside out,
   * every hub on the sphere, nothing covered twice. Open and closed shells can both be sound. */
  readonly sound: boolean;
  /** True where no side is open. */
  readonly closed: boolean;
  /** Hubs − sides (a seam once) + places, loose hubs not counted: 2 for a ball, 1 for a dome. */
  readonly eulerCharacteristic: number;
  /** Number of pieces that hang together by seams. */
  readonly components: number;
  /** Number of closed loops of open sides. */
  readonly rims: number;
  /** Hubs where parts touch in that hub alone. */
  readonly pinchedHubs: readonly HubId[];
  /** Hubs that no place has. */
  readonly looseHubs: readonly HubId[];
  /** Places whose hubs run clockwise seen from outside. */
  readonly insideOut: readonly PlaceId[];
  /** Hubs farther off the sphere than 1/1000 of its radius. */
  readonly offSphere: readonly HubId[];
  /** Largest distance of a hub from the sphere, metres. */
  readonly worstOffSphere: number;
  /** Solid angle of all places over 4π: 1 for a ball, less for a part, more where places overlap. */
  readonly coverage: number;
}

/** Whether a shell is sound, and if not what is amiss. Orientation along seams holds already:
 * `makeShell` refuses places that run along a side in the same direction. */
export function checkShell(shell: Shell): ShellVerdict {
  const fans = fansOf(shell);
  const hubs = Array.from({ length: hubCount(shell) }, (_, h) => h as HubId);
  const pinchedHubs = hubs.filter((h) => (fans[h]?.length ?? 0) > 1);
  const looseHubs = hubs.filter((h) => fans[h]?.length === 0);
  const off = hubs.map((h) => Math.abs(norm(hubPoint(shell, h)) - shell.radius));
  const offSphere = hubs.filter((h) => !((off[h] as number) <= OFF_SPHERE * shell.radius));
  const angles = Array.from({ length: placeCount(shell) }, (_, p) =>
    placeSolidAngle(shell, p as PlaceId),
  );
  const insideOut = angles.flatMap((angle, p) => (angle > 0 ? [] : [p as PlaceId]));
  const coverage = angles.reduce((sum, a) => sum + a, 0) / (4 * Math.PI);
  const components = componentCount(shell);
  const open = sideCount(shell) - 2 * seamCount(shell);
  const closed = open === 0;
  const edges = seamCount(shell) + open;
  const amiss = pinchedHubs.length + looseHubs.length + insideOut.length + offSphere.length;
  return {
    sound:
      amiss === 0 &&
      components === 1 &&
      (closed ? Math.abs(coverage - 1) <= COVERED_ONCE : coverage < 1),
    closed,
    eulerCharacteristic: hubs.length - looseHubs.length - edges + placeCount(shell),
    components,
    rims: rims(shell).length,
    pinchedHubs,
    looseHubs,
    insideOut,
    offSphere,
    worstOffSphere: off.reduce((worst, d) => Math.max(worst, d), 0),
    coverage,
  };
}

/** Place → the lowest place that hangs together with it by seams. */
export function componentsOf(shell: Shell): Int32Array {
  const component = new Int32Array(placeCount(shell)).fill(-1);
  for (let start = 0; start < component.length; start++) {
    if (component[start] !== -1) continue;
    const stack = [start];
    component[start] = start;
    for (let p = stack.pop(); p !== undefined; p = stack.pop()) {
      for (let s = shell.placeStart[p] as number; s < (shell.placeStart[p + 1] as number); s++) {
        const mate = shell.mate[s] as number;
        if (mate < 0) continue;
        const other = shell.sidePlace[mate] as number;
        if (component[other] !== -1) continue;
        component[other] = start;
        stack.push(other);
      }
    }
  }
  return component;
}

const componentCount = (shell: Shell): number => new Set(componentsOf(shell)).size;
