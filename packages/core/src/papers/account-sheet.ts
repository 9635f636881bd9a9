// The proof of count on one page: what was counted by a formula, the list that was added up, and
// whether they agree. Millimetres on paper.

import type { ProofRow } from '../takeoff/count-proof.ts';
import { type Drawing, group, type Item, text } from './drawing.ts';
import type { SheetFacts } from './flat-plan-sheet.ts';
import { footBlock, frameItems, headingItems, type Paper, pageOf } from './page.ts';
import { type RuledColumn, type RuledRow, ruledTable } from './ruled-table.ts';
import { wrapText } from './text-width.ts';

/** Options of `accountSheet`. */
export interface AccountSheetOptions {
  readonly paper?: Paper;
}

const widest = 6.2;
const noteSize = 3;
const noteStep = 4.4;

/** What anybody needs to know to check it. */
const howTo =
  'Check it with a pencil: add up each list, work out each formula, and compare. A bolt goes through the holes of two panels. A count of pieces only: it says nothing of what the shell bears.';

/** The page; its lists are set smaller where there is much to list. */
export function accountSheet(
  rows: readonly ProofRow[],
  facts: SheetFacts,
  options: AccountSheetOptions = {},
): Drawing {
  const page = pageOf(options.paper ?? 'A4', 'upright');
  const { frame } = page;
  const block = footBlock(page, { ...facts, scale: 'none', lengths: 'millimetres, hub to hub' });
  const width = frame.width - 10;
  const notes = [
    howTo,
    ...rows.flatMap(({ what, why }) => (why ? [`${what}: ${why}.`] : [])),
    facts.caution ?? '',
  ]
    .filter((words) => words !== '')
    .flatMap((words) => wrapText(words, noteSize, width));
  const head = frame.y + 16 + notes.length * noteStep + 3;
  const lines = rows.flatMap((row) => linesOf(row, width));
  const step = Math.min(widest, (block.top - head - 4) / (lines.length + 1));
  const table = ruledTable(
    columns,
    lines,
    { x: frame.x + 5, y: head, width, height: block.top - head },
    step,
  );
  return {
    width: page.width,
    height: page.height,
    title: `${facts.project}: ${facts.sheet}`,
    description: rows.map((row) => `${row.what}: ${verdict(row)}`).join('; '),
    items: [
      ...frameItems(page),
      ...headingItems([frame.x + 5, frame.y + 7], 'Proof of count', summary(rows)),
      group(
        notes.map(
          (words, n): Item => text([frame.x + 5, frame.y + 18 + n * noteStep], words, noteSize),
        ),
        { part: 'notes' },
      ),
      group(table.items, { part: 'count-proof' }),
      ...block.items,
    ],
  };
}

const columns: readonly RuledColumn[] = [
  { name: '', share: 0.14, align: 'start' },
  { name: 'list', share: 0.26, align: 'start' },
  { name: 'count', share: 0.12, align: 'end' },
  { name: 'by formula', share: 0.48, align: 'end' },
];

/** The list, then its sum beside the formula's; a long formula starts in the rows above. */
function linesOf(row: ProofRow, width: number): RuledRow[] {
  const formula = row.byFormula === null ? 'not known' : `${row.formula} = ${row.byFormula}`;
  const room = width * (columns[3]?.share ?? 0) - 2;
  const words = wrapText(formula, formulaSize, room, true);
  const blank = Array.from({ length: Math.max(0, words.length - 1 - row.list.length) }, () => '');
  const above = [...blank.map(() => null), ...row.list];
  const list = above.map((item, i): RuledRow => {
    const name = i === 0 ? row.what : '';
    const part = words[words.length - 1 - above.length + i] ?? '';
    return {
      ...plain,
      cells: [name, item?.of ?? '', item === null ? '' : String(item.count), part],
      bold: [true, false, false, true],
    };
  });
  const sum: RuledRow = {
    ...plain,
    cells: [
      above.length === 0 ? row.what : '',
      verdict(row),
      String(row.byList),
      words.at(-1) ?? '',
    ],
    bold: [true, true, true, true],
    accent: row.agrees === false,
  };
  return [...list, sum];
}

/** Size of the type that formulas are broken at, millimetres: that of the widest rows. */
const formulaSize = 3.2;

const plain = { accent: false, bold: [true, false, false, false], swatch: null } as const;

const verdict = ({ agrees }: ProofRow): string =>
  agrees === null ? 'in all' : agrees ? 'in all: agrees' : 'in all: DOES NOT AGREE';

function summary(rows: readonly ProofRow[]): string {
  const words = rows.map(({ what, byList }) => `${byList} ${what}`).join(', ');
  return `${words}${rows.every(({ agrees }) => agrees === true) ? '; all agree' : ''}`;
}
