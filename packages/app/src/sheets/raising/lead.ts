// What the lead has fixed in the order, by the numbers of places, so that it outlives a new computation.
// Kept for each project while the page is open.

import { createStore } from 'zustand/vanilla';
import type { Before } from '../../engine/raising.ts';

/** The lead's own. */
export interface Lead {
  /** Pairs: the piece of the first goes up before that of the second. */
  readonly before: readonly (readonly [place: string, than: string])[];
  /** Each the places of one lift; null: the order is sought. */
  readonly order: readonly (readonly string[])[] | null;
}

/** Nothing fixed. */
export const noLead: Lead = { before: [], order: null };

/** Project → what its lead has fixed. */
export const leads = createStore<Readonly<Record<string, Lead>>>(() => ({}));

/** Fixes something. */
export function fix(project: string, part: Partial<Lead>): void {
  leads.setState((all) => ({ ...all, [project]: { ...(all[project] ?? noLead), ...part } }));
}

/** What is fixed by index; pairs and an order with a place that does not stand are left out. */
export function leadByIndex(
  { before, order }: Lead,
  numbers: readonly string[],
): { readonly before: readonly Before[]; readonly order: readonly (readonly number[])[] | null } {
  const at = new Map(numbers.map((number, i) => [number, i]));
  const pins = before.flatMap(([a, b]) => {
    const [place, than] = [at.get(a), at.get(b)];
    return place === undefined || than === undefined ? [] : [{ place, than }];
  });
  const lifts = order?.map((lift) => lift.map((number) => at.get(number) ?? -1)) ?? null;
  return { before: pins, order: lifts?.flat().includes(-1) ? null : lifts };
}

/** The stages of a plan with one moved by a step; the same where there is no room. */
export function movedStage(numbers: readonly number[], stage: number, by: -1 | 1): number[] {
  const at = numbers.indexOf(stage);
  const to = at + by;
  const next = [...numbers];
  if (at < 0 || to < 0 || to >= numbers.length) return next;
  [next[at], next[to]] = [next[to] as number, next[at] as number];
  return next;
}
