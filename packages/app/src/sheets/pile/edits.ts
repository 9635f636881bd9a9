// Changes of the tally, as recipes on the document. A cell that can be read goes into its reading
// at once; what can't is kept beside it as text. A row that becomes whole becomes a reading.

import { LEAST_SIDES, type LengthUnit, type ReadingRow } from '@shellraise/core';
import { type Draft, isDraft, original } from 'immer';
import type { Doc, DraftRow } from '../../state/doc.ts';
import { type Cell, gapOf, readSide } from './cells.ts';
import { blankRow, checkRow, isBlank, keptText, named, type RowRef, tidied } from './rows.ts';

/** Texts for the cells of one row. */
export type CellTexts = readonly (readonly [Cell, string])[];

/** What became of a change. */
export interface Landed {
  /** The row as it is named now. */
  readonly ref: RowRef;
  /** Joined groups that were set aside, because no panel carries a mark they name any more. */
  readonly groupsAside: number;
}

type Readings = Draft<ReadingRow>[];

/** Writes cells of a row; a row of an unknown key is begun. Bare lengths are in `unit`. */
export function putCells(
  doc: Draft<Doc>,
  ref: RowRef,
  cells: CellTexts,
  unit: LengthUnit,
  tags: ReadonlyMap<string, number> = otherTags(doc, ref),
): Landed {
  const landed =
    ref.type === 'reading'
      ? putIntoReading(doc, ref, cells, unit, tags)
      : putIntoDraft(doc, ref.key, cells, unit, tags);
  const remarked = ref.type === 'reading' && cells.some(([cell]) => cell === 'mark');
  return { ref: landed, groupsAside: remarked ? setGroupsAside(doc) : 0 };
}

/** Tags of the other readings, with their number of sides. */
export function otherTags(doc: Doc | Draft<Doc>, ref: RowRef | null): Map<string, number> {
  const { readings } = doc.project.pile;
  const plain = (isDraft(readings) ? original(readings) : readings) ?? readings;
  const own = ref?.type === 'reading' ? ref.index : -1;
  const tags = new Map<string, number>();
  plain.forEach(({ tag, sides }, i) => {
    if (tag !== undefined && i !== own) tags.set(tag, sides.length);
  });
  return tags;
}

function putIntoDraft(
  doc: Draft<Doc>,
  key: string,
  cells: CellTexts,
  unit: LengthUnit,
  tags: ReadonlyMap<string, number>,
): RowRef {
  const { readings } = doc.project.pile;
  const at = doc.drafts.findIndex((draft) => draft.key === key);
  const before = at < 0 ? { ...blankRow(readings, doc.drafts), key } : doc.drafts[at];
  let draft: DraftRow = { ...before, sides: [...(before?.sides ?? [])] } as DraftRow;
  for (const [cell, text] of cells) draft = withText(draft, cell, keptText(cell, text, unit));
  const { reading } = checkRow(null, draft, unit, tags);
  if (reading || isBlank(draft)) {
    if (at >= 0) doc.drafts.splice(at, 1);
    if (!reading) return { type: 'draft', key };
    readings.push(reading as Draft<ReadingRow>);
    return { type: 'reading', index: readings.length - 1 };
  }
  if (at >= 0) doc.drafts[at] = draft as Draft<DraftRow>;
  else doc.drafts.push(draft as Draft<DraftRow>);
  return { type: 'draft', key };
}

function withText(draft: DraftRow, cell: Cell, text: string): DraftRow {
  if (typeof cell !== 'number') return { ...draft, [cell]: text };
  const sides = Array.from({ length: Math.max(draft.sides.length, cell + 1) }, (_, i) =>
    i === cell ? text : (draft.sides[i] ?? ''),
  );
  return { ...draft, sides: sides.slice(0, sides.findLastIndex((side) => side !== '') + 1) };
}

