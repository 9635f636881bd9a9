// Tables and their CSV form: RFC 4180 (commas, quotes doubled, CRLF), safe to open in a spreadsheet.
// A text cell that a spreadsheet would run as a formula gets an apostrophe before it; numbers are
// written as numbers, with a point, and are never touched.

/** One cell; null is empty. */
export type CellValue = string | number | null;

/** A table: names of the columns, units in the name where there are any, and rows as long. */
export interface Table {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}

/** The table as CSV with a header row, ended by CRLF. Throws where a row is not as long as the
 * header or a number is not finite. */
export function tableToCsv(table: Table): string {
  const lines = [table.columns, ...table.rows].map((row, i) => {
    if (row.length !== table.columns.length)
      throw new Error(
        `row ${i} of ${table.title} has ${row.length} cells, not ${table.columns.length}`,
      );
    return row.map(csvCell).join(',');
  });
  return `${lines.join('\r\n')}\r\n`;
}

function csvCell(value: CellValue): string {
  if (value === null) return '';
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`${value} is no number for a table`);
    return String(value);
  }
  const safe = isFormula(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) || safe !== safe.trim() ? `"${safe.replace(/"/g, '""')}"` : safe;
}

/** Spreadsheets run = + - @ (full-width forms too) at the start, also behind blanks; a text that
 * starts with a tab or a line break is made harmless as well. */
const isFormula = (words: string): boolean =>
  /^[\s\p{Cc}]*[=+\-@\uff1d\uff0b\uff0d\uff20]/u.test(words) || /^[\t\r\n]/.test(words);
