// A pile from a spreadsheet: one row a reading. A row without a tag may stand for `count` panels
// that somebody sorted together and measured once. Lengths have their unit in the cell, else in the
// header, else by the option. Where some cell of the file shows that a comma is the decimal mark
// (0,928) and none shows a point, `1,103` is read so too; else it is refused with both readings.

import Papa from 'papaparse';
import type { Fault, Read } from '../measure/fault.ts';
import { type LengthUnit, readLength } from '../measure/length.ts';
import type { DecimalMark } from '../measure/number.ts';
import { readAngle, readMass } from '../measure/units.ts';
import { readPile } from './check.ts';
import { type Columns, type PlainColumn, readColumns } from './csv-columns.ts';
import { readTable, type TableRow } from './csv-table.ts';
import { DIHEDRALS } from './limits.ts';
import type { Pile } from './schema.ts';
import { SIDE_LENGTHS } from './tolerances.ts';

/** How to read the lengths of a spreadsheet. */
export interface CsvOptions {
  /** Unit of lengths whose unit is neither in the cell nor in the header. */
  readonly unit?: LengthUnit;
}

/** The pile of a CSV text (columns tag, by, mark, count, side1 …, holes1 …, laps1 …, angle1 …,
 * seen from, condition, mass, note), or every fault at once, each with its row and column. */
export function readPileCsv(text: string, options: CsvOptions = {}): Read<Pile> {
  const table = readTable(text);
  if (!table.ok) return table;
  const columns = readColumns(table.value.header);
  if (!columns.ok) return columns;
  const decimal = decimalMark(table.value.rows, columns.value);
  const reader = new RowReader(columns.value, options, decimal);
  const readings = table.value.rows.map((row) => reader.read(row));
  if (reader.faults.length > 0) return { ok: false, faults: reader.faults };
  const pile = readPile({ readings });
  if (pile.ok) return pile;
  const where = (path: string): string => rowAndColumn(path, table.value.rows);
  return {
    ok: false,
    faults: pile.faults.map((f) => ({
      path: where(f.path),
      found: f.found,
      expected: f.expected.replace(/pile\.readings\[\d+\]/g, where),
    })),
  };
}

/** The readings of a pile as CSV, lengths in millimetres to a millionth (any part of an inch that a tape
 * has is then exact, but for thirds), angles in degrees to a ten-thousandth, masses in kilograms;
 * `readPileCsv` gives the same readings back, white space around a text apart. Kinds, groups and
 * hardware have no place in it. A text that a spreadsheet would run as a formula gets an apostrophe
 * before it, which the reader takes off again. */
export function writePileCsv(pile: Pile): string {
  const count = Math.max(3, ...pile.readings.map((row) => row.sides.length));
  const numbers = [...Array(count).keys()];
  const [withHoles, withLaps, withAngles] = (['holes', 'laps', 'dihedrals'] as const).map((key) =>
    pile.readings.some((row) => row[key]),
  );
  const header = [
    ...['tag', 'by', 'mark', 'count'],
    ...numbers.map((n) => `side${n + 1} mm`),
    ...(withHoles ? numbers.map((n) => `holes${n + 1}`) : []),
    ...(withLaps ? numbers.map((n) => `laps${n + 1}`) : []),
    ...(withAngles ? numbers.map((n) => `angle${n + 1} deg`) : []),
    ...['seen from', 'condition', 'mass kg', 'note'],
  ];
  const rows = pile.readings.map((row) => [
    ...[row.tag ?? '', row.by ?? '', row.mark ?? '', row.count ?? ''],
    ...numbers.map((n) => millimetres(row.sides[n])),
    ...(withHoles ? numbers.map((n) => row.holes?.[n] ?? '') : []),
    ...(withLaps ? numbers.map((n) => row.laps?.[n] ?? '') : []),
    ...(withAngles ? numbers.map((n) => degrees(row.dihedrals?.[n])) : []),
    ...[row.seenFrom, row.condition ?? '', row.mass ?? '', row.note ?? ''],
  ]);
  return `${Papa.unparse([header, ...rows], { newline: '\n', escapeFormulae: FORMULA })}\n`;
}

/** How a text begins that a spreadsheet would run, whatever lines follow. */
const FORMULA = /^[=+\-@\t\r]/;

const millimetres = (metres: number | undefined): number | '' =>
  metres === undefined ? '' : Math.round(metres * 1e9) / 1e6;

