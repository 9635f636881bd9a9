// The rows of the tally: readings in the order of the file, then rows that are not whole yet, then
// one empty row to type into.

import { LEAST_SIDES, type LengthUnit, LONGEST_NAME, type ReadingRow } from '@shellraise/core';
import type { DraftRow } from '../../state/doc.ts';
import { type Cell, type CellFault, gapOf, readCount, readSide, withUnit } from './cells.ts';

/** Names a row: a reading by its index, a row that is none yet by its key. */
export type RowRef =
  | { readonly type: 'reading'; readonly index: number }
  | { readonly type: 'draft'; readonly key: string };

/** A row as shown. `draft` of a reading holds what of it could not be read. */
export interface TallyRow {
  readonly ref: RowRef;
  readonly reading: ReadingRow | null;
  readonly draft: DraftRow | null;
  /** True for the empty row at the end. */
  readonly fresh: boolean;
}

/** What a row says once all its cells are taken together. */
export interface RowCheck {
  /** The reading, where the row is whole. */
  readonly reading: ReadingRow | null;
  readonly faults: ReadonlyMap<Cell, CellFault>;
}

/** All rows, the empty one last. */
export function rowsOf(
  readings: readonly ReadingRow[],
  drafts: readonly DraftRow[],
): readonly TallyRow[] {
  const beside = new Map(
    drafts.flatMap((draft) => (draft.of === undefined ? [] : [[draft.of, draft]])),
  );
  const rows: TallyRow[] = readings.map((reading, index) => ({
    ref: { type: 'reading', index },
    reading,
    draft: beside.get(index) ?? null,
    fresh: false,
  }));
  for (const draft of drafts)
    if (draft.of === undefined)
      rows.push({ ref: { type: 'draft', key: draft.key }, reading: null, draft, fresh: false });
  const draft = blankRow(readings, drafts);
  rows.push({ ref: { type: 'draft', key: draft.key }, reading: null, draft, fresh: true });
  return rows;
}

/** An empty row. Who measures, and from which face, goes on as in the row before. */
export function blankRow(readings: readonly ReadingRow[], drafts: readonly DraftRow[]): DraftRow {
  const last = drafts.findLast((draft) => draft.of === undefined) ?? readings.at(-1);
  return {
    key: `d${1 + Math.max(0, ...drafts.map(({ key }) => Number(/^d(\d+)$/.exec(key)?.[1] ?? 0)))}`,
    tag: '',
    by: last?.by ?? '',
    mark: '',
    sides: [],
    seenFrom: last?.seenFrom ?? 'outside',
    condition: '',
    count: '',
  };
}

/** Whether nothing was typed into a row: what goes on from the row before is no typing. */
export const isBlank = ({ tag, mark, sides, condition, count }: DraftRow): boolean =>
  [tag, mark, condition, count, ...sides].every((text) => text.trim() === '');

/** Whether two names are of one row. */
export const sameRow = (a: RowRef, b: RowRef): boolean =>
  a.type === 'reading'
    ? b.type === 'reading' && a.index === b.index
    : b.type === 'draft' && a.key === b.key;

/** A row's text of a cell; `side` writes metres. */
export function cellText(row: TallyRow, cell: Cell, side: (metres: number) => string): string {
  const { reading, draft } = row;
  if (typeof cell === 'number') {
    const typed = draft?.sides[cell] ?? '';
    if (typed !== '') return typed;
    const length = reading?.sides[cell];
    return length === undefined ? '' : side(length);
  }
  if (!reading) return draft?.[cell] ?? '';
  if (cell === 'count')
    return draft?.count || (reading.count === undefined ? '' : `${reading.count}`);
  if (cell === 'tag') return draft?.tag || (reading.tag ?? '');
  return reading[cell] ?? '';
}

