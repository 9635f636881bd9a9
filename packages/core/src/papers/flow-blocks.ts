// The blocks of a flow as chunks that are never parted: a line, a row, a drawing. Millimetres.

import { type Box, type Item, line, rectangle, text } from './drawing.ts';
import { capHeight, wrapText } from './text-width.ts';

/** A box to tick, as the only thing in a cell of a table. */
export const TICK = '\u2610';

/** A column of a table. */
export interface FlowColumn {
  readonly name: string;
  /** Share of the width; all shares together are 1. */
  readonly share: number;
  readonly align?: 'start' | 'end';
  readonly bold?: boolean;
}

/** A table. `grid`: lines between columns too, for what is filled in by hand; `rowHeight`: at least. */
export interface FlowTable {
  readonly block: 'table';
  readonly columns: readonly FlowColumn[];
  readonly rows: readonly (readonly string[])[];
  readonly grid?: boolean;
  readonly rowHeight?: number;
  readonly size?: number;
}

/** What a flow is made of. */
export type FlowBlock =
  | { readonly block: 'heading'; readonly words: string }
  | {
      readonly block: 'words';
      readonly words: string;
      readonly bold?: boolean;
      readonly size?: number;
      readonly quiet?: boolean;
      /** Must not be parted from what follows. */
      readonly keep?: boolean;
    }
  | {
      readonly block: 'list';
      readonly mark: 'tick' | 'dash' | 'number';
      readonly items: readonly string[];
      readonly size?: number;
    }
  /** Names with a line behind each to write on. */
  | { readonly block: 'blanks'; readonly names: readonly string[] }
  | FlowTable
  /** A drawing of the whole width; `tight`: with nothing kept free below it. */
  | {
      readonly block: 'figure';
      readonly height: number;
      readonly draw: (box: Box) => readonly Item[];
      readonly tight?: boolean;
    }
  | { readonly block: 'gap'; readonly height: number }
  /** What follows begins a sheet. */
  | { readonly block: 'sheet' };

/** A part that is never parted. */
export interface FlowChunk {
  readonly height: number;
  readonly draw: (x: number, y: number, width: number) => Item[];
  /** Must not be parted from the next. */
  readonly keep: boolean;
  /** Drawn before it where it begins a column. */
  readonly again: FlowChunk | null;
  readonly breaks: boolean;
  /** Nothing but room: left out where a column begins or ends. */
  readonly blank: boolean;
}

/** Words under this name, and a table with its heading, for short. */
export const heading = (words: string): FlowBlock => ({ block: 'heading', words });
/** A paragraph. */
export const words = (
  said: string,
  more: { bold?: boolean; size?: number; quiet?: boolean; keep?: boolean } = {},
): FlowBlock => ({
  block: 'words',
  words: said,
  ...more,
});
/** A list with boxes to tick, dashes or numbers. */
export const list = (
  mark: 'tick' | 'dash' | 'number',
  items: readonly string[],
  size?: number,
): FlowBlock => ({
  block: 'list',
  mark,
  items,
  ...(size !== undefined && { size }),
});

const STEP = 1.3;
const plain = { keep: false, again: null, breaks: false, blank: false };

/** The chunks of blocks in a column of a width and a greatest height. */
export const chunksOf = (
  blocks: readonly FlowBlock[],
  width: number,
  room: number,
  size: number,
): FlowChunk[] => blocks.flatMap((block) => chunksOfBlock(block, width, room, size));

function chunksOfBlock(block: FlowBlock, width: number, room: number, size: number): FlowChunk[] {
  switch (block.block) {
    case 'heading':
      return headingChunks(block.words, width, size);
    case 'words': {
      const keep = block.keep ?? false;
      const lines = lineChunks(block.words, width, block.size ?? size, {
        bold: block.bold ?? false,
        ink: block.quiet ? 'grey' : 'ink',
      });
      return [
        ...lines.map((chunk) => (keep ? { ...chunk, keep } : chunk)),
        { ...gapChunk(size * 0.35), keep },
      ];
    }
    case 'list':
      return [
        ...block.items.flatMap((item, i) =>
          itemChunks(item, i, block.mark, width, block.size ?? size),
        ),
        gapChunk(size * 0.35),
      ];
    case 'blanks':
      return block.names.map((name) => blankChunk(name, width, size));
    case 'table':
      return tableChunks(block, width, room, block.size ?? size);
    case 'figure': {
      const height = Math.min(block.height, room);
      const draw = (x: number, y: number, wide: number): Item[] => [
        ...block.draw({ x, y, width: wide, height: height - (block.tight ? 0 : 2) }),
      ];
      return [{ ...plain, height, draw }];
    }
    case 'gap':
      return [gapChunk(block.height)];
    case 'sheet':
      return [{ ...plain, height: 0, draw: () => [], breaks: true }];
  }
}

const gapChunk = (height: number): FlowChunk => ({ ...plain, blank: true, height, draw: () => [] });

function headingChunks(said: string, width: number, size: number): FlowChunk[] {
  const type = size * 1.2;
  return wrapText(said, type, width, true).map((row, i, rows) => ({
    ...plain,
    keep: true,
    height: type * STEP + (i === 0 ? size * 0.9 : 0) + (i === rows.length - 1 ? size * 0.4 : 0),
    draw: (x, y) => [
      text([x, y + (i === 0 ? size * 0.9 : 0) + type * 0.65], row, type, { bold: true }),
    ],
  }));
}

