// What lies beside a place.

import type { Shell } from '@shellraise/core';

/** Kinds (indices) beside a place, one a side, anticlockwise seen from outside; null at an open side. */
export function neighboursOf(shell: Shell, place: number): (number | null)[] {
  const kinds: (number | null)[] = [];
  for (
    let s = shell.placeStart[place] as number;
    s < (shell.placeStart[place + 1] as number);
    s++
  ) {
    const mate = shell.mate[s] as number;
    kinds.push(mate < 0 ? null : (shell.kind[shell.sidePlace[mate] as number] as number));
  }
  return kinds;
}
