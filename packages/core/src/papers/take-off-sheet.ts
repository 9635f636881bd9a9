// The take-off on paper: what to buy, what is in hand, and what could not be counted, with the
// caution beside the numbers. One sheet, or more where the list is long.

import type { HardwareLot } from '../takeoff/hardware.ts';
import type { BuyLine, TakeOff } from '../takeoff/take-off.ts';
import { type Drawing, group, type Item, text } from './drawing.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import { footBlock, frameItems, headingItems, type Paper, pageOf } from './page.ts';
import { type RuledColumn, type RuledRow, ruledTable } from './ruled-table.ts';
import { sizeWords } from './tables.ts';
import { wrapText } from './text-width.ts';

/** Options of `takeOffSheets`. */
export interface TakeOffSheetOptions {
  readonly paper?: Paper;
  /** The lots that the take-off was made against, so that those not counted can be named. */
  readonly hardware?: readonly HardwareLot[];
}

const rowStep = 6.4;
const headRoom = 16;
const noteSize = 2.9;
const noteStep = 4.2;

/** The take-off's sheets, landscape; one at least. */
export function takeOffSheets(
  takeOff: TakeOff,
  facts: SheetFacts,
  options: TakeOffSheetOptions = {},
): Drawing[] {
  const page = pageOf(options.paper ?? 'A4', 'across');
  const { frame } = page;
  const caution = cautionOf(facts, ...takeOff.cautions);
  const blockOf = (sheet: string) =>
    footBlock(page, { ...facts, sheet, scale: 'none', lengths: 'bolts as sold' });
  const { top } = blockOf(facts.sheet);
  const width = frame.width - 10;
  const warned = wrapText(`Caution. ${caution}`, noteSize, width, true);
  const notes = [...lineNotes(takeOff), ...takeOffNotes(takeOff, options.hardware)].flatMap(
    (note) => wrapText(note, noteSize, width),
  );
  const head = headRoom + warned.length * noteStep + 2;
  const room = top - frame.y - head - 2;
  const rowsPerSheet = Math.max(1, Math.floor(room / rowStep) - 1);
  const rows = takeOff.lines.map(rowOf);
  const pages = paged(rows, notes, rowsPerSheet);
  return pages.map(({ rows: part, notes: below }, i) => {
    const sheet = pages.length === 1 ? facts.sheet : `${facts.sheet}, ${i + 1} of ${pages.length}`;
    const table = ruledTable(
      columns,
      part,
      { x: frame.x + 5, y: frame.y + head, width, height: room },
      rowStep,
    );
    const from = frame.y + head + (part.length === 0 ? 0 : table.height + 4);
    return {
      width: page.width,
      height: page.height,
      title: `${facts.project}: ${sheet}`,
      description: `${takeOff.lines.length} items for ${takeOff.account.places} places. ${caution}`,
      items: [
        ...frameItems(page),
        ...headingItems([frame.x + 5, frame.y + 7], 'Take-off', accountWords(takeOff)),
        group(
          warned.map((words, n) =>
            text([frame.x + 5, frame.y + headRoom + 2 + n * noteStep], words, noteSize, {
              bold: true,
            }),
          ),
          { part: 'caution' },
        ),
        ...(part.length === 0 ? [] : [group(table.items, { part: 'take-off' })]),
        group(
          below.map((words, n): Item => text([frame.x + 5, from + n * noteStep], words, noteSize)),
          { part: 'notes' },
        ),
        ...blockOf(sheet).items,
      ],
    };
  });
}

const columns: readonly RuledColumn[] = [
  { name: 'item', share: 0.31, align: 'start' },
  { name: 'needed', share: 0.1, align: 'end' },
  { name: 'spare', share: 0.09, align: 'end' },
  { name: 'in hand', share: 0.1, align: 'end' },
  { name: 'short', share: 0.1, align: 'end' },
  { name: 'to buy', share: 0.1, align: 'end' },
  { name: 'packs', share: 0.11, align: 'end' },
  { name: 'cost', share: 0.09, align: 'end' },
];

const itemWords = (line: BuyLine): string => `${line.item} ${sizeWords(line)}`.trim();

/** What is to be known of single lines; prices and common practice are told elsewhere on the sheet. */
const lineNotes = ({ lines }: TakeOff): string[] =>
  lines.flatMap((line) =>
    line.notes
      .filter((note) => note !== 'no price' && !/common practice/.test(note))
      .map((note) => `${itemWords(line)}: ${note}.`),
  );

