// What the lead has fixed in an order: a piece before another, and hubs that stay propped.

import type { Piece } from './pieces.ts';

/** A place whose piece goes up before that of another. */
export interface Before {
  readonly place: number;
  readonly than: number;
}

/** The lead's own. */
export interface Pins {
  readonly before: readonly Before[];
  /** Hubs propped from when a panel reaches them to the end of the build. */
  readonly props: readonly number[];
}

/** Nothing fixed. */
export const noPins: Pins = { before: [], props: [] };

/** For each pin that an order breaks, the pin; a pin within one piece is never broken. */
export function brokenPins(order: readonly Piece[], { before }: Pins): Before[] {
  if (before.length === 0) return [];
  const at = new Map<number, number>();
  order.forEach(({ places }, i) => {
    for (const p of places) at.set(p, i);
  });
  return before.filter(({ place, than }) => (at.get(place) ?? -1) > (at.get(than) ?? Infinity));
}

/** Place → places whose pieces must be up before it. */
export function predecessors({ before }: Pins): ReadonlyMap<number, readonly number[]> {
  const found = new Map<number, number[]>();
  for (const { place, than } of before) found.set(than, [...(found.get(than) ?? []), place]);
  return found;
}

/** A ring of pins, each before the next and the last before the first, by place; null: there is
 * none. Pieces of several places count as one. */
export function ringOfPins(pieces: readonly Piece[], { before }: Pins): number[] | null {
  const piece = new Map<number, number>();
  pieces.forEach(({ places }, i) => {
    for (const p of places) piece.set(p, i);
  });
  const next = new Map<number, { to: number; place: number }[]>();
  for (const { place, than } of before) {
    const [a, b] = [piece.get(place), piece.get(than)];
    if (a === undefined || b === undefined || a === b) continue;
    next.set(a, [...(next.get(a) ?? []), { to: b, place }]);
  }
  const state = new Map<number, 'open' | 'done'>();
  const path: { at: number; place: number }[] = [];
  const visit = (at: number): number[] | null => {
    state.set(at, 'open');
    for (const { to, place } of next.get(at) ?? []) {
      path.push({ at, place });
      if (state.get(to) === 'open')
        return path.slice(path.findIndex((one) => one.at === to)).map((one) => one.place);
      if (!state.has(to)) {
        const found = visit(to);
        if (found) return found;
      }
      path.pop();
    }
    state.set(at, 'done');
    return null;
  };
  for (const at of next.keys()) {
    const found = state.has(at) ? null : visit(at);
    if (found) return found;
  }
  return null;
}
