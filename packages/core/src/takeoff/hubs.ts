// Hubs and hub plates by size: how many corners meet, and whether the hub lies on the rim, where
// a plate has fewer arms or another shape.

import type { SideId } from '../shell/ids.ts';
import type { Shell } from '../shell/shell.ts';
import { nextSide } from '../shell/shell.ts';

/** Hubs of one size. */
export interface HubSize {
  readonly corners: number;
  readonly rim: boolean;
  readonly hubs: number;
}

/** Hub → corners that meet there; 0 for a hub that no place uses. */
export function cornersAtHubs(shell: Shell): Int32Array {
  const corners = new Int32Array(shell.hubs.length / 3);
  for (const hub of shell.sideHub) corners[hub] = (corners[hub] as number) + 1;
  return corners;
}

/** Hub → 1 where an open side begins or ends. */
export function rimHubs(shell: Shell): Uint8Array {
  const rim = new Uint8Array(shell.hubs.length / 3);
  shell.mate.forEach((mate, side) => {
    if (mate >= 0) return;
    rim[shell.sideHub[side] as number] = 1;
    rim[shell.sideHub[nextSide(shell, side as SideId)] as number] = 1;
  });
  return rim;
}

/** Hubs in use by size: inner hubs first, then rim hubs, each from the most corners. */
export function hubSizes(shell: Shell): HubSize[] {
  const rim = rimHubs(shell);
  const counts = new Map<string, HubSize>();
  cornersAtHubs(shell).forEach((corners, hub) => {
    if (corners === 0) return;
    const key = `${corners}/${rim[hub]}`;
    const hubs = (counts.get(key)?.hubs ?? 0) + 1;
    counts.set(key, { corners, rim: rim[hub] === 1, hubs });
  });
  return [...counts.values()].sort(
    (a, b) => Number(a.rim) - Number(b.rim) || b.corners - a.corners,
  );
}
