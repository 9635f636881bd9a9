// How open a shell is at a stage, and which way its mouth looks: by the places that have no panel.

import { add, cross, norm, pointAt, scale, type Vec3 } from '../../math/vector.ts';
import type { HubId } from '../../shell/ids.ts';
import { rims } from '../../shell/rims.ts';
import type { Shell } from '../../shell/shell.ts';
import type { Enclosure } from '../asce-7-16/internal.ts';
import type { PanelFaces } from '../panels.ts';
import { fromMemory, type Provenance } from '../provenance.ts';

/** The open part of a shell's surface. */
export interface Mouth {
  /** Places without a panel. */
  readonly missing: Int32Array;
  /** Their vector area and that of the shell's further rims, outward, m²: where the mouth looks. */
  readonly area: Vec3;
  /** Open area over the whole surface, 0 … 1. */
  readonly share: number;
}

/** Up to this share open a shell counts as closed. */
const CLOSED_SHARE = 0.01;

/** Beyond this share open it counts as half built. */
const DOOR_SHARE = 0.3;

/** Where the two limits come from. */
export const ENCLOSURE_LIMITS: Provenance = fromMemory(
  'closed to 1 % open (ASCE 7-16, 26.2), half built beyond 30 % (EN 1991-1-4, 7.2.9(2))',
);

/** The mouth of a shell of which only `placed` have a panel. The shell has every place of the
 * finished one, those of a door too; its lowest rim is the base and no opening.
 * Source: geometry. */
export function mouthOf(shell: Shell, faces: PanelFaces, placed: ArrayLike<number>): Mouth {
  const count = faces.sampleStart.length - 1;
  const has = new Uint8Array(count);
  for (let i = 0; i < placed.length; i++) has[placed[i] as number] = 1;
  const missing: number[] = [];
  let [area, open, whole]: [Vec3, number, number] = [[0, 0, 0], 0, 0];
  for (let p = 0; p < count; p++) {
    const size = faces.size[p] as number;
    whole += size;
    if (has[p]) continue;
    missing.push(p);
    area = add(area, pointAt(faces.area, p));
    open += size;
  }
  for (const rim of rims(shell).slice(1)) {
    const own = scale(loopArea(shell, rim.hubs), -1);
    area = add(area, own);
    open += norm(own);
    whole += norm(own);
  }
  return { missing: Int32Array.from(missing), area, share: open / whole };
}

/** Vector area of a closed loop of hubs, m²; up where it runs anticlockwise seen from above. */
function loopArea(shell: Shell, hubs: readonly HubId[]): Vec3 {
  return scale(
    hubs.reduce<Vec3>(
      (sum, hub, i) => {
        const next = hubs[(i + 1) % hubs.length] as HubId;
        return add(sum, cross(pointAt(shell.hubs, hub), pointAt(shell.hubs, next)));
      },
      [0, 0, 0],
    ),
    0.5,
  );
}

/** How open it is, in the words of the internal pressure.
 * Source: ASCE 7-16, 26.2 and EN 1991-1-4:2005, 7.2.9(2), limits from memory. */
export function enclosureOf({ share }: Pick<Mouth, 'share'>): Enclosure {
  if (share <= CLOSED_SHARE) return 'closed';
  return share <= DOOR_SHARE ? 'open door' : 'half open';
}

/** Whether the mouth looks to a side: its area seen from the side is over 1 % of the shell's whole.
 * A ring with an open top does not.
 * Source: geometry; the limit as for closed shells. */
export function looksAside(faces: PanelFaces, { area }: Pick<Mouth, 'area'>): boolean {
  let side = 0;
  for (let p = 0; p < faces.size.length; p++)
    side += (faces.size[p] as number) * (faces.upright[p] as number);
  return Math.hypot(area[0], area[1]) > (CLOSED_SHARE * side) / Math.PI;
}
