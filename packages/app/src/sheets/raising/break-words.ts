// What an order breaks, in words: with the pieces and hubs named as people name them.

import type { OrderBreak, OrderedLift, Shell } from '@shellraise/core';
import { listed } from '../../words/counted.ts';
import type { Words } from '../../words/words.ts';
import { placesAround } from './props-at.ts';

/** Places named at most. */
const MOST = 6;

/** One break, a sentence or two. */
export function breakWords(
  found: OrderBreak,
  lifts: readonly OrderedLift[],
  shell: Shell,
  numbers: readonly string[],
  words: Words['raising']['changes'],
): string {
  const named = (places: readonly number[]): string =>
    listed(places.map((place) => numbers[place] ?? '').sort());
  const lift = (at: number): string => named(lifts[at]?.places ?? []);
  switch (found.what) {
    case 'falls': {
      const shown = found.moving.slice(0, MOST).map((place) => numbers[place] ?? '');
      const falls = words.falls(
        lift(found.lift),
        found.movements,
        shown,
        found.moving.length - shown.length,
      );
      if (found.needs === null) return `${falls} ${words.needsNone}`;
      const standing = lifts.slice(0, found.lift + 1).flatMap(({ places }) => places);
      const hubs = found.needs.map((hub) => words.hub(placesAround(shell, numbers, standing, hub)));
      return `${falls} ${words.needs(hubs)}`;
    }
    case 'floats':
    case 'closed in':
      return words[found.what](lift(found.lift));
    case 'pin':
      return words.pin(numbers[found.place] ?? '', numbers[found.than] ?? '');
    default:
      return words.other(found.words);
  }
}

/** Whether other props could make the order stand. */
export const canBeTaken = (breaks: readonly OrderBreak[]): boolean =>
  breaks.every((one) => one.what === 'falls' && one.needs !== null);