const degrees = (radians: number | null | undefined): number | '' =>
  typeof radians === 'number' ? Math.round((radians * 180e4) / Math.PI) / 1e4 : '';

/** Reads row after row and gathers the faults of all; a column without any unit is told once. */
class RowReader {
  readonly faults: Fault[] = [];
  private readonly columns: Columns;
  private readonly options: CsvOptions;
  private readonly decimal: { readonly decimal?: DecimalMark };
  private readonly told = new Set<string>();

  constructor(columns: Columns, options: CsvOptions, decimal: DecimalMark | null) {
    this.columns = columns;
    this.options = options;
    this.decimal = decimal === null ? {} : { decimal };
  }

  /** The raw reading of a row; what cannot be read is left out and told in `faults`. */
  read(row: TableRow): Record<string, unknown> {
    const word = (column: PlainColumn): string | undefined => {
      const at = this.columns.plain.get(column);
      const cell = at === undefined ? '' : (row.cells[at] as string);
      if (cell === '') return undefined;
      return cell.startsWith("'") && FORMULA.test(cell.slice(1)) ? cell.slice(1) : cell;
    };
    const sides = this.sides(row);
    return withoutGaps({
      tag: word('tag'),
      by: word('by'),
      mark: word('mark'),
      note: word('note'),
      count: this.whole(row, 'count', word('count'), 1),
      seenFrom: this.choice(row, 'seen from', word('seen from'), ['outside', 'inside', 'unknown']),
      condition: this.choice(row, 'condition', word('condition'), ['good', 'repair', 'scrap']),
      sides,
      holes: this.perSide(row, 'holes', this.columns.holes, sides.length, (column, cell) =>
        this.whole(row, column, cell, 0),
      ),
      laps: this.perSide(row, 'laps', this.columns.laps, sides.length, (column, cell) =>
        this.choice(row, column, cell, ['over', 'under', 'flush']),
      ),
      dihedrals: this.angles(row, sides.length),
      mass: this.mass(row),
    });
  }

  private refuse(row: TableRow, column: string, found: string, expected: string): undefined {
    this.faults.push({
      path: `row ${row.row}, column ${column}`,
      found: JSON.stringify(found),
      expected,
    });
    return undefined;
  }

  private sides(row: TableRow): number[] {
    const cells = this.columns.sides.map(({ at }) => row.cells[at] as string);
    const last = cells.findLastIndex((cell) => cell !== '');
    const count = Math.max(3, last + 1);
    return this.columns.sides.slice(0, count).flatMap(({ unit }, n) => {
      const cell = cells[n] as string;
      const column = `side${n + 1}`;
      if (cell === '') {
        this.refuse(row, column, cell, 'a length');
        return [];
      }
      const length = this.length(row, column, cell, unit);
      return length === undefined ? [] : [length];
    });
  }

  private length(
    row: TableRow,
    column: string,
    cell: string,
    unit: LengthUnit | null,
  ): number | undefined {
    const fallback = unit ?? this.options.unit;
    const read = readLength(cell, { ...this.decimal, ...(fallback ? { unit: fallback } : {}) });
    if (!read.ok) {
      if (!fallback && readLength(cell, { ...this.decimal, unit: 'm' }).ok)
        return this.noUnit(row, column, cell);
      return this.refuse(row, column, cell, read.faults[0]?.expected as string);
    }
    const { value } = read;
    if (value >= SIDE_LENGTHS.min && value <= SIDE_LENGTHS.max) return value;
    return this.refuse(
      row,
      column,
      cell,
      `a side of ${SIDE_LENGTHS.min} to ${SIDE_LENGTHS.max} m; this is ${Number(value.toPrecision(6))} m, check the unit`,
    );
  }

  /** A column of bare numbers is one fault, not one a row. */
  private noUnit(row: TableRow, column: string, cell: string): undefined {
    if (!this.told.has(column))
      this.faults.push({
        path: `column ${column}`,
        found: `${JSON.stringify(cell)} without a unit (first in row ${row.row})`,
        expected: `a unit in the header, such as "${column} mm" or "${column} in", or in each cell`,
      });
    this.told.add(column);
    return undefined;
  }

