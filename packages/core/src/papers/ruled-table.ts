// A small table drawn on a sheet: names above a rule, rows below, no boxes. Millimetres.

import { type Box, type Fill, type Item, line, type Point, polygon, text } from './drawing.ts';
import { linesIn } from './text-width.ts';

/** A column: its share of the width, and where its words stand. */
export interface RuledColumn {
  readonly name: string;
  readonly share: number;
  readonly align: 'start' | 'end';
}

/** One row. */
export interface RuledRow {
  readonly cells: readonly string[];
  /** True for a row that must not be overlooked. */
  readonly accent: boolean;
  readonly bold: readonly boolean[];
  /** A small panel filled like the row's kind, before the first cell; null for none. */
  readonly swatch: Fill | null;
}

/** The table at the top of the box, rows `step` apart, and the height it took. Words that are too
 * long are set smaller, down to half the usual size, then in several lines within their row; RangeError
 * where even a third of the size is too large. */
export function ruledTable(
  columns: readonly RuledColumn[],
  rows: readonly RuledRow[],
  box: Box,
  step: number,
): { readonly items: Item[]; readonly height: number } {
  const size = Math.min(3.2, step * 0.62);
  const ends = columns.map((_, i) =>
    columns.slice(0, i + 1).reduce((sum, column) => sum + column.share * box.width, box.x),
  );
  const cell = (
    i: number,
    y: number,
    words: string,
    bold: boolean,
    ink: 'ink' | 'grey' | 'accent',
    indent: number,
  ): Item[] => {
    if (words === '') return [];
    const column = columns[i] as RuledColumn;
    const [left, right] = [(i === 0 ? box.x : (ends[i - 1] as number)) + indent, ends[i] as number];
    const room = { width: right - left - 0.8, height: step };
    const { lines, size: type } = linesIn(words, size, size / 3, room, bold);
    const x = column.align === 'start' ? left : right;
    return lines.map((one, n) =>
      text([x, y + (n - (lines.length - 1) / 2) * type * 1.2], one, type, {
        bold,
        ink,
        anchor: column.align,
      }),
    );
  };
  const head = columns.flatMap((column, i) =>
    cell(i, box.y + step / 2, column.name, false, 'grey', 0),
  );
  const rule = line([box.x, box.y + step], [box.x + box.width, box.y + step], { weight: 'light' });
  const body = rows.flatMap((row, r) => {
    const y = box.y + step * (r + 1.5) + 0.4;
    const swatch = row.swatch === null ? [] : [swatchItem([box.x, y], step, row.swatch)];
    const indent = row.swatch === null ? 0 : step * 1.6;
    return [
      ...swatch,
      ...row.cells.flatMap((words, i) =>
        cell(
          i,
          y,
          words,
          row.bold[i] ?? false,
          row.accent ? 'accent' : 'ink',
          i === 0 ? indent : 0,
        ),
      ),
    ];
  });
  return { items: [...head, rule, ...body], height: step * (rows.length + 1) + 0.8 };
}

/** A small panel, its middle at the height of the row's words. */
function swatchItem([x, y]: Point, step: number, fill: Fill): Item {
  const [wide, half] = [step * 1.25, step * 0.42];
  const corners: Point[] = [
    [x, y + half],
    [x + wide, y + half],
    [x + wide / 2, y - half],
  ];
  return polygon(corners, { weight: 'thin' }, fill);
}