function rowOf(line: BuyLine): RuledRow {
  const amount = (value: number): string =>
    value === 0 ? '–' : String(Math.round(value * 10) / 10);
  const packs = line.packs === 0 || line.pack === 1 ? '–' : `${line.packs} of ${line.pack}`;
  const cost = line.cost === null ? '?' : line.cost === 0 ? '–' : line.cost.toFixed(2);
  return {
    cells: [
      `${itemWords(line)}${line.unit === 'm' ? ' (m)' : ''}`,
      ...[line.quantity, line.spare, line.inHand, line.short, line.toBuy].map(amount),
      packs,
      cost,
    ],
    accent: false,
    bold: [true, true, false, false, line.short > 0, true, false, false],
    swatch: null,
  };
}

function accountWords({ account, lines, cost, costComplete, complete }: TakeOff): string {
  const price = lines.every((line) => line.packs === 0)
    ? 'nothing to buy'
    : lines.every((line) => line.packs === 0 || line.cost === null)
      ? 'prices not known'
      : `cost ${cost.toFixed(2)}${costComplete ? '' : ' and what has no price'}`;
  const whole = complete ? '' : ' Not complete: see below the list.';
  return `${account.places} places, ${account.seams.counted} seams, ${account.hubs.counted} hubs; ${price}.${whole}`;
}

/** What keeps the list from being whole or safe, one sentence each. Sides are numbered from 1. Lots
 * that are not for the list are named where the lots are given, else counted. */
export function takeOffNotes(takeOff: TakeOff, hardware?: readonly HardwareLot[]): string[] {
  const disputes = takeOff.disagreements.map(({ sides: [a, b], seams }) => {
    const side = (s: typeof a): string =>
      `${s.holes} holes of ${s.thread} on side ${s.side + 1} of kind ${s.kind}`;
    return `Left out, the two sides disagree: ${seams} seams with ${side(a)} and ${side(b)}.`;
  });
  const counted: readonly (readonly [number, string, string])[] = [
    [takeOff.seamsUnknown, 'seam', 'left out: nobody said how many holes.'],
    [takeOff.openSidesUnknown, 'open side', 'left out: nobody said how many holes.'],
    [takeOff.seamsFromOneSide, 'seam', 'counted from the holes of one side alone.'],
    [takeOff.rulesUnused.length, 'hole pattern', 'of the settings without a side in this shell.'],
    [
      hardware === undefined ? takeOff.lotsAside.length : 0,
      'lot',
      'of hardware in the pile not for this list.',
    ],
  ];
  return [
    ...disputes,
    ...counted
      .filter(([n]) => n > 0)
      .map(([n, name, words]) => `${n} ${name}${n === 1 ? '' : 's'} ${words}`),
    ...(takeOff.plateBoltUnknown ? ['Hub plate bolts left out: their size is not set.'] : []),
    ...(takeOff.account.agrees
      ? []
      : ['The count of hubs and seams does not close: check the net.']),
    ...takeOff.nearTwins.map((twins) => twins.warning),
    ...(hardware === undefined ? [] : lotsAsideWords(takeOff, hardware)),
  ];
}

function lotsAsideWords({ lotsAside }: TakeOff, hardware: readonly HardwareLot[]): string[] {
  return lotsAside.map(({ lot, why }) => {
    const { count, thread, item } = hardware[lot] as HardwareLot;
    return `Not counted: ${count} ${thread ? `${thread} ` : ''}${item}: ${why}.`;
  });
}

/** Rows first, then notes where they fit below the last rows, else on sheets of their own. */
function paged(
  rows: readonly RuledRow[],
  notes: readonly string[],
  perSheet: number,
): { rows: readonly RuledRow[]; notes: readonly string[] }[] {
  const pages: { rows: readonly RuledRow[]; notes: readonly string[] }[] = [];
  for (let i = 0; i === 0 || i < rows.length; i += perSheet)
    pages.push({ rows: rows.slice(i, i + perSheet), notes: [] });
  const last = pages.at(-1) as { rows: readonly RuledRow[]; notes: readonly string[] };
  const free = Math.floor(((perSheet - last.rows.length - 1) * rowStep) / noteStep);
  const first = notes.slice(0, Math.max(0, free));
  pages[pages.length - 1] = { rows: last.rows, notes: first };
  const perNotesSheet = Math.floor((perSheet * rowStep) / noteStep);
  for (let i = first.length; i < notes.length; i += perNotesSheet)
    pages.push({ rows: [], notes: notes.slice(i, i + perNotesSheet) });
  return pages;
}
