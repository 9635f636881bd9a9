// The stake-out on paper: first the plan with what an instrument reads, then the two tapes, stake by
// stake, with the distances to check before anything is bolted.

import type { Base } from '../ground/base.ts';
import { polarPlan } from '../ground/polar.ts';
import type { Peg, TapePlan, TapeRound } from '../ground/tape-plan.ts';
import { writeAngle } from '../measure/units.ts';
import { type Drawing, group, type Item, line, text } from './drawing.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import {
  baseItems,
  type GroundPlacing,
  groundSheets,
  hubNumbers,
  plainRow,
  stakeMark,
} from './ground-plan.ts';
import { type LengthsShown, largeFirst, lengthFirst } from './length-text.ts';
import { footBlock, frameItems, headingItems, type Page, type Paper, pageOf } from './page.ts';
import { type RuledColumn, type RuledRow, ruledTable } from './ruled-table.ts';
import { wrapText } from './text-width.ts';

/** Options of `stakeOutSheets`. */
export interface StakeOutSheetOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
}

const caution =
  'Nothing is bolted before every check measure is within what is allowed: a ring out of round does not close above. Look for cables and pipes before a stake is driven.';

const lengthsWords = (shown: LengthsShown): string =>
  shown === 'metric' ? 'metres, level' : 'feet and inches, level';

/** The stake-out of a base: the plan, then the tapes; two sheets at least. */
export function stakeOutSheets(
  base: Base,
  plan: TapePlan,
  facts: SheetFacts,
  options: StakeOutSheetOptions = {},
): Drawing[] {
  const page = pageOf(options.paper ?? 'A4', 'across');
  const shown = options.lengths ?? 'metric';
  return [...planSheets(page, base, plan, facts, shown), ...tapeSheets(page, plan, facts, shown)];
}

function planSheets(
  page: Page,
  base: Base,
  plan: TapePlan,
  facts: SheetFacts,
  shown: LengthsShown,
): Drawing[] {
  const diagonals = plan.checks.filter(({ what }) => what === 'diagonal');
  const at = (number: number) => (base.hubs[number - 1] as Base['hubs'][number]).at;
  const items = (placing: GroundPlacing): Item[] => [
    ...base.hubs.map((hub) =>
      line(placing.at([0, 0]), placing.at(hub.at), { weight: 'hair', ink: 'grey' }),
    ),
    ...diagonals.flatMap(({ from, to }) =>
      typeof from === 'number' && typeof to === 'number'
        ? [line(placing.at(at(from)), placing.at(at(to)), { weight: 'thin', dash: 'dashed' })]
        : [],
    ),
    ...baseItems(base, plan.datum, placing),
    ...base.hubs.map((hub) => stakeMark(placing.at(hub.at))),
    ...hubNumbers(base, placing, 5),
  ];
  const rows = polarPlan(base).map(({ hub, bearing, distance, rise }) => {
    const { chord } = base.hubs[hub - 1] as Base['hubs'][number];
    return plainRow([
      String(hub),
      writeAngle(bearing, 'deg', 2),
      largeFirst(distance, shown),
      largeFirst(chord, shown),
      rise < 5e-4 ? '–' : lengthFirst(rise, shown),
    ]);
  });
  const most = Math.max(...base.hubs.map((hub) => hub.radius));
  return groundSheets(page, {
    heading: 'Stake-out',
    remark: `${base.hubs.length} base hubs from above, clockwise from the datum; datum peg ${largeFirst(plan.datum, shown)} from the centre`,
    facts,
    lengths: lengthsWords(shown),
    caution: cautionOf(facts, caution),
    notes: [
      'With an instrument over the centre peg, zero on the datum: turn clockwise to the bearing, measure the radius level. The chord is hub to hub, as a panel’s side. Up: above the lowest hub.',
      `At the longest radius 1 mm is ${writeAngle(0.001 / most, 'deg', 3)}. Dashed: diagonals to check.`,
    ],
    points: [...base.hubs.map((hub) => hub.at), [plan.datum, 0]],
    plan: items,
    columns: [
      { name: 'hub', share: 0.1, align: 'start' },
      { name: 'bearing', share: 0.2, align: 'end' },
      { name: 'radius', share: 0.25, align: 'end' },
      { name: 'chord to next', share: 0.27, align: 'end' },
      { name: 'up', share: 0.18, align: 'end' },
    ],
    rows,
  });
}

const stakeColumns: readonly RuledColumn[] = [
  { name: 'stake', share: 0.14, align: 'start' },
  { name: 'tape 1', share: 0.25, align: 'end' },
  { name: 'tape 2', share: 0.25, align: 'end' },
  { name: 'stands', share: 0.18, align: 'end' },
  { name: '±', share: 0.18, align: 'end' },
];

const checkColumns: readonly RuledColumn[] = [
  { name: 'check', share: 0.32, align: 'start' },
  { name: 'should be', share: 0.3, align: 'end' },
  { name: 'may be off', share: 0.22, align: 'end' },
  { name: 'found', share: 0.16, align: 'end' },
];

const step = 4.6;
const gap = 7;
const perPage = 3;