function lineChunks(
  said: string,
  width: number,
  size: number,
  more: { readonly bold: boolean; readonly ink: 'ink' | 'grey' },
): FlowChunk[] {
  const rows = wrapText(said, size, width, more.bold);
  return rows.map((row, i) => ({
    ...plain,
    keep: i < rows.length - 1 && (i === 0 || i === rows.length - 2),
    height: size * STEP,
    draw: (x, y) => [text([x, y + size * 0.65], row, size, more)],
  }));
}

function itemChunks(
  said: string,
  index: number,
  mark: 'tick' | 'dash' | 'number',
  width: number,
  size: number,
): FlowChunk[] {
  const indent = size * (mark === 'number' ? 2.4 : 1.8);
  const rows = wrapText(said, size, width - indent);
  return rows.map((row, i) => ({
    ...plain,
    keep: i < rows.length - 1,
    height: size * STEP + (i === rows.length - 1 ? size * 0.3 : 0),
    draw: (x, y) => {
      const middle = y + size * 0.65;
      const marked: Item[] =
        i > 0
          ? []
          : mark === 'tick'
            ? [tickBox(x, middle, size)]
            : [text([x, middle], mark === 'dash' ? '–' : `${index + 1}.`, size)];
      return [...marked, text([x + indent, middle], row, size)];
    },
  }));
}

const tickBox = (x: number, middle: number, size: number): Item =>
  rectangle({ x, y: middle - size * 0.5, width: size, height: size }, { weight: 'light' });

function blankChunk(name: string, width: number, size: number): FlowChunk {
  const rows = wrapText(name, size, width * 0.42);
  const height = Math.max(7.4, rows.length * size * STEP + 3);
  return {
    ...plain,
    height,
    draw: (x, y) => [
      ...rows.map((row, i) =>
        text([x, y + height - 2.2 - (rows.length - 1 - i) * size * STEP], row, size),
      ),
      line([x + width * 0.44, y + height - 1], [x + width, y + height - 1], { weight: 'thin' }),
    ],
  };
}

const cellPad = 1.2;

function tableChunks(table: FlowTable, width: number, room: number, size: number): FlowChunk[] {
  const { columns, rows, grid = false, rowHeight = 0 } = table;
  const ends = columns.map(
    (_, i) => columns.slice(0, i + 1).reduce((sum, { share }) => sum + share, 0) * width,
  );
  const wideAt = (i: number): number =>
    (ends[i] as number) - (i === 0 ? 0 : (ends[i - 1] as number));
  const drawCells =
    (cells: readonly (readonly string[])[], bolds: boolean, ink: 'ink' | 'grey', type: number) =>
    (x: number, y: number): Item[] =>
      cells.flatMap((lines, i) => {
        const column = columns[i] as FlowColumn;
        const end = column.align === 'end';
        const edge = i === 0 && !grid ? 0 : cellPad;
        const at = end
          ? x + (ends[i] as number) - cellPad
          : x + (ends[i] as number) - wideAt(i) + edge;
        return lines.map((words, n): Item => {
          const middle = y + 0.8 + type * 0.65 + n * type * STEP;
          if (words === TICK) return tickBox(end ? at - type : at, middle, type);
          const bold = bolds && (column.bold ?? false);
          return text([at, middle], words, type, { bold, ink, anchor: end ? 'end' : 'start' });
        });
      });
  const wrapped = (cells: readonly string[], type: number, bolds: boolean): string[][] =>
    columns.map((column, i) =>
      wrapText(cells[i] ?? '', type, wideAt(i) - 2 * cellPad, bolds && (column.bold ?? false)),
    );
  const rules = (x: number, y: number, height: number, weight: 'light' | 'hair'): Item[] => [
    line([x, y + height], [x + width, y + height], {
      weight,
      ...(weight === 'hair' && !grid && { ink: 'grey' as const }),
    }),
    ...(grid
      ? [0, ...ends].map(
          (end): Item => line([x + end, y], [x + end, y + height], { weight: 'hair' }),
        )
      : []),
  ];
  const named = columns.some(({ name }) => name !== '');
  const headType = size * 0.85;
  const headCells = wrapped(
    columns.map(({ name }) => name),
    headType,
    false,
  );
  const headHeight = Math.max(1, ...headCells.map((lines) => lines.length)) * headType * STEP + 1.6;
  const head: FlowChunk = {
    ...plain,
    keep: true,
    height: headHeight,
    draw: (x, y) => [
      ...drawCells(headCells, false, 'grey', headType)(x, y),
      ...(grid ? [line([x, y], [x + width, y], { weight: 'light' })] : []),
      ...rules(x, y, headHeight, 'light'),
    ],
  };
  const most = Math.max(1, Math.floor((room - headHeight - 4) / (size * STEP)));
  const body = rows.flatMap((cells) => {
    const lines = wrapped(cells, size, true);
    const deep = Math.max(1, ...lines.map((one) => one.length));
    const parts = Math.ceil(deep / most);
    return Array.from({ length: parts }, (_, part): FlowChunk => {
      const own = lines.map((one) => one.slice(part * most, (part + 1) * most));
      const tall = Math.max(1, ...own.map((one) => one.length));
      const height = Math.max(rowHeight, tall * size * STEP + 1.6 - size * (1 - capHeight) * 0.2);
      return {
        ...plain,
        again: named ? head : null,
        height,
        draw: (x, y) => [
          ...drawCells(own, true, 'ink', size)(x, y),
          ...rules(x, y, height, 'hair'),
        ],
      };
    });
  });
  return [...(named ? [head] : []), ...body, gapChunk(size)];
}
