// A sheet of paper with its frame and title block. Borders and the 0.7 mm frame after ISO 5457, the
// block's place (bottom right) and its data fields after ISO 7200, both from memory. Millimetres.

import {
  type Box,
  group,
  type Item,
  line,
  type Point,
  rectangle,
  type TextItem,
  text,
} from './drawing.ts';
import { capHeight, fittingSize, wrapText } from './text-width.ts';

/** A size of paper. */
export type Paper = 'A4' | 'A3' | 'Letter';

/** Width and height of each, upright, millimetres. */
export const paperSizes: Readonly<Record<Paper, readonly [number, number]>> = {
  A4: [210, 297],
  A3: [297, 420],
  Letter: [215.9, 279.4],
};

/** An empty sheet. */
export interface Page {
  readonly width: number;
  readonly height: number;
  /** Inside the frame: 20 mm from the filing edge on the left, 10 mm from the others. */
  readonly frame: Box;
}

/** What the title block says. Dates and texts are the caller's: nothing here knows the time. */
export interface TitleBlock {
  readonly project: string;
  readonly sheet: string;
  /** `1 : 40`, or what else tells the size. */
  readonly scale: string;
  readonly date: string;
  /** How lengths are given: `millimetres and inches`. */
  readonly lengths: string;
  /** Further fields, each a name and a value. */
  readonly more?: readonly (readonly [string, string])[];
  /** What the sheet takes for granted. */
  readonly assumes: string;
}

/** The page of a paper size. */
export function pageOf(paper: Paper, way: 'upright' | 'across'): Page {
  const [short, long] = paperSizes[paper];
  const [width, height] = way === 'upright' ? [short, long] : [long, short];
  return { width, height, frame: { x: 20, y: 10, width: width - 30, height: height - 20 } };
}

/** The frame, with centring marks at the middle of each edge. */
export function frameItems(page: Page): Item[] {
  const { frame, width, height } = page;
  const [cx, cy] = [width / 2, height / 2];
  const [right, bottom] = [frame.x + frame.width, frame.y + frame.height];
  const mark = (from: Point, to: Point): Item => line(from, to, { weight: 'medium' });
  return [
    rectangle(frame, { weight: 'heavy' }),
    mark([cx, frame.y - 5], [cx, frame.y]),
    mark([cx, bottom], [cx, bottom + 5]),
    mark([frame.x - 5, cy], [frame.x, cy]),
    mark([right, cy], [right + 5, cy]),
  ];
}

const labelSize = 2.2;
const valueSize = 3.2;
const smallSize = 2.6;
const pad = 1.6;

/** The title block, its bottom edge at `bottom`; `top` is where it ends above. */
export function titleBlockItems(
  block: TitleBlock,
  x: number,
  bottom: number,
  width: number,
): { readonly items: Item[]; readonly top: number } {
  const wide = width > 140;
  const fields: readonly Field[] = [
    ['scale', block.scale],
    ['date', block.date],
    ['lengths', block.lengths],
    ...(block.more ?? []),
  ];
  const names: readonly Field[] = [
    ['project', block.project],
    ['sheet', block.sheet],
  ];
  const rows: readonly (readonly Field[])[] = [
    ...(wide ? [names] : names.map((field) => [field])),
    ...inRows(fields, wide ? 4 : 2),
    [['assumes', block.assumes]],
  ];
  const drawn = rows.map((row) => cellsOf(row, width));
  const height = drawn.reduce((sum, row) => sum + row.height, 0);
  let y = bottom - height;
  const top = y;
  const items: Item[] = [];
  for (const row of drawn) {
    items.push(line([x, y], [x + width, y], { weight: y === top ? 'bold' : 'thin' }));
    row.cells.forEach((cell, i) => {
      const left = x + (i * width) / row.cells.length;
      if (i > 0) items.push(line([left, y], [left, y + row.height], { weight: 'thin' }));
      items.push(...cell(left, y));
    });
    y += row.height;
  }
  return { items: [group(items, { part: 'title-block' })], top };
}

/** The title block across the foot of a page. */
export const footBlock = ({ frame }: Page, block: TitleBlock): ReturnType<typeof titleBlockItems> =>
  titleBlockItems(block, frame.x, frame.y + frame.height, frame.width);

type Field = readonly [string, string];
type Cell = (x: number, y: number) => Item[];

function cellsOf(
  row: readonly Field[],
  width: number,
): { readonly cells: readonly Cell[]; readonly height: number } {
  const cells = row.map(([name, value]) => cellOf(name, value, width / row.length));
  return {
    cells: cells.map((one) => one.cell),
    height: Math.max(...cells.map((one) => one.height)),
  };
}

/** A value in one line as large as fits, or else wrapped in the small size. */
function cellOf(name: string, value: string, width: number): { cell: Cell; height: number } {
  const inner = width - 2 * pad;
  const bold = name === 'project';
  const long = name === 'assumes';
  const size = long ? null : fittingSize(value, valueSize, smallSize, inner, bold);
  const lines = size === null ? wrapText(value, smallSize, inner, bold) : [value];
  const type = size ?? smallSize;
  const step = type * 1.3;
  const head = pad + labelSize * 1.25;
  const cell: Cell = (x, y) => [
    text([x + pad, y + pad + (labelSize * capHeight) / 2], name, labelSize, { ink: 'grey' }),
    ...lines.map((words, i) =>
      text([x + pad, y + head + (type * capHeight) / 2 + i * step], words, type, {
        bold,
      }),
    ),
  ];
  return { cell, height: head + (lines.length - 1) * step + type * capHeight + pad };
}

function inRows<T>(items: readonly T[], perRow: number): T[][] {
  const count = Math.ceil(items.length / perRow);
  return Array.from({ length: count }, (_, i) => items.slice(i * perRow, (i + 1) * perRow));
}

/** A heading in bold with a quiet remark below it. */
export const headingItems = ([x, y]: Point, title: string, remark: string): TextItem[] => [
  text([x, y], title, 4.4, { bold: true }),
  ...(remark === '' ? [] : [text([x, y + 5.4], remark, 3, { ink: 'grey' })]),
];

/** Scales that a sheet may have, larger drawings first: ISO 5455's and steps between them. */
export const scales: readonly number[] = [
  1, 2, 2.5, 3, 4, 5, 6, 7.5, 8, 10, 12, 15, 16, 18, 20, 22.5, 25, 28, 30, 32, 35, 40, 45, 50, 55,
  60, 65, 70, 75, 80, 90, 100, 110, 125, 150, 175, 200, 250, 300, 400, 500, 1000,
];

/** The largest scale (1 : n) at which `metres` fit into `room` millimetres; the smallest on the
 * list where none does. */
export function scaleFor(metres: number, room: number): number {
  return scales.find((n) => (metres * 1000) / n <= room) ?? (scales.at(-1) as number);
}
