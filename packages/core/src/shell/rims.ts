// Rims: the closed loops of open sides. The base ring is the rim that lies lowest; the others are
// openings. Sides run with the shell on their left seen from outside, so that the base ring goes
// anticlockwise seen from above.

import type { HubId, SideId } from './ids.ts';
import { hubAt, nextSide, type Shell, sideCount } from './shell.ts';

/** One closed loop of open sides. */
export interface Rim {
  /** Open sides, each starting where the one before it ends. */
  readonly sides: readonly SideId[];
  /** The hubs that those sides start from. */
  readonly hubs: readonly HubId[];
  /** Heights of its hubs, metres. */
  readonly z: { readonly min: number; readonly mean: number; readonly max: number };
}

/** All rims, the one with the lowest mean height first (ties: the lowest side); none where the
 * shell is closed. */
export function rims(shell: Shell): Rim[] {
  const found: Rim[] = [];
  const seen = new Uint8Array(sideCount(shell));
  for (let start = 0; start < sideCount(shell); start++) {
    if (seen[start] || (shell.mate[start] as number) >= 0) continue;
    const sides: SideId[] = [];
    for (let s = start as SideId; !seen[s]; s = openSideAfter(shell, s)) {
      seen[s] = 1;
      sides.push(s);
    }
    found.push(rimOf(shell, sides));
  }
  return found.sort(
    (a, b) => a.z.mean - b.z.mean || (a.sides[0] as number) - (b.sides[0] as number),
  );
}

/** The lowest rim, or null where the shell is closed. */
export const baseRing = (shell: Shell): Rim | null => rims(shell)[0] ?? null;

/** The open side that starts where an open side ends, in the same run of corners. */
function openSideAfter(shell: Shell, side: SideId): SideId {
  let next = nextSide(shell, side);
  while ((shell.mate[next] as number) >= 0) next = nextSide(shell, shell.mate[next] as SideId);
  return next;
}

function rimOf(shell: Shell, sides: readonly SideId[]): Rim {
  const hubs = sides.map((side) => hubAt(shell, side));
  const heights = hubs.map((hub) => shell.hubs[3 * hub + 2] as number);
  const mean = heights.reduce((sum, z) => sum + z, 0) / heights.length;
  return { sides, hubs, z: { min: Math.min(...heights), mean, max: Math.max(...heights) } };
}
