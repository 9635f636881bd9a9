// What was ticked off of the kit so far, kept in this browser by the project: a line of a bag is in it or
// not. What comes from storage is read entry by entry; anything else is dropped.

import type { Bag, KitTick, Need } from '@shellraise/core';

/** Ticked lines: bag and thing → how many went in. */
export type Ticked = Readonly<Record<string, number>>;

/** The key of a line: its bag and its thing. */
export const lineKey = (
  stage: number | null,
  { item, thread, length, corners, rim }: Need,
): string =>
  [stage ?? 'spares', item, thread, length === null ? '' : Math.round(length * 1e4), corners, rim]
    .map((part) => part ?? '')
    .join('|');

/** The ticks of these bags; lines that are in no bag any more are left out. */
export const ticksOf = (bags: readonly Bag[], ticked: Ticked): KitTick[] =>
  bags.flatMap(({ stage, needs }) =>
    needs.flatMap((need): KitTick[] => {
      const quantity = ticked[lineKey(stage, need)];
      return quantity === undefined ? [] : [{ stage, need, quantity }];
    }),
  );

/** A line ticked off with all that goes in, or taken out again. */
export function tickedWith(
  ticked: Ticked,
  stage: number | null,
  need: Need,
  isIn: boolean,
): Ticked {
  const { [lineKey(stage, need)]: _, ...others } = ticked;
  return isIn ? { ...others, [lineKey(stage, need)]: need.quantity } : others;
}

/** What storage holds. */
export function readTicked(text: string | null): Ticked {
  try {
    const raw: unknown = JSON.parse(text ?? '{}');
    if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return {};
    return Object.fromEntries(
      Object.entries(raw).filter(
        (entry): entry is [string, number] =>
          typeof entry[1] === 'number' && Number.isFinite(entry[1]) && entry[1] > 0,
      ),
    );
  } catch {
    return {};
  }
}