/** A row's side, metres, or null where it has none that can be read. */
export function sideOf(row: TallyRow, side: number, unit: LengthUnit): number | null {
  const typed = row.draft?.sides[side] ?? '';
  if (typed === '') return row.reading?.sides[side] ?? null;
  const read = readSide(typed, unit);
  return read.ok ? read.metres : null;
}

/** Takes the cells of a row together. `unit` of bare numbers; `tags` of the other readings with
 * their number of sides. Sides are told as missing by there being no reading, not as a fault. */
export function checkRow(
  base: ReadingRow | null,
  draft: DraftRow,
  unit: LengthUnit,
  tags: ReadonlyMap<string, number> = new Map(),
): RowCheck {
  const faults = new Map<Cell, CellFault>();
  const texts = withoutTail(
    Array.from({ length: Math.max(draft.sides.length, base?.sides.length ?? 0) }, (_, i) => ({
      text: draft.sides[i] ?? '',
      own: base?.sides[i] ?? null,
    })),
  );
  const sides = texts.map(({ text, own }, i) => {
    if (text === '') return own;
    const read = readSide(text, unit);
    if (!read.ok) faults.set(i, read.fault);
    return read.ok ? read.metres : null;
  });
  const whole = sides.every((side) => side !== null) && sides.length >= LEAST_SIDES;
  const over = whole ? gapOf(sides) : null;
  if (whole && over !== null)
    faults.set(
      longestOf(
        sides,
        texts.map(({ text }) => text),
      ),
      { why: 'open', over },
    );
  const count = draft.count === '' && base ? (base.count ?? 1) : readCount(draft.count);
  const tag = named(draft.tag) ?? base?.tag ?? '';
  if (count === null) faults.set('count', { why: 'count' });
  else if (count > 1 && tag !== '') faults.set('count', { why: 'tagged count' });
  const other = tags.get(tag);
  if (whole && tag !== '' && other !== undefined && other !== sides.length)
    faults.set('tag', { why: 'other sides', sides: other });
  if (!whole || faults.size > 0 || count === null) return { reading: null, faults };
  const names = base ? { ...base, tag: tag === '' ? undefined : tag } : draftNames(draft);
  return { reading: tidied({ ...names, sides, count: count > 1 ? count : undefined }), faults };
}

const draftNames = (draft: DraftRow): Omit<ReadingRow, 'sides'> => ({
  tag: named(draft.tag),
  by: named(draft.by),
  mark: named(draft.mark),
  seenFrom: draft.seenFrom,
  condition: draft.condition === '' ? undefined : draft.condition,
});

/** A name as the project file has it: no white space around it, not too long; undefined for none. */
export function named(text: string): string | undefined {
  const plain = text.trim().slice(0, LONGEST_NAME).trim();
  return plain === '' ? undefined : plain;
}

/** The reading without fields that say nothing, and without holes that do not match its sides. */
export function tidied(reading: ReadingRow): ReadingRow {
  const holes = reading.holes?.length === reading.sides.length ? reading.holes : undefined;
  const fields = Object.entries({ ...reading, holes });
  return Object.fromEntries(fields.filter(([, value]) => value !== undefined)) as ReadingRow;
}

/** The longest side, of those typed where any was: it is the likelier slip. */
function longestOf(sides: readonly number[], texts: readonly string[]): number {
  const typed = sides.map((side, i) => (texts[i] === '' ? 0 : side));
  const among = typed.some((side) => side > 0) ? typed : sides;
  return among.indexOf(Math.max(...among));
}

function withoutTail<T extends { text: string; own: number | null }>(list: readonly T[]): T[] {
  const last = list.findLastIndex(({ text, own }) => text !== '' || own !== null);
  return list.slice(0, last + 1);
}

/** A typed text as it is kept: a bare length with its unit, a name without white space around it. */
export function keptText(cell: Cell, text: string, unit: LengthUnit): string {
  if (typeof cell === 'number') return withUnit(text, unit).slice(0, 80);
  return cell === 'count' ? text.trim().slice(0, 20) : (named(text) ?? '');
}