/** One block of a column: a heading, and a table below it. */
interface Block {
  readonly heading: string;
  readonly columns: readonly RuledColumn[];
  readonly rows: readonly RuledRow[];
}

function tapeSheets(page: Page, plan: TapePlan, facts: SheetFacts, shown: LengthsShown): Drawing[] {
  const { frame } = page;
  const blockOf = (sheet: string) =>
    footBlock(page, { ...facts, sheet, scale: 'none', lengths: lengthsWords(shown) });
  const warned = cautionOf(facts, caution);
  const words = [
    ...wrapText(`Caution. ${warned}`, 2.6, frame.width - 10, true).map((line) => ({
      line,
      bold: true,
    })),
    ...wrapText(
      `Hook each tape on the middle of its peg and pull both level and equally hard; the stake stands where they cross. Left and right: of the line from the first peg to the second, seen from the first. ±: one standard deviation in the worst direction, tapes read to ${lengthFirst(plan.tapeSd, shown)} (common practice unless entered).`,
      2.6,
      frame.width - 10,
    ).map((line) => ({ line, bold: false })),
  ];
  const top = frame.y + 17 + words.length * 3.7;
  const height = blockOf(facts.sheet).top - top - 3;
  const width = (frame.width - 10 - (perPage - 1) * gap) / perPage;
  const columns = inColumns(blocksOf(plan, shown), Math.floor(height / step));
  const pages = Math.max(1, Math.ceil(columns.length / perPage));
  return Array.from({ length: pages }, (_, p) => {
    const sheet = `${facts.sheet}, tapes${pages === 1 ? '' : ` ${p + 1} of ${pages}`}`;
    return {
      width: page.width,
      height: page.height,
      title: `${facts.project}: two tapes`,
      description: `Where ${plan.rounds.reduce((n, round) => n + round.stakes.length, 0)} stakes stand, by two tapes. ${warned}`,
      items: [
        ...frameItems(page),
        ...headingItems(
          [frame.x + 5, frame.y + 7],
          'Stake-out by two tapes',
          remarkOf(plan, shown),
        ),
        group(
          words.map(({ line: row, bold }, i) =>
            text([frame.x + 5, frame.y + 17 + i * 3.7], row, 2.6, { bold }),
          ),
          { part: 'caution' },
        ),
        ...columns
          .slice(p * perPage, (p + 1) * perPage)
          .flatMap((blocks, c) => columnItems(blocks, frame.x + 5 + c * (width + gap), top, width)),
        ...blockOf(sheet).items,
      ],
    };
  });
}

const remarkOf = (plan: TapePlan, shown: LengthsShown): string =>
  plan.unreached.length > 0
    ? `no two tapes reach hub ${plan.unreached.join(', ')}: a longer tape is needed`
    : `drive the centre peg, then the datum peg ${largeFirst(plan.datum, shown)} from it; ${plan.rounds.length} pairs of pegs`;

const pegName = (peg: Peg): string => (typeof peg === 'number' ? `stake ${peg}` : peg);

function blocksOf(plan: TapePlan, shown: LengthsShown): Block[] {
  const stakes = plan.rounds.map(
    (round: TapeRound): Block => ({
      heading: `tape 1 on ${pegName(round.pegs[0])}, tape 2 on ${pegName(round.pegs[1])}`,
      columns: stakeColumns,
      rows: round.stakes.map(({ hub, lengths, side, sd }) =>
        plainRow([
          String(hub),
          largeFirst(lengths[0], shown),
          largeFirst(lengths[1], shown),
          side,
          lengthFirst(sd, shown),
        ]),
      ),
    }),
  );
  const checks: Block = {
    heading: 'checks',
    columns: checkColumns,
    rows: plan.checks.map(({ from, to, length, allowed }) =>
      plainRow([`${from} – ${to}`, largeFirst(length, shown), lengthFirst(allowed, shown), '']),
    ),
  };
  return checks.rows.length > 0 ? [...stakes, checks] : stakes;
}

/** Blocks one under the other in columns of so many rows; a block may go on in the next column. */
function inColumns(blocks: readonly Block[], rows: number): Block[][] {
  const columns: Block[][] = [[]];
  let left = rows;
  for (const block of blocks)
    for (let from = 0; from < block.rows.length; ) {
      // Heading, column names, a row at least, and the room under the block.
      if (left < 4) {
        columns.push([]);
        left = rows;
      }
      const part = block.rows.slice(from, from + Math.min(left - 3, block.rows.length - from));
      const heading = from === 0 ? block.heading : `${block.heading}, further`;
      (columns.at(-1) as Block[]).push({ ...block, heading, rows: part });
      from += part.length;
      left -= part.length + 3;
    }
  return columns;
}

function columnItems(blocks: readonly Block[], x: number, y: number, width: number): Item[] {
  let at = y;
  return blocks.flatMap((block) => {
    const table = ruledTable(
      block.columns,
      block.rows,
      { x, y: at + step, width, height: 0 },
      step,
    );
    const heading = text([x, at + step / 2], block.heading, 3, { bold: true });
    at += step + table.height + step;
    return [heading, group(table.items, { part: 'tapes' })];
  });
}
