// A spreadsheet's text as rows of cells. The separator is the one that the header row uses; a row
// that uses another one is refused by name rather than read as one long cell. Rows count from 1,
// the header included, as a spreadsheet numbers them.

import Papa from 'papaparse';
import { type Fault, type Read, refuse } from '../measure/fault.ts';

/** One row below the header. */
export interface TableRow {
  /** As a spreadsheet numbers it: the header is row 1. */
  readonly row: number;
  /** As many as the header has, trimmed. */
  readonly cells: readonly string[];
}

/** A header and the rows below it that are not empty. */
export interface Table {
  readonly header: readonly string[];
  readonly rows: readonly TableRow[];
}

/** Longest text that is read, characters; refused by length before anything is parsed. */
export const MAX_CSV_CHARACTERS = 20 * 1024 * 1024;

const SEPARATORS = [
  [',', 'a comma'],
  [';', 'a semicolon'],
  ['\t', 'a tab'],
] as const;

/** The table of a CSV text with comma, semicolon or tab, or its faults. A byte order mark and
 * empty rows are skipped; a short row is filled up with empty cells. */
export function readTable(text: string): Read<Table> {
  if (text.length > MAX_CSV_CHARACTERS)
    return refuse('file', `${text.length} characters`, `at most ${MAX_CSV_CHARACTERS}`);
  // One kind of line end: files put together from two programs have both.
  const plain = text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n');
  const lines = plain.split('\n');
  const top = lines.findIndex((line) => /[^\s,;"]/.test(line));
  if (top < 0) return refuse('file', 'no rows', 'a header row and at least one row below it');
  const separator = separatorOf(lines[top] as string);
  if (separator === null)
    return refuse(
      `row ${top + 1}`,
      'more than one separator',
      'comma, semicolon or tab, the same all through',
    );
  const parsed = Papa.parse(plain, { delimiter: separator, newline: '\n' });
  const faults: Fault[] = parsed.errors
    .filter((error) => /Quotes/.test(error.code))
    .map((error) => ({
      path: `row ${(error.row ?? 0) + 1}`,
      found: 'quotes that do not pair up',
      expected: 'a quoted cell with its inch marks doubled, such as "3\' 7 7/16"""',
    }));
  const first = parsed.data.findIndex((cells) => cells.some((cell) => cell.trim() !== ''));
  const header = (parsed.data[first] as string[]).map((cell) => cell.trim());
  while (header.length > 1 && header.at(-1) === '') header.pop();
  const rows: TableRow[] = [];
  parsed.data.slice(first + 1).forEach((cells, i) => {
    const row = first + i + 2;
    const trimmed = cells.map((cell) => cell.trim());
    if (trimmed.every((cell) => cell === '')) return;
    const fault = rowFault(trimmed, header.length, separator, row);
    if (fault) faults.push(fault);
    else rows.push({ row, cells: header.map((_, c) => trimmed[c] ?? '') });
  });
  if (faults.length > 0) return { ok: false, faults };
  if (rows.length === 0) return refuse('file', 'no rows below the header', 'at least one');
  return { ok: true, value: { header, rows } };
}

/** The separator that a header row uses outside quotes; a comma where it has one column; null
 * where it uses several. */
function separatorOf(line: string): string | null {
  const bare = line.replace(/"(?:[^"]|"")*"/g, '');
  const used = SEPARATORS.filter(([separator]) => bare.includes(separator));
  return used.length > 1 ? null : (used[0]?.[0] ?? ',');
}

const nameOf = (separator: string): string =>
  SEPARATORS.find(([sign]) => sign === separator)?.[1] as string;

/** A row with more cells than the header, or one written with another separator. A comma in a cell
 * of a semicolon or tab table may be a decimal mark; only a row that lacks cells is suspected. */
function rowFault(
  cells: readonly string[],
  columns: number,
  separator: string,
  row: number,
): Fault | null {
  const path = `row ${row}`;
  if (cells.slice(columns).some((cell) => cell !== ''))
    return {
      path,
      found: `${cells.length} cells`,
      expected: `${columns} as in the header${separator === ',' ? '; quote a cell that holds a comma' : ''}`,
    };
  if (cells.length >= columns) return null;
  const other = SEPARATORS.find(
    ([sign]) =>
      sign !== separator && cells.some((cell) => cell.split(sign).length + cells.length > columns),
  );
  return other
    ? {
        path,
        found: `${other[1]} as separator`,
        expected: `${nameOf(separator)}, as in the header`,
      }
    : null;
}
