// Stars: the run of corners around each hub, anticlockwise seen from outside. A corner is named
// by the side that starts at the hub, so that corner s lies between side s and the side before it.
//
//            b                 The corner after s, anticlockwise, is the mate of the side before s
//             \  next place    (it runs hub → b). An open star starts with the corner whose own
//     s-prev   \               side is open and ends with the one whose side before is open.
//               hub ——s—— a

import type { HubId, SideId } from './ids.ts';
import { hubCount, previousSide, type Shell, sideCount } from './shell.ts';

/** The corners around one hub. */
export interface Star {
  readonly hub: HubId;
  /** Corners, anticlockwise seen from outside; an open star starts at its open side. */
  readonly corners: readonly SideId[];
  /** True where the corners go all the way round. */
  readonly closed: boolean;
}

/** Hub → its runs of corners: one where the shell is sound, several where parts touch in that hub
 * alone (as half-built stages may), none where no place has that hub. A closed run starts with
 * its lowest side. */
export function fansOf(shell: Shell): Star[][] {
  const fans: Star[][] = Array.from({ length: hubCount(shell) }, () => []);
  const seen = new Uint8Array(sideCount(shell));
  const walk = (start: number, closed: boolean): void => {
    if (seen[start]) return;
    const corners: SideId[] = [];
    for (let s = start; s >= 0 && !seen[s]; s = cornerAfter(shell, s)) {
      seen[s] = 1;
      corners.push(s as SideId);
    }
    const hub = shell.sideHub[start] as HubId;
    (fans[hub] as Star[]).push({ hub, corners, closed });
  };
  for (let s = 0; s < sideCount(shell); s++) if ((shell.mate[s] as number) < 0) walk(s, false);
  for (let s = 0; s < sideCount(shell); s++) walk(s, true);
  return fans;
}

/** Hub → its star. Throws where the corners of a hub fall into several runs, or where a hub has
 * none: `checkShell` tells such shells, and `fansOf` reads them. */
export function starsOf(shell: Shell): Star[] {
  return fansOf(shell).map((runs, hub) => {
    if (runs.length !== 1)
      throw new Error(`hub ${hub} has ${runs.length} runs of corners, a star is one run`);
    return runs[0] as Star;
  });
}

const cornerAfter = (shell: Shell, side: number): number =>
  shell.mate[previousSide(shell, side as SideId)] as number;
