// What to do at the pile next, in the words of the message table.

import type { PileNext } from '@shellraise/core';
import type { Lengths } from '../../ui/lengths.ts';
import type { Words } from '../../words/words.ts';
import type { Worked } from './worked.ts';

/** Kinds that are named one by one; more are counted. */
const MOST_NAMED = 6;

/** The sentence for one thing; its rows are those of the pile that was worked up. */
export function nextWords(
  { why, kinds, side, row, lengths: named, people }: PileNext,
  { pile, kinds: worked }: Pick<Worked, 'pile' | 'kinds'>,
  lengths: Lengths,
  words: Words['pile'],
): string {
  const { next, tally } = words;
  const [kind = '', at = 0] = [kinds[0], side ?? 0];
  const [first = 0, second = 0] = named;
  const of = row === null ? '' : tally.rowOf(pile.readings[row]?.tag ?? '', row + 1);
  const [measured, expected] = [lengths.side(first), lengths.side(second)];
  switch (why) {
    case 'suspect':
    case 'slip':
      return row === null
        ? next.suspectKind(kind, at, measured, expected)
        : next.suspect(capital(of), at, measured, expected, lengths.off(first - second), kind);
    case 'face':
      return next.face(capital(of), words.or(kinds));
    case 'two fit':
      return next.twoFit(capital(of), words.or(kinds));
    case 'one reading':
      return next.oneReading(kind, row === null ? null : of);
    case 'maybe one':
      return next.maybeOne(words.and(kinds), at, lengths.small(Math.abs(first - second)));
    case 'maybe two':
      return next.maybeTwo(kind, lengths.small(first));
    case 'miscount': {
      const one = worked.miscounts.find((miscount) => miscount.kind === kind);
      return next.miscount(kind, one?.counted ?? 0, one?.found ?? 0);
    }
    case 'tapes':
      return next.tapes(words.and(people));
    case 'loosest':
      return next.loosest(kind, lengths.small(first));
    case 'new kind':
      return next.newKind(pile.readings.length);
    case 'neighbour':
      return next.neighbour(kind, at, measured);
    case 'stuck':
      return next.stuck(kind, at, measured);
    case 'uncounted':
      return next.uncounted(kinds.length > MOST_NAMED ? null : words.and(kinds), kinds.length);
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