  /** Cells that belong to a side each; absent where all are empty. */
  private perSide<T>(
    row: TableRow,
    name: string,
    columns: readonly (number | null)[],
    sides: number,
    read: (column: string, cell: string, n: number) => T | undefined,
  ): (T | null)[] | undefined {
    const cells = columns.map((at) => (at === null ? '' : (row.cells[at] as string)));
    const extra = cells.findIndex((cell, n) => n >= sides && cell !== '');
    if (extra >= 0 && sides >= 3)
      this.refuse(
        row,
        `${name}${extra + 1}`,
        cells[extra] as string,
        `nothing: the panel has ${sides} sides`,
      );
    const own = cells
      .slice(0, sides)
      .map((cell, n) => (cell === '' ? null : (read(`${name}${n + 1}`, cell, n) ?? null)));
    return own.every((value) => value === null) ? undefined : own;
  }

  private angles(row: TableRow, sides: number): (number | null)[] | undefined {
    const columns = this.columns.angles.map((column) => column?.at ?? null);
    return this.perSide(row, 'angle', columns, sides, (column, cell, n) => {
      const unit = this.columns.angles[n]?.unit;
      const read = readAngle(cell, { ...this.decimal, ...(unit ? { unit } : {}) });
      if (!read.ok) return this.refuse(row, column, cell, read.faults[0]?.expected as string);
      const { min, max } = DIHEDRALS;
      if (read.value >= min && read.value <= max) return read.value;
      const [least, most] = [min, max].map((x) => Math.round((x * 180) / Math.PI));
      return this.refuse(row, column, cell, `an angle between two panels, ${least} to ${most} deg`);
    });
  }

  private whole(
    row: TableRow,
    column: string,
    cell: string | undefined,
    least: number,
  ): number | undefined {
    if (cell === undefined) return undefined;
    if (/^\d{1,6}$/.test(cell) && Number(cell) >= least) return Number(cell);
    return this.refuse(row, column, cell, `a whole number of at least ${least}`);
  }

  private choice(
    row: TableRow,
    column: string,
    cell: string | undefined,
    allowed: readonly string[],
  ): string | undefined {
    if (cell === undefined) return undefined;
    const word = cell.toLowerCase();
    return allowed.includes(word)
      ? word
      : this.refuse(row, column, cell, `one of ${allowed.join(', ')}`);
  }

  private mass(row: TableRow): number | undefined {
    const { mass } = this.columns;
    const cell = mass ? (row.cells[mass.at] as string) : '';
    if (!mass || cell === '') return undefined;
    const read = readMass(cell, { ...this.decimal, ...(mass.unit ? { unit: mass.unit } : {}) });
    if (!read.ok) return this.refuse(row, 'mass', cell, read.faults[0]?.expected as string);
    return read.value > 0 ? read.value : this.refuse(row, 'mass', cell, 'a mass of more than 0');
  }
}

const withoutGaps = (row: Readonly<Record<string, unknown>>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(row).filter(([, value]) => value !== undefined));

/** The decimal mark that the lengths and masses of the file show beyond doubt, or null. */
function decimalMark(rows: readonly TableRow[], columns: Columns): DecimalMark | null {
  const places = [...columns.sides.map(({ at }) => at), ...(columns.mass ? [columns.mass.at] : [])];
  const cells = rows.flatMap((row) => places.map((at) => row.cells[at] as string));
  const comma = cells.some((cell) => /(^|\D)0,\d|\d,\d{1,2}(\D|$)|\d,\d{4}|\d{4},\d/.test(cell));
  const point = cells.some((cell) => /\d\.\d/.test(cell));
  return comma === point ? null : comma ? 'comma' : 'point';
}

/** `pile.readings[3].sides[1]` as `row 5, column side2`. */
function rowAndColumn(path: string, rows: readonly TableRow[]): string {
  const match = /^pile\.readings\[(\d+)\](?:\.(\w+))?(?:\[(\d+)\])?/.exec(path);
  if (!match) return path === 'pile.readings' ? 'file' : path;
  const row = `row ${rows[Number(match[1])]?.row}`;
  const column = match[2] === undefined ? '' : (COLUMN_OF[match[2]] ?? match[2]);
  if (column === '' || (match[3] === undefined && column === 'side')) return row;
  return `${row}, column ${column}${match[3] === undefined ? '' : Number(match[3]) + 1}`;
}

const COLUMN_OF: Readonly<Record<string, string>> = {
  sides: 'side',
  seenFrom: 'seen from',
  dihedrals: 'angle',
};
