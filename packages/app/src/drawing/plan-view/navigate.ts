// From place to place with the arrow keys: to the neighbour across the side that lies nearest in
// that direction on the drawing; where no side does, to the place across the hub that does.

import type { Shell } from '@shellraise/core';
import { type PlanPoints, type Spot, spotAt } from './pick.ts';

/** The four keys, as directions on the drawing (y down). */
export const directions: Readonly<Record<string, Spot>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** A neighbour counts when it lies within this angle of the direction: across a side 60°, across a
 * hub 40°. */
const ACROSS_SIDE = Math.cos((60 * Math.PI) / 180) - 1e-9;
const ACROSS_HUB = Math.cos((40 * Math.PI) / 180);

/** The place next to `place` in a direction; null where the shell ends there. */
export function neighbourTowards(
  shell: Shell,
  plan: PlanPoints,
  place: number,
  direction: Spot,
): number | null {
  const from = spotAt(plan.labels, place);
  const along = (other: number): number => {
    const [x, y] = spotAt(plan.labels, other);
    const [dx, dy] = [x - from[0], y - from[1]];
    return (dx * direction[0] + dy * direction[1]) / (Math.hypot(dx, dy) || 1);
  };
  return (
    best(acrossSides(shell, place), along, ACROSS_SIDE) ??
    best(acrossHubs(shell, place), along, ACROSS_HUB)
  );
}

/** Where the keys begin when nothing is selected: the place drawn nearest to the crown. */
export function firstPlace(plan: PlanPoints): number | null {
  let first: number | null = null;
  let least = Infinity;
  for (let place = 0; 2 * place < plan.labels.length; place++) {
    const away = Math.hypot(...spotAt(plan.labels, place));
    if (away < least) [first, least] = [place, away];
  }
  return first;
}

function best(
  places: readonly number[],
  along: (place: number) => number,
  least: number,
): number | null {
  let [found, most]: [number | null, number] = [null, least];
  for (const place of places) {
    const merit = along(place);
    if (merit > most + 1e-9) [found, most] = [place, merit];
  }
  return found;
}

function acrossSides(shell: Shell, place: number): number[] {
  const found: number[] = [];
  for (
    let s = shell.placeStart[place] as number;
    s < (shell.placeStart[place + 1] as number);
    s++
  ) {
    const mate = shell.mate[s] as number;
    if (mate >= 0) found.push(shell.sidePlace[mate] as number);
  }
  return found;
}

function acrossHubs(shell: Shell, place: number): number[] {
  const own = new Set(shell.sideHub.subarray(shell.placeStart[place], shell.placeStart[place + 1]));
  const found = new Set<number>();
  shell.sideHub.forEach((hub, side) => {
    if (own.has(hub)) found.add(shell.sidePlace[side] as number);
  });
  found.delete(place);
  return [...found];
}
