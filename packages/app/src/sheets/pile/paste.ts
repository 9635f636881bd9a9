// A block copied from a spreadsheet: its cells, whether it has a header, and which columns of the
// tally its columns go into.

import { LEAST_SIDES, type LengthUnit, MAX_SIDES } from '@shellraise/core';
import type { Draft } from 'immer';
import type { Doc } from '../../state/doc.ts';
import { type Cell, readCondition, readCount, readFace, readSide } from './cells.ts';
import { type CellTexts, type Landed, otherTags, putCells } from './edits.ts';
import { blankRow, type RowRef } from './rows.ts';

/** Rows of cells, as many in each. */
export type Block = readonly (readonly string[])[];

/** The block in a pasted text, or null where it is a text for one cell. */
export function readBlock(text: string): Block | null {
  const lines = text.replace(/\r\n?/g, '\n').replace(/\n+$/, '').split('\n');
  const separator = separatorOf(lines);
  if (separator === null && lines.length < 2) return null;
  const rows = lines
    .filter((line) => line.trim() !== '')
    .map((line) => (separator === null ? [unquoted(line.trim())] : splitLine(line, separator)));
  const width = Math.max(...rows.map((row) => row.length));
  return rows.map((row) => Array.from({ length: width }, (_, i) => row[i] ?? ''));
}

/** Whether the first row names columns. */
export const hasHeader = (block: Block): boolean =>
  (block[0] ?? []).filter((cell) =>
    /^(side|holes?)[ _]?\d+\b|^(tag|by|mark|count|seen[ _]from|condition|mass|note)\b/i.test(cell),
  ).length >= 2;

/** Tab, else semicolon, else a comma that can't be part of a number: two of them, or in each line. */
function separatorOf(lines: readonly string[]): string | null {
  const all = lines.join('\n');
  if (all.includes('\t')) return '\t';
  if (all.includes(';')) return ';';
  const commas = lines.map((line) => line.split(',').length - 1);
  const first = commas[0] ?? 0;
  return first >= 2 || (lines.length > 1 && first >= 1 && commas.every((n) => n === first))
    ? ','
    : null;
}

/** Cells of a line. A cell in quotes may hold the separator, and quotes doubled; a lone quote is an
 * inch mark. */
function splitLine(line: string, separator: string): string[] {
  const quoted = new RegExp(`^\\s*"((?:[^"]|"")*)"\\s*(?:${separator}|$)`);
  const cells: string[] = [];
  let rest: string | null = line;
  while (rest !== null) {
    const match: RegExpExecArray | null = quoted.exec(rest);
    const end: number = match ? match[0].length - 1 : rest.indexOf(separator);
    const more: boolean = match ? match[0].endsWith(separator) : end >= 0;
    const cell: string = match
      ? (match[1] ?? '').replace(/""/g, '"')
      : more
        ? rest.slice(0, end)
        : rest;
    cells.push(cell.trim());
    rest = more ? rest.slice(end + 1) : null;
  }
  return cells;
}

const unquoted = (cell: string): string =>
  /^".*"$/.test(cell) && !/^[^"]*"[^"]*$/.test(cell) ? cell.slice(1, -1).replace(/""/g, '"') : cell;

/** The tally's column for each column of a block without a header, pasted at `start`; null where
 * there is none. From a side on, columns follow as they stand; from a name, the sides are found by
 * their looks: three columns or more in which every cell is a length. */
export function columnsOf(block: Block, start: Cell, unit: LengthUnit): readonly (Cell | null)[] {
  const width = block[0]?.length ?? 0;
  if (typeof start !== 'number' && !['tag', 'mark', 'by'].includes(start)) return [start];
  const isSide = Array.from({ length: width }, (_, i) =>
    block.every((row) => readSide(row[i] ?? '', unit).ok),
  );
  const first = typeof start === 'number' ? 0 : firstSide(block, isSide);
  const names: readonly Cell[] = (['tag', 'mark', 'by'] as const).slice(
    typeof start === 'number' ? 3 : ['tag', 'mark', 'by'].indexOf(start),
  );
  if (first === null) return Array.from({ length: width }, (_, i) => names[i] ?? null);
  const after = sidesEnd(block, first, unit);
  const base = typeof start === 'number' ? start : 0;
  return Array.from({ length: width }, (_, i) => {
    if (i < first) return names[i] ?? null;
    if (i < after) return base + i - first < MAX_SIDES ? base + i - first : null;
    return byContent(block, i);
  });
}

/** Where a run of at least three lengths begins; a column of numbers that count on is a tag. */
function firstSide(block: Block, isSide: readonly boolean[]): number | null {
  const at = isSide.findIndex((_, i) => isSide[i] && isSide[i + 1] && isSide[i + 2]);
  if (at < 0) return null;
  const counts = block.length > 1 && block.every((row, r) => countsOn(block, row[at] ?? '', r, at));
  return counts && isSide[at + 3] ? at + 1 : at;
}

const countsOn = (block: Block, cell: string, row: number, at: number): boolean =>
  /^\d+$/.test(cell) && Number(cell) === Number(block[0]?.[at]) + row;

/** Sides end where a column is empty throughout, or holds words or counts. */
function sidesEnd(block: Block, first: number, unit: LengthUnit): number {
  const width = block[0]?.length ?? 0;
  for (let i = first; i < width; i++) {
    const cells = block.map((row) => row[i] ?? '').filter((cell) => cell !== '');
    const words = cells.length > 0 && cells.every((cell) => readFace(cell) ?? readCondition(cell));
    const none = cells.length === 0 || cells.every((cell) => !readSide(cell, unit).ok);
    if (i >= first + LEAST_SIDES ? words || none : words) return i;
  }
  return width;
}

function byContent(block: Block, at: number): Cell | null {
  const cells = block.map((row) => row[at] ?? '').filter((cell) => cell !== '');
  if (cells.length === 0) return null;
  if (cells.every((cell) => readFace(cell))) return 'seenFrom';
  if (cells.every((cell) => readCondition(cell))) return 'condition';
  return cells.every((cell) => readCount(cell) !== null) ? 'count' : null;
}

/** Writes a block into the rows from `refs[0]` on; where rows run out, new ones are begun. Returns
 * where the last row landed. */
export function putBlock(
  doc: Draft<Doc>,
  refs: readonly RowRef[],
  block: Block,
  columns: readonly (Cell | null)[],
  unit: LengthUnit,
): Landed | null {
  const tags = otherTags(doc, null);
  let landed: Landed | null = null;
  let aside = 0;
  block.forEach((cells, r) => {
    const key = blankRow([], doc.drafts).key;
    const ref = refs[r] ?? { type: 'draft', key };
    const texts = textsOf(cells, columns);
    if (texts.length === 0) return;
    landed = putCells(doc, ref, texts, unit, ref.type === 'reading' ? undefined : tags);
    aside += landed.groupsAside;
    if (landed.ref.type !== 'reading') return;
    const row = doc.project.pile.readings[landed.ref.index];
    if (row?.tag !== undefined) tags.set(row.tag, row.sides.length);
  });
  const last = landed as Landed | null;
  return last === null ? null : { ...last, groupsAside: aside };
}

function textsOf(cells: readonly string[], columns: readonly (Cell | null)[]): CellTexts {
  return columns.flatMap((cell, i): (readonly [Cell, string])[] => {
    const text = cells[i] ?? '';
    if (cell === null) return [];
    if (cell === 'seenFrom') return text === '' ? [] : [[cell, readFace(text) ?? 'unknown']];
    if (cell === 'condition') return [[cell, readCondition(text) ?? '']];
    return [[cell, text]];
  });
}
