import { describe, expect, it } from 'vitest';
import type { CellValue, Table } from '../../src/papers/csv.ts';
import { tableToCsv } from '../../src/papers/csv.ts';
import { flatItems } from '../../src/papers/drawing.ts';
import { toSvg } from '../../src/papers/svg.ts';
import {
  buyTable,
  kindsTable,
  placesTable,
  seamsTable,
  stockTable,
} from '../../src/papers/tables.ts';
import { takeOffNotes, takeOffSheets } from '../../src/papers/take-off-sheet.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import type { HardwareLot } from '../../src/takeoff/hardware.ts';
import { takeoffSection } from '../../src/takeoff/schema.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { outside, overlaps } from './sheet-checks.ts';
import { standing } from './standing.ts';
import { readXml } from './xml.ts';

const of = standing({ solid: 'icosahedron', b: 4, c: 0, division: 'equal chords' }, -0.25);
const courses = coursesOf(of.shell);
const column = (table: Table, name: string): CellValue[] =>
  table.rows.map((row) => row[table.columns.indexOf(name)] ?? null);
const bolt = { thread: '5/16-18', length: 0.0254 };
const hardware: readonly HardwareLot[] = [
  { item: 'bolt', ...bolt, count: 600, state: 'used', price: 0.21, pack: 50, grade: 'Gr 5' },
  { item: 'bolt', thread: 'M8', length: 0.025, count: 200, state: 'used' },
];
const list = takeOff(
  of.shell,
  of.kinds,
  hardware,
  takeoffSection.parse({
    sides: [
      { sideLength: 0.911, within: 0.01, holes: 8, ...bolt },
      { kind: '1', side: 2, holes: 9, ...bolt },
      { kind: '2', side: 2, holes: 10, ...bolt },
    ],
    plates: { bolt: { thread: '1/4-20', length: 0.01905 } },
    tape: { rollLength: 10 },
  }),
);
const facts = {
  project: 'Heron Flats shell, 24 ft',
  sheet: '4 Take-off',
  date: '14 May 2026',
  assumes: 'Sides measured hole to hole, ± 1 mm.',
};

describe('the tables of a project', () => {
  it('list every kind with sides in millimetres, and no counts where nobody counted', () => {
    const table = kindsTable(of.kinds);
    expect(column(table, 'kind')).toEqual(of.kinds.map((kind) => kind.id));
    expect(column(table, 'side1 mm')[0]).toBe(911.5);
    expect(column(table, 'good')[2]).toBeNull();
    expect(column(table, 'hand').filter((hand) => hand !== '')).toEqual(['L', 'R']);
  });

  it('list every place once, in the order of its number, with its neighbours', () => {
    const table = placesTable(of.shell, courses, of.kinds);
    expect(column(table, 'place').length).toBe(of.numbers.length);
    expect(new Set(column(table, 'place')).size).toBe(of.numbers.length);
    expect(column(table, 'place')[0]).toBe('1-01');
    const neighbours = new Map(table.rows.map((row) => [row[0], row.slice(5)]));
    for (const [place, across] of neighbours)
      for (const other of across)
        if (other !== null) expect(neighbours.get(other)).toContain(place);
  });

  it('leave out openings, and the way across to them', () => {
    const gone = of.numbers[7] as string;
    const csv = tableToCsv(placesTable(of.shell, courses, of.kinds, new Set([7])));
    expect(csv).not.toContain(gone);
  });

  it('name the side of the kind that lies on the first seam, counted from 1', () => {
    const table = placesTable(of.shell, courses, of.kinds);
    const row = table.rows.find((one) => one[0] === of.numbers[0]);
    expect(row?.[4]).toBe((of.shell.turn[0] as number) + 1);
  });

  it('hold stock against places', () => {
    const table = stockTable(of.shell, of.kinds);
    expect(column(table, 'over')).toEqual([1, -1, null, 1, -1, null]);
    expect(column(table, 'note')).toEqual([
      '',
      'short 1',
      'not counted',
      '',
      'short 1',
      'not counted',
    ]);
    const places = column(table, 'places').reduce<number>((sum, n) => sum + Number(n), 0);
    expect(places).toBe(of.numbers.length);
  });

  it('carry the take-off with its units', () => {
    const table = buyTable(list);
    const bolts = table.rows.find((row) => row[1] === '5/16-18 × 1″');
    expect(bolts?.slice(0, 3)).toEqual(['bolt', '5/16-18 × 1″', 'piece']);
    expect(column(table, 'unit').at(-1)).toBe('m');
    const seams = column(seamsTable(list), 'seams').reduce<number>((sum, n) => sum + Number(n), 0);
    expect(seams).toBe(list.account.seams.counted);
  });
});

describe('the take-off on paper', () => {
  const sheets = takeOffSheets(list, facts);
  const words = sheets.flatMap((sheet) =>
    flatItems(sheet.items).flatMap((item) => (item.type === 'text' ? [item.text] : [])),
  );

  it('parses, and no words overlap or leave the sheet, on any paper', () => {
    for (const paper of ['A4', 'A3', 'Letter'] as const)
      for (const sheet of takeOffSheets(list, facts, { paper })) {
        expect(readXml(toSvg(sheet)).name).toBe('svg');
        expect(overlaps(sheet)).toEqual([]);
        expect(outside(sheet)).toEqual([]);
      }
  });

  it('carries the caution once a sheet and says that the list is not complete', () => {
    expect(
      words.filter((one) => one.startsWith('Caution. A count of pieces, no design')).length,
    ).toBe(sheets.length);
    expect(words.some((one) => one.includes('Not complete'))).toBe(true);
  });

  it('names what is in dispute, left out or easily mixed', () => {
    const notes = takeOffNotes(list).join('\n');
    expect(notes).toMatch(/9 holes of 5\/16-18 on side 3 of kind 1 and 10 holes/);
    expect(notes).toMatch(/\d+ seams left out: nobody said how many holes/);
    expect(notes).toMatch(/1 lot of hardware/);
    expect(notes).toContain('M8 × 1.25 and 5/16-18 UNC');
    const named = takeOffNotes(list, hardware).join('\n');
    expect(named).not.toMatch(/1 lot of hardware/);
    expect(named).toMatch(/Not counted: \d+ M8 bolt: no bolt of this size is needed\./);
  });

  it('goes on to more sheets when the list is long, every line once', () => {
    const long = {
      ...list,
      lines: Array.from({ length: 60 }, (_, i) => ({
        ...(list.lines[0] as (typeof list.lines)[0]),
        quantity: 1000 + i,
      })),
    };
    const many = takeOffSheets(long, facts);
    const texts = many
      .flatMap((sheet) => flatItems(sheet.items))
      .flatMap((item) => (item.type === 'text' ? [item.text] : []));
    expect(many.length).toBeGreaterThan(2);
    for (let i = 0; i < 60; i++)
      expect(texts.filter((one) => one === String(1000 + i)).length).toBe(1);
    for (const sheet of many) expect(overlaps(sheet)).toEqual([]);
  });
});
