// The tables of a project: kinds, places, stock against places, seams and the buy list. Lengths in
// millimetres to a tenth, named so in the column; sides are numbered from 1 as on paper.

import type { Kind } from '../pile/kind.ts';
import type { Courses } from '../shell/courses.ts';
import type { PlaceId } from '../shell/ids.ts';
import { cornerCount, mateOf, placeCount, type Shell, sidesOf } from '../shell/shell.ts';
import type { BuyLine, TakeOff } from '../takeoff/take-off.ts';
import type { CellValue, Table } from './csv.ts';
import { boltLength } from './length-text.ts';

/** One row a kind: hand, sides, marks, counts, mass. */
export function kindsTable(kinds: readonly Kind[]): Table {
  const most = Math.max(0, ...kinds.map((kind) => kind.sides.length));
  const sideNames = Array.from({ length: most }, (_, i) => `side${i + 1} mm`);
  return {
    title: 'Kinds',
    columns: ['kind', 'hand', ...sideNames, 'marks', 'good', 'repair', 'scrap', 'mass kg'],
    rows: kinds.map((kind) => [
      kind.id,
      kind.hand ?? '',
      ...sideNames.map((_, i) => millimetres(kind.sides[i])),
      kind.marks.join(' '),
      ...[kind.good, kind.repair, kind.scrap].map((n) => (kind.counted ? n : null)),
      kind.mass,
    ]),
  };
}

/** One row a place: number, course, position, kind, which side of the kind lies on the place's
 * first seam, and the numbers of the neighbours across its seams in the order of the kind's sides
 * as they lie (empty where the side is open). Places in `leftOut` are left out. */
export function placesTable(
  shell: Shell,
  courses: Courses,
  kinds: readonly Kind[],
  leftOut: ReadonlySet<number> = new Set(),
): Table {
  const places = Array.from({ length: placeCount(shell) }, (_, p) => p as PlaceId);
  const most = Math.max(0, ...places.map((p) => cornerCount(shell, p)));
  const across = Array.from({ length: most }, (_, i) => `to across side ${i + 1}`);
  const order = (p: number): number =>
    (courses.course[p] as number) * 1e6 + (courses.position[p] as number);
  return {
    title: 'Places',
    columns: ['place', 'course', 'position', 'kind', 'first side', ...across],
    rows: places
      .filter((p) => !leftOut.has(p))
      .sort((a, b) => order(a) - order(b))
      .map((p) => [
        courses.numbers[p] as string,
        courses.course[p] as number,
        courses.position[p] as number,
        (kinds[shell.kind[p] as number] as Kind).id,
        (shell.turn[p] as number) + 1,
        ...neighboursByKindSide(shell, courses, p, most, leftOut),
      ]),
  };
}

/** One row a kind with places or stock: places, good, over (negative: short). */
export function stockTable(
  shell: Shell,
  kinds: readonly Kind[],
  leftOut: ReadonlySet<number> = new Set(),
): Table {
  const rows = kinds.map((kind, k): CellValue[] => {
    const places = shell.kind.reduce((n, at, p) => n + (at === k && !leftOut.has(p) ? 1 : 0), 0);
    const good = kind.counted ? kind.good : null;
    const over = good === null ? null : good - places;
    const words = over === null ? 'not counted' : over < 0 ? `short ${-over}` : '';
    return [kind.id, places, good, kind.counted ? kind.repair : null, over, words];
  });
  return {
    title: 'Stock',
    columns: ['kind', 'places', 'good', 'repair', 'over', 'note'],
    rows,
  };
}

/** One row a side class: seams, lengths, bolts through the seams whose holes are known. */
export function seamsTable(takeOff: TakeOff): Table {
  return {
    title: 'Seams',
    columns: ['seam class', 'length mm', 'seams', 'total m', 'seams with known holes', 'bolts'],
    rows: takeOff.seams.map((size) => [
      size.class,
      millimetres(size.length),
      size.seams,
      Math.round(size.total * 100) / 100,
      size.known,
      size.bolts,
    ]),
  };
}

/** One row a line of the take-off, ready to take to the shop. */
export function buyTable(takeOff: TakeOff): Table {
  return {
    title: 'Take-off',
    columns: [
      'item',
      'size',
      'unit',
      'needed',
      'spare',
      'in hand',
      'short',
      'to buy',
      'pack',
      'packs',
      'price each',
      'cost',
      'note',
    ],
    rows: takeOff.lines.map((line) => [
      line.item,
      sizeWords(line),
      line.unit,
      tenth(line.quantity),
      tenth(line.spare),
      line.inHand,
      tenth(line.short),
      tenth(line.toBuy),
      line.pack,
      line.packs,
      line.price,
      line.cost === null ? null : Math.round(line.cost * 100) / 100,
      line.notes.join('; '),
    ]),
  };
}

/** The size of a line in words: `5/16-18 × 1″`, `M8 × 25 mm`, `6 corners, rim`. */
export function sizeWords(line: BuyLine): string {
  const parts = [
    line.thread ?? '',
    line.length === null ? '' : `× ${boltLength(line.thread ?? '', line.length)}`,
    line.corners === null
      ? ''
      : `${line.corners} ${line.corners === 1 ? 'corner' : 'corners'}${line.rim ? ', rim' : ''}`,
  ];
  return parts.filter((part) => part !== '').join(' ');
}

function neighboursByKindSide(
  shell: Shell,
  courses: Courses,
  place: PlaceId,
  most: number,
  leftOut: ReadonlySet<number>,
): CellValue[] {
  const sides = sidesOf(shell, place);
  const turn = shell.turn[place] as number;
  return Array.from({ length: most }, (_, i) => {
    if (i >= sides.length) return null;
    const side = sides[(i - turn + sides.length) % sides.length] as (typeof sides)[number];
    const mate = mateOf(shell, side);
    const other = mate === null ? null : (shell.sidePlace[mate] as number);
    return other === null || leftOut.has(other) ? null : (courses.numbers[other] as string);
  });
}

const millimetres = (metres: number | undefined): number | null =>
  metres === undefined ? null : Math.round(metres * 1e4) / 10;

const tenth = (value: number): number => Math.round(value * 10) / 10;
