// Which way round a panel sits in its place: each of its sides with what it lies against.

import type { Kind, Shell } from '@shellraise/core';

/** One side of a place. */
export interface SideTowards {
  /** Length of the panel's side that lies there, metres; null where its kind is unknown. */
  readonly length: number | null;
  /** Number of the place beyond it; null at a rim. */
  readonly towards: string | null;
}

/** The sides of a place in their order, anticlockwise seen from outside. */
export function wayRound(
  shell: Shell,
  kinds: readonly Kind[],
  numbers: readonly string[],
  place: number,
): readonly SideTowards[] {
  const [first, end] = [shell.placeStart[place]!, shell.placeStart[place + 1]!];
  const sides = kinds[shell.kind[place]!]?.sides;
  const turn = shell.turn[place] ?? 0;
  return Array.from({ length: end - first }, (_, i) => {
    const mate = shell.mate[first + i] ?? -1;
    return {
      length: sides?.[(turn + i) % sides.length] ?? null,
      towards: mate < 0 ? null : (numbers[shell.sidePlace[mate]!] ?? null),
    };
  });
}
