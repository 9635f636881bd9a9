// The list of which tag goes where: rows in the order of the numbers, and as a spreadsheet.

import { type Kind, type Shell, tableToCsv } from '@shellraise/core';
import type { TaggedPlaces } from '../../../engine/singles.ts';

/** One place of the list. */
export interface TagRow {
  readonly place: number;
  readonly number: string;
  readonly kind: string;
  /** Null where any panel of the kind will do. */
  readonly tag: string | null;
  readonly weak: boolean;
}

/** Rows for all places that stand, by course and then round it. */
export function tagRows(
  { tagAt, weak }: TaggedPlaces,
  shell: Shell,
  kinds: readonly Kind[],
  numbers: readonly string[],
  leftOut: readonly number[],
): TagRow[] {
  const out = new Set(leftOut);
  return numbers
    .map((number, place) => ({
      place,
      number,
      kind: kinds[shell.kind[place] as number]?.id ?? '',
      tag: tagAt[place] ?? null,
      weak: weak[place] === 1,
    }))
    .filter(({ place }) => !out.has(place))
    .sort((a, b) => collator.compare(a.number, b.number));
}

const collator = new Intl.Collator('en', { numeric: true });

/** The list as a spreadsheet. */
export const tagCsv = (rows: readonly TagRow[]): string =>
  tableToCsv({
    title: 'tags',
    columns: ['place', 'kind', 'tag', 'mended'],
    rows: rows.map(({ number, kind, tag, weak }) => [
      number,
      kind,
      tag ?? 'any',
      weak ? 'yes' : '',
    ]),
  });
