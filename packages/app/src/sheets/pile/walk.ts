// Where a key leads in the tally. Enter walks along the names and sides of a row and on to the next
// row, to the column where the walk began; Tab goes to every cell of a row and out of the tally at
// its ends; arrows go one cell.

import type { Cell } from './cells.ts';

/** A cell by its row as shown and its column. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

/** A step in the tally. */
export type Walk =
  | 'enter'
  | 'back'
  | 'tab'
  | 'tab back'
  | 'up'
  | 'down'
  | 'left'
  | 'right'
  | 'first'
  | 'last'
  | 'page up'
  | 'page down'
  | 'top'
  | 'end';

/** What the tally is walked in. */
export interface Ground {
  readonly columns: readonly Cell[];
  /** Rows shown, with the empty one. */
  readonly rows: number;
  /** Sides of the row walked in; those of a whole reading are not walked past. */
  readonly sides: number;
  /** Column where this walk of Enter began. */
  readonly from: number;
  /** Rows of a page. */
  readonly page: number;
}

/** The cell that a step leads to; null where it leads out of the tally. */
export function walked({ row, column }: Place, step: Walk, ground: Ground): Place | null {
  const { columns, rows, page } = ground;
  const lastColumn = columns.length - 1;
  const at = (r: number, c: number): Place => ({
    row: Math.max(0, Math.min(rows - 1, r)),
    column: Math.max(0, Math.min(lastColumn, c)),
  });
  switch (step) {
    case 'enter':
      return entered({ row, column }, ground);
    case 'back':
      return at(row - 1, column);
    case 'tab':
      return column === lastColumn ? null : at(row, column + 1);
    case 'tab back':
      return column === 0 ? null : at(row, column - 1);
    case 'up':
      return at(row - 1, column);
    case 'down':
      return at(row + 1, column);
    case 'left':
      return at(row, column - 1);
    case 'right':
      return at(row, column + 1);
    case 'first':
      return at(row, 0);
    case 'last':
      return at(row, lastColumn);
    case 'page up':
      return at(row - page, column);
    case 'page down':
      return at(row + page, column);
    case 'top':
      return at(0, 0);
    case 'end':
      return at(rows - 1, lastColumn);
  }
}

/** The next cell of a walk with Enter. Who measured is not stopped at: that goes on from row to
 * row. Beyond the sides every cell leads down. */
function entered({ row, column }: Place, { columns, rows, sides, from }: Ground): Place {
  const next = columns.findIndex(
    (cell, c) => c > column && cell !== 'by' && (typeof cell !== 'number' || cell < sides),
  );
  const cell = columns[next];
  const here = columns[column];
  const along =
    typeof here === 'number'
      ? typeof cell === 'number'
      : here === 'tag' || here === 'mark' || here === 'by';
  if (along && next >= 0) return { row, column: next };
  const starts = typeof here === 'number' ? Math.min(from, column) : column;
  return { row: Math.min(rows - 1, row + 1), column: starts };
}
