// Words, lists and tables that run over as many sheets as they need: every line wrapped, none cut; a
// table's head stands again where it goes on; a heading never stands alone at the foot. Caution and title
// block on every sheet. Millimetres.

import { type Drawing, group, type Item, line, text } from './drawing.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import { chunksOf, type FlowBlock, type FlowChunk } from './flow-blocks.ts';
import { footBlock, frameItems, headingItems, type Paper, pageOf } from './page.ts';
import { wrapText } from './text-width.ts';

/** How the sheets of a flow look. */
export interface FlowOptions {
  readonly paper?: Paper;
  readonly way?: 'upright' | 'across';
  /** Columns side by side; 1 where left out. */
  readonly columns?: number;
  readonly heading: string;
  /** One line below the heading; longer ones belong among the words. */
  readonly remark?: string;
  /** What the title block says of lengths and scale. */
  readonly lengths: string;
  readonly scale?: string;
  /** Stands in bold under the heading of every sheet. */
  readonly caution?: string;
  /** Size of the type; 3.3 where left out. */
  readonly size?: number;
}

const pad = 5;
const gutter = 6;
const warnSize = 2.9;
const warnStep = 4;
/** Less free height than this on a sheet is no sheet. */
const LEAST_ROOM = 60;

/** The sheets; one at least. RangeError where title block and caution leave no room for anything. */
export function flowSheets(
  blocks: readonly FlowBlock[],
  facts: SheetFacts,
  options: FlowOptions,
): Drawing[] {
  const { heading, remark = '', columns = 1, lengths, scale = 'none', size = 3.3 } = options;
  const page = pageOf(options.paper ?? 'A4', options.way ?? 'upright');
  const { frame } = page;
  const width = frame.width - 2 * pad;
  const blockOf = (sheet: string) => footBlock(page, { ...facts, sheet, scale, lengths });
  // As long as the number of sheets can make it.
  const { top: foot } = blockOf(`${facts.sheet}, 888 of 888`);
  const warned = cautionLines(cautionOf(facts, options.caution ?? ''), width);
  const head = wrapText(heading, 4.4, width, true);
  const told = wrapText(remark, 3, width);
  const headRoom = 4 + head.length * 5.6 + told.length * 4 + warned.length * warnStep + 3;
  const from = frame.y + headRoom;
  const room = foot - 3 - from;
  if (room < LEAST_ROOM)
    throw new RangeError(
      `title block, heading and caution leave ${Math.max(0, Math.round(room))} mm of the sheet free, at least ${LEAST_ROOM} mm are needed: shorten the project’s title ("${facts.project.slice(0, 30)}…", ${[...facts.project].length} characters) or what is assumed`,
    );
  const wide = (width - gutter * (columns - 1)) / columns;
  const slots = inSlots(chunksOf(blocks, wide, room, size), room, columns);
  const count = Math.max(1, Math.ceil(slots.length / columns));
  return Array.from({ length: count }, (_, i) => {
    const sheet = count === 1 ? facts.sheet : `${facts.sheet}, ${i + 1} of ${count}`;
    const drawn = slots
      .slice(i * columns, (i + 1) * columns)
      .flatMap((slot, c) =>
        slot.flatMap(({ chunk, y }) =>
          chunk.draw(frame.x + pad + c * (wide + gutter), from + y, wide),
        ),
      );
    const [first = '', ...more] = head;
    let y = frame.y + 7 + (head.length - 1) * 5.6;
    const heads: Item[] = [
      ...headingItems([frame.x + pad, frame.y + 7], first, ''),
      ...more.map((words, n) =>
        text([frame.x + pad, frame.y + 7 + (n + 1) * 5.6], words, 4.4, { bold: true }),
      ),
      ...told.map((words, n) => text([frame.x + pad, y + 5.2 + n * 4], words, 3, { ink: 'grey' })),
    ];
    y += 1.6 + told.length * 4;
    return {
      width: page.width,
      height: page.height,
      title: `${facts.project}: ${sheet}`,
      description: `${heading}. ${remark} ${warned.join(' ')}`.trim(),
      items: [
        ...frameItems(page),
        ...heads,
        group(
          warned.map((words, n) =>
            text([frame.x + pad, y + 3.6 + n * warnStep], words, warnSize, { bold: true }),
          ),
          { part: 'caution' },
        ),
        ...Array.from({ length: columns - 1 }, (_, c) => {
          const x = frame.x + pad + (c + 1) * wide + (c + 0.5) * gutter;
          return line([x, from], [x, foot - 3], { weight: 'hair', ink: 'grey' });
        }),
        group(drawn, { part: 'flow' }),
        ...blockOf(sheet).items,
      ],
    };
  });
}

const cautionLines = (caution: string, width: number): string[] =>
  caution.trim() === '' ? [] : wrapText(`Caution. ${caution.trim()}`, warnSize, width, true);

type Slot = { readonly chunk: FlowChunk; readonly y: number }[];

/** Chunks in columns of height `room`, in order; a break begins a new sheet. */
function inSlots(chunks: readonly FlowChunk[], room: number, columns: number): Slot[] {
  const slots: Slot[] = [[]];
  let y = 0;
  const next = (): void => {
    slots.push([]);
    y = 0;
  };
  chunks.forEach((chunk, i) => {
    const slot = (): Slot => slots.at(-1) as Slot;
    if (chunk.breaks) {
      if (slot().length > 0 || slots.length > 1) {
        while (slots.length % columns !== 0) slots.push([]);
        next();
      }
      return;
    }
    if (chunk.blank && (slot().length === 0 || y + chunk.height > room)) return;
    const kept = keptHeight(chunks, i);
    if (slot().length > 0 && y + Math.min(kept, room) > room + 1e-6) {
      next();
      if (chunk.again !== null) {
        slot().push({ chunk: chunk.again, y });
        y += chunk.again.height;
      }
    }
    slot().push({ chunk, y });
    y += chunk.height;
  });
  if ((slots.at(-1) as Slot).length === 0 && slots.length > 1) slots.pop();
  return slots;
}

/** A chunk's height with those that it must not be parted from. */
function keptHeight(chunks: readonly FlowChunk[], from: number): number {
  let sum = 0;
  for (let i = from; i < chunks.length; i++) {
    const { height, keep, breaks } = chunks[i] as FlowChunk;
    if (breaks) break;
    sum += height;
    if (!keep) break;
  }
  return sum;
}
