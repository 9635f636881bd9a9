// What the columns of a pile's spreadsheet are: known by their header, in any order and case, with
// or without a unit: `tag`, `Side 2`, `side1 mm`, `side_3 (in)`, `mass [kg]`.

import type { Fault, Read } from '../measure/fault.ts';
import { type LengthUnit, lengthUnit } from '../measure/length.ts';
import { type AngleUnit, type MassUnit, massUnit } from '../measure/units.ts';
import { MAX_SIDES } from './limits.ts';

/** A column that stands once. */
export type PlainColumn = 'tag' | 'by' | 'mark' | 'count' | 'seen from' | 'condition' | 'note';

/** Column numbers from 0; absent ones are not in the maps. */
export interface Columns {
  readonly plain: ReadonlyMap<PlainColumn, number>;
  readonly mass: { readonly at: number; readonly unit: MassUnit | null } | null;
  /** Side number less 1 → its column and unit. */
  readonly sides: readonly { readonly at: number; readonly unit: LengthUnit | null }[];
  /** Side number less 1 → its column of holes, or null. */
  readonly holes: readonly (number | null)[];
  /** The same of laps. */
  readonly laps: readonly (number | null)[];
  /** Side number less 1 → its column of angles and their unit, or null. */
  readonly angles: readonly ({ readonly at: number; readonly unit: AngleUnit | null } | null)[];
}

const PLAIN: readonly PlainColumn[] = [
  'tag',
  'by',
  'mark',
  'count',
  'seen from',
  'condition',
  'note',
];
/** A first row as people write one. */
const EXAMPLE = 'tag, mark, side1 cm, side2 cm, side3 cm';
const UNKNOWN =
  'one of tag, by, mark, count, side1, side2, side3 …, holes1 …, laps1 …, angle1 …, seen from, condition, mass, note; a unit may follow side, angle and mass';

/** The columns of a header row, or every fault of it. */
export function readColumns(header: readonly string[]): Read<Columns> {
  const found: Found = {
    plain: new Map(),
    mass: null,
    sides: new Map(),
    holes: new Map(),
    laps: new Map(),
    angles: new Map(),
  };
  const faults: Fault[] = [];
  let named = false;
  header.forEach((cell, at) => {
    const expected = takeColumn(found, cell, at);
    if (expected === null) return;
    // Names that may stand there are told once.
    const known = expected === UNKNOWN && named ? 'one of the names above' : expected;
    named ||= expected === UNKNOWN;
    faults.push({ path: `column ${at + 1}`, found: JSON.stringify(cell), expected: known });
  });
  const { sides, holes, laps, angles } = found;
  const numbered = [...sides.keys(), ...holes.keys(), ...laps.keys(), ...angles.keys()];
  const count = Math.max(3, ...numbered);
  const numbers = [...Array(count).keys()].map((n) => n + 1);
  const missing = numbers.filter((n) => !sides.has(n)).map((n) => `side${n}`);
  if (missing.length > 0)
    faults.unshift({
      path: 'first row',
      found: `no column ${missing.join(', ')}`,
      expected: `side1 to side${count}, as in: ${EXAMPLE}`,
    });
  if (faults.length > 0) return { ok: false, faults };
  return {
    ok: true,
    value: {
      plain: found.plain,
      mass: found.mass,
      sides: numbers.map((n) => sides.get(n) as { at: number; unit: LengthUnit | null }),
      holes: numbers.map((n) => holes.get(n) ?? null),
      laps: numbers.map((n) => laps.get(n) ?? null),
      angles: numbers.map((n) => angles.get(n) ?? null),
    },
  };
}

/** The columns met so far; the only thing that is written to. */
interface Found {
  readonly plain: Map<PlainColumn, number>;
  mass: Columns['mass'];
  readonly sides: Map<number, { at: number; unit: LengthUnit | null }>;
  readonly holes: Map<number, number>;
  readonly laps: Map<number, number>;
  readonly angles: Map<number, { at: number; unit: AngleUnit | null }>;
}

/** Adds one column to those found; what was expected instead, or null. */
function takeColumn(found: Found, cell: string, at: number): string | null {
  const column = columnOf(cell);
  if (column === null) return cell === '' ? 'a name for the column' : UNKNOWN;
  if ('number' in column) return takeNumbered(found, column, at);
  if (column.name === 'mass') {
    const unit = column.unit === '' ? null : massUnit(column.unit);
    if (found.mass) return 'mass only once';
    if (column.unit !== '' && unit === null) return 'a unit that is one of kg, g, t, lb, oz';
    found.mass = { at, unit };
    return null;
  }
  if (found.plain.has(column.name)) return `${column.name} only once`;
  found.plain.set(column.name, at);
  return null;
}

/** Where the columns of each numbered name are kept. */
const KEPT = { side: 'sides', holes: 'holes', laps: 'laps', angle: 'angles' } as const;

function takeNumbered(found: Found, column: Numbered, at: number): string | null {
  const { name, number, unit } = column;
  if (found[KEPT[name]].has(number)) return `${name}${number} only once`;
  if (number < 1 || number > MAX_SIDES) return `a side from 1 to ${MAX_SIDES}`;
  if (name === 'holes' || name === 'laps') {
    if (unit !== '') return name === 'holes' ? 'no unit for a number of holes' : 'no unit for laps';
    found[name].set(number, at);
    return null;
  }
  return name === 'angle'
    ? takeUnit(found.angles, column, at, angleUnit, 'deg, rad')
    : takeUnit(found.sides, column, at, lengthUnit, 'mm, cm, m, in, ft');
}

function takeUnit<U>(
  kept: Map<number, { at: number; unit: U | null }>,
  { number, unit }: Numbered,
  at: number,
  unitOf: (word: string) => U | null,
  allowed: string,
): string | null {
  const known = unit === '' ? null : unitOf(unit);
  if (unit !== '' && known === null) return `a unit that is one of ${allowed}`;
  kept.set(number, { at, unit: known });
  return null;
}

const angleUnit = (word: string): AngleUnit | null =>
  /^(deg|degs|degree|degrees|°)$/.test(word)
    ? 'deg'
    : /^(rad|rads|radian|radians)$/.test(word)
      ? 'rad'
      : null;

type Column =
  | { readonly name: PlainColumn }
  | { readonly name: 'mass'; readonly unit: string }
  | Numbered;

interface Numbered {
  readonly name: 'side' | 'holes' | 'laps' | 'angle';
  readonly number: number;
  readonly unit: string;
}

function columnOf(cell: string): Column | null {
  const words = cell
    .toLowerCase()
    .replace(/[_\s]+/g, ' ')
    .trim();
  const name = PLAIN.find((plain) => plain.replace(' ', '') === words.replace(/ /g, ''));
  if (name) return { name };
  const numbered = /^(side|holes|laps?|angle) ?(\d{1,3})(.*)$/.exec(words);
  const unit = (rest: string): string =>
    rest
      .replace(/^[\s,/:]+|[()[\]]/g, '')
      .replace(/^in /, '')
      .trim();
  if (numbered)
    return {
      name: (numbered[1] === 'lap' ? 'laps' : numbered[1]) as Numbered['name'],
      number: Number(numbered[2]),
      unit: unit(numbered[3] as string),
    };
  const mass = /^mass\b(.*)$/.exec(words);
  return mass ? { name: 'mass', unit: unit(mass[1] as string) } : null;
}
