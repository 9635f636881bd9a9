// A place with what it is bolted to: side by side in the kind's own order, sides from 1 as on paper.

import { type Kind, kindSide, type Shell, type SideId } from '@shellraise/core';

/** What is across one side of a place. */
export interface Across {
  readonly place: number;
  readonly number: string;
  readonly kind: string;
  /** From 1. */
  readonly side: number;
}

/** One side of a place. */
export interface PlaceSide {
  /** Of the shell. */
  readonly id: number;
  /** Of the kind, from 1. */
  readonly side: number;
  /** Of the kind, metres, hub to hub. */
  readonly length: number;
  /** Null where the side is open. */
  readonly to: Across | null;
}

/** A place in a shell. */
export interface ShellPlaces {
  readonly shell: Shell;
  readonly kinds: readonly Kind[];
  /** Place → its number. */
  readonly numbers: readonly string[];
}

/** The sides of a place, from the kind's side 1 on, anticlockwise seen from outside. */
export function seamsOf({ shell, kinds, numbers }: ShellPlaces, place: number): PlaceSide[] {
  const kindAt = (p: number): Kind | undefined => kinds[shell.kind[p] as number];
  const sides: PlaceSide[] = [];
  for (
    let s = shell.placeStart[place] as number;
    s < (shell.placeStart[place + 1] as number);
    s++
  ) {
    const own = kindSide(shell, s as SideId);
    const mate = shell.mate[s] as number;
    const other = mate < 0 ? -1 : (shell.sidePlace[mate] as number);
    sides.push({
      id: s,
      side: own + 1,
      length: kindAt(place)?.sides[own] ?? 0,
      to:
        mate < 0
          ? null
          : {
              place: other,
              number: numbers[other] ?? '',
              kind: kindAt(other)?.id ?? '',
              side: kindSide(shell, mate as SideId) + 1,
            },
    });
  }
  return sides.sort((a, b) => a.side - b.side);
}

/** Places that meet in a hub, as they lie around it anticlockwise seen from outside; at the rim
 * from one open side to the other. */
export function placesAround(shell: Shell, hub: number): number[] {
  const corners = Array.from(shell.sideHub.keys()).filter((side) => shell.sideHub[side] === hub);
  const before = (side: number): number => {
    const place = shell.sidePlace[side] as number;
    return side === shell.placeStart[place]
      ? (shell.placeStart[place + 1] as number) - 1
      : side - 1;
  };
  // Anticlockwise from a corner: across the side that ends in the hub.
  const next = (side: number): number => shell.mate[before(side)] as number;
  const reached = new Set(corners.map(next));
  const start = corners.find((side) => !reached.has(side)) ?? corners[0];
  const around: number[] = [];
  for (let at = start; at !== undefined && at >= 0 && around.length < corners.length; at = next(at))
    around.push(shell.sidePlace[at] as number);
  return around;
}
