// The shells that could stand, as a list to look through: which of them are shown, which one was
// decided, and the next cut lower or higher of the same way up.

import type { Arrangement, Arrangements, PlacesDecision } from '@shellraise/core';

/** Which candidates are looked at. */
export interface CandidateFilter {
  readonly short: 'any' | 'nothing' | 'few';
  readonly flat: boolean;
}

/** All of them. */
export const allCandidates: CandidateFilter = { short: 'any', flat: false };

/** So many short are few: a twentieth of the places, three at least. */
export const fewOf = (places: number): number => Math.max(3, Math.floor(places / 20));

/** What is looked at first: those that lack few, where there are any. */
export function firstFilter(list: Arrangements): CandidateFilter {
  const few: CandidateFilter = { short: 'few', flat: false };
  return shownCandidates(list, few).length > 0 ? few : allCandidates;
}

/** Indices of the candidates that a filter leaves, in the order of the list. */
export function shownCandidates(list: Arrangements, filter: CandidateFilter): number[] {
  return list.arrangements.flatMap((one, i) => (passes(one, filter) ? [i] : []));
}

function passes({ short, cut }: Arrangement, filter: CandidateFilter): boolean {
  if (filter.flat && !cut.flat) return false;
  if (filter.short === 'nothing') return short === 0;
  return filter.short === 'any' || short <= fewOf(cut.places.length);
}

/** The candidate that a decision stands for; null where it is not in the list. */
export function decidedCandidate(list: Arrangements, decision: PlacesDecision): number | null {
  const { wayUp, cut } = decision;
  let best: number | null = null;
  let least = 0.05 * cut.height;
  list.arrangements.forEach((one, i) => {
    const way = list.waysUp[one.wayUp];
    const same =
      way?.at === wayUp.at &&
      way.orbit === wayUp.orbit &&
      way.kinds.join(' ') === wayUp.kinds.join(' ');
    if (!same || one.cut.places.length !== cut.places) return;
    const off = Math.abs(one.cut.height - cut.height);
    if (off > least) return;
    [best, least] = [i, off];
  });
  return best;
}

/** The same way up cut lower (taller, more places) or higher; null where there is none. */
export function nextCut(list: Arrangements, from: number, to: 'lower' | 'higher'): number | null {
  const own = list.arrangements[from];
  if (!own) return null;
  const sign = to === 'lower' ? 1 : -1;
  let best: number | null = null;
  let least = Infinity;
  list.arrangements.forEach((one, i) => {
    if (one.wayUp !== own.wayUp) return;
    const more = sign * (one.cut.places.length - own.cut.places.length);
    if (more > 0 && more < least) [best, least] = [i, more];
  });
  return best;
}

/** Panels left over, of kinds that were counted. */
export const leftOver = ({ stock }: Arrangement): number =>
  stock.reduce((sum, row) => sum + row.left, 0);

/** `5 × 1`, `2 × 4, 3L`: each kind once, in order, with how often it is there. */
export function countedKinds(kinds: readonly string[]): string {
  return [...new Set(kinds)]
    .map((kind) => {
      const count = kinds.filter((one) => one === kind).length;
      return count === 1 ? kind : `${count} × ${kind}`;
    })
    .join(', ');
}
