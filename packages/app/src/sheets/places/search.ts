// Finding a place by its number, a kind by its id or its painted mark, and a panel by its tag.
// Capitals, blanks and leading noughts play no part: `3-7`, `3 7` and `307` all find place 3-07.

import type { Kind } from '@shellraise/core';

/** One thing that was found. */
export type Found =
  | {
      readonly type: 'place';
      readonly place: number;
      readonly number: string;
      readonly kind: string;
    }
  | { readonly type: 'kind'; readonly kind: string; readonly mark: string | null }
  | { readonly type: 'tag'; readonly tag: string; readonly kind: string | null };

/** What can be found. */
export interface Findable {
  readonly numbers: readonly string[];
  /** Place → index of its kind. */
  readonly kindAt: ArrayLike<number>;
  readonly kinds: readonly Kind[];
  /** Tags of single panels, each with its kind where that is known. */
  readonly tags: readonly { readonly tag: string; readonly kind: string | null }[];
}

/** Found at most. */
const MOST = 12;

/** Everything that a query may mean: what it names exactly first, then what begins with it. Nothing
 * for a query without a letter or digit. */
export function search(query: string, { numbers, kindAt, kinds, tags }: Findable): Found[] {
  const wanted = plain(query);
  if (wanted === '') return [];
  const found: { readonly rank: number; readonly thing: Found }[] = [];
  const note = (text: string, thing: Found): void => {
    const rank = rankOf(wanted, text);
    if (rank !== null) found.push({ rank, thing });
  };
  numbers.forEach((number, place) => {
    const kind = kinds[kindAt[place] as number]?.id ?? '';
    note(number, { type: 'place', place, number, kind });
  });
  for (const { id, marks } of kinds) {
    note(id, { type: 'kind', kind: id, mark: null });
    for (const mark of marks) note(mark, { type: 'kind', kind: id, mark });
  }
  for (const { tag, kind } of tags) note(tag, { type: 'tag', tag, kind });
  return found
    .map((one, i) => ({ ...one, i }))
    .sort((a, b) => a.rank - b.rank || byNumber(a.thing, b.thing) || a.i - b.i)
    .slice(0, MOST)
    .map(({ thing }) => thing);
}

/** Places in the order of their numbers; what is no place stays where it is. */
const byNumber = (a: Found, b: Found): number =>
  a.type === 'place' && b.type === 'place'
    ? a.number.localeCompare(b.number, 'en', { numeric: true })
    : 0;

/** 0 where a text is what is wanted, 1 where it begins with it, null where it does neither. */
function rankOf(wanted: string, text: string): number | null {
  const own = plain(text);
  const bare = plain(withoutNoughts(text));
  if (own === wanted || bare === wanted) return 0;
  return own.startsWith(wanted) || bare.startsWith(wanted) ? 1 : null;
}

const plain = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');

/** `3-07` is also `3-7`, tag `017` also `17`. */
const withoutNoughts = (text: string): string => text.replace(/(^|\D)0+(?=\d)/g, '$1');