function putIntoReading(
  doc: Draft<Doc>,
  ref: RowRef & { type: 'reading' },
  cells: CellTexts,
  unit: LengthUnit,
  tags: ReadonlyMap<string, number>,
): RowRef {
  const { readings } = doc.project.pile;
  const row = readings[ref.index];
  if (!row) return ref;
  let base: ReadingRow = { ...row, sides: [...row.sides] };
  const at = doc.drafts.findIndex((draft) => draft.of === ref.index);
  const kept = doc.drafts[at];
  let beside: DraftRow = kept
    ? { ...kept, sides: [...kept.sides] }
    : { ...emptyBeside(doc), of: ref.index };
  for (const [cell, text] of cells) {
    const plain = keptText(cell, text, unit);
    base = withName(base, cell, plain);
    if (typeof cell === 'number' || cell === 'count' || cell === 'tag')
      beside = withText(beside, cell, plain);
  }
  const { reading, faults } = checkRow(base, beside, unit, tags);
  if (reading) {
    readings[ref.index] = reading as Draft<ReadingRow>;
    if (at >= 0) doc.drafts.splice(at, 1);
    return ref;
  }
  for (const [i, text] of beside.sides.entries())
    if (text !== '' && !faults.has(i)) {
      const tried = withSide(base, i, text, unit);
      if (tried) [base, beside] = [tried, withText(beside, i, '')];
    }
  readings[ref.index] = tidied(base) as Draft<ReadingRow>;
  if (at >= 0) doc.drafts[at] = beside as Draft<DraftRow>;
  else doc.drafts.push(beside as Draft<DraftRow>);
  return ref;
}

const emptyBeside = (doc: Draft<Doc>): DraftRow => ({
  ...blankRow([], doc.drafts),
  by: '',
  seenFrom: 'unknown',
});

/** The reading with what of a cell can be taken at once: names, faces, an emptied last side. */
function withName(base: ReadingRow, cell: Cell, text: string): ReadingRow {
  if (typeof cell === 'number') {
    const last = cell === base.sides.length - 1 && cell >= LEAST_SIDES;
    return text === '' && last ? { ...base, sides: base.sides.slice(0, -1) } : base;
  }
  if (cell === 'seenFrom') return { ...base, seenFrom: text as ReadingRow['seenFrom'] };
  if (cell === 'condition')
    return { ...base, condition: text === '' ? undefined : (text as 'good' | 'repair' | 'scrap') };
  if ((cell === 'count' || cell === 'tag') && text !== '') return base;
  return { ...base, [cell]: named(text) };
}

/** The reading with one side replaced or added, where the sides then meet. */
function withSide(base: ReadingRow, side: number, text: string, unit: LengthUnit) {
  const read = readSide(text, unit);
  if (!read.ok || side > base.sides.length) return null;
  const sides = [...base.sides];
  sides[side] = read.metres;
  return gapOf(sides) === null ? { ...base, sides } : null;
}

/** A panel just like one already measured: an untagged row counts one up; a tagged one names one
 * single panel, so an untagged row of its own is begun. */
export function sameAgain(doc: Draft<Doc>, index: number): RowRef | null {
  const { readings } = doc.project.pile;
  const row = readings[index];
  if (!row) return null;
  if (row.tag === undefined) {
    row.count = (row.count ?? 1) + 1;
    return { type: 'reading', index };
  }
  const { mark, by, sides, seenFrom, condition } = row;
  const like = { mark, by, sides: [...sides], seenFrom, condition };
  readings.push(tidied(like) as Draft<ReadingRow>);
  return { type: 'reading', index: readings.length - 1 };
}

/** Takes a row out. */
export function deleteRow(doc: Draft<Doc>, ref: RowRef): Landed {
  if (ref.type === 'draft') {
    doc.drafts = doc.drafts.filter(({ key }) => key !== ref.key);
    return { ref, groupsAside: 0 };
  }
  doc.project.pile.readings.splice(ref.index, 1);
  doc.drafts = doc.drafts.flatMap((draft) => {
    if (draft.of === undefined || draft.of < ref.index) return [draft];
    return draft.of === ref.index ? [] : [{ ...draft, of: draft.of - 1 }];
  });
  return { ref, groupsAside: setGroupsAside(doc) };
}

/** Forgets what was typed beside a reading and could not be read. */
export function dropUnread(doc: Draft<Doc>, index: number): void {
  doc.drafts = doc.drafts.filter(({ of }) => of !== index);
}

/** A group can only name kinds of the file and marks that a panel carries: takes the others out.
 * Returns how many. */
function setGroupsAside(doc: Draft<Doc>): number {
  const { groups, kinds, readings } = doc.project.pile;
  if (groups.length === 0) return 0;
  const known = new Set<string | undefined>([
    ...kinds.flatMap(({ id, marks }) => [id, ...marks]),
    ...(readings as Readings).map(({ mark }) => mark),
  ]);
  const left = groups.filter(({ around }) => around.every((name) => known.has(name)));
  if (left.length === groups.length) return 0;
  doc.project.pile.groups = left;
  return groups.length - left.length;
}
