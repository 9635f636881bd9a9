// A part of a shell: some of its places, as a shell of its own that remembers where it came from.

import { hubCount, makeShell, type Shell } from './shell.ts';

/** Some places of a shell. */
export interface Part {
  readonly shell: Shell;
  /** Hub of the part → hub of the whole, ascending. */
  readonly hubs: Int32Array;
  /** Place of the part → place of the whole, in the order asked for. */
  readonly places: Int32Array;
}

/** The part of a shell made of the given places, each listed once, with only the hubs they have;
 * positions and radius stay. No places give an empty shell. */
export function partOf(shell: Shell, places: ArrayLike<number>): Part {
  const kept = Int32Array.from(places);
  const used = new Uint8Array(hubCount(shell));
  const hubsAround = (p: number): Int32Array =>
    shell.sideHub.subarray(shell.placeStart[p], shell.placeStart[p + 1]);
  for (const p of kept) for (const hub of hubsAround(p)) used[hub] = 1;
  const newHub = new Int32Array(hubCount(shell)).fill(-1);
  const hubs: number[] = [];
  used.forEach((flag, hub) => {
    if (flag) newHub[hub] = hubs.push(hub) - 1;
  });
  const part = makeShell({
    radius: shell.radius,
    hubs: Float64Array.from({ length: 3 * hubs.length }, (_, i) => {
      return shell.hubs[3 * (hubs[Math.floor(i / 3)] as number) + (i % 3)] as number;
    }),
    places: Array.from(kept, (p) => ({
      hubs: Array.from(hubsAround(p), (hub) => newHub[hub] as number),
      kind: shell.kind[p] as number,
      turn: shell.turn[p] as number,
    })),
  });
  return { shell: part, hubs: Int32Array.from(hubs), places: kept };
}
