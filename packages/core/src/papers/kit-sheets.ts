// What to bring and what to buy: kit and tools by stage with boxes to tick; what to buy, by the sort of
// shop that has it, with the stage before which it must be there.

import type { BuyBefore } from '../raise/bags/buy-before.ts';
import type { BagCheck } from '../raise/bags/kit-check.ts';
import type { StageTools } from '../raise/bags/tools.ts';
import { needWords } from '../raise/bags/words.ts';
import type { KitAnswer } from '../raise/raised/kit.ts';
import type { HardwareItem } from '../takeoff/hardware.ts';
import type { Drawing } from './drawing.ts';
import type { SheetFacts } from './flat-plan-sheet.ts';
import { flowSheets } from './flow.ts';
import { type FlowBlock, heading, list, TICK, words } from './flow-blocks.ts';
import type { Paper } from './page.ts';
import { sizeWords } from './tables.ts';

/** Options of the kit's sheets. */
export interface KitSheetOptions {
  readonly paper?: Paper;
}

/** What a crew brings besides tools and hardware: common practice, no source. */
const ALWAYS: readonly string[] = [
  'gloves, helmets, eye protection and high shoes, a set for each person',
  'first-aid kit, its place told to everybody',
  'charged phone or radio, and this shell’s papers in a bag that keeps rain off',
  'anemometer, or a forecast by the hour read aloud',
  'water, food, sunscreen, rain clothes, a shelter to warm up in',
  'barrier tape and signs for the fall range',
  'fire extinguisher where anything with a motor runs',
  'tape, level, plumb line, chalk, marker that holds on the panels',
  'pens, tally sheets, labels, bags',
];

/** The kit and tool list: by stage what is needed, and the whole once, each with a box to tick. */
export function kitSheets(
  kit: Pick<KitAnswer, 'tools' | 'check' | 'charge'>,
  facts: SheetFacts,
  options: KitSheetOptions = {},
): Drawing[] {
  const blocks: FlowBlock[] = [
    heading('For every day'),
    words('Common practice, no source.', { quiet: true, size: 2.6 }),
    list('tick', ALWAYS),
    heading('Tools, the most of each that any stage asks for'),
    list('tick', mostTools(kit.tools)),
    ...(kit.charge === null ? [] : [heading('Charge'), words(kit.charge.words)]),
    heading('Tools by stage'),
    {
      block: 'table',
      columns: [
        { name: 'stage', share: 0.1, bold: true },
        { name: 'tools', share: 0.8 },
        { name: 'there', share: 0.1, align: 'end' },
      ],
      rows: kit.tools.map(({ stage, tools }) => [String(stage), tools.join('; ') || 'none', TICK]),
    },
    heading('Bags'),
    {
      block: 'table',
      columns: [
        { name: 'bag', share: 0.26, bold: true },
        { name: 'still to go in', share: 0.64 },
        { name: 'packed', share: 0.1, align: 'end' },
      ],
      rows: kit.check.bags.map((bag) => [bag.title, leftWords(bag), TICK]),
    },
  ];
  return flowSheets(blocks, facts, {
    ...options,
    heading: 'Kit and tools',
    remark: 'what has to be on site before the stage begins',
    lengths: 'bolts as sold',
    caution:
      'Sizes of wrenches and numbers of tools are estimates from common practice: try a wrench on a bolt of each size before the day.',
  });
}

const leftWords = ({ left }: BagCheck): string =>
  left.length === 0 ? 'packed' : left.map(needWords).join('; ');

/** Of each tool the greatest number that one stage asks for, in the order met: `4 wrenches 1/2 in`. */
export function mostTools(stages: readonly Pick<StageTools, 'tools'>[]): string[] {
  const most = new Map<string, { readonly count: number; readonly words: string }>();
  for (const said of stages.flatMap(({ tools }) => tools)) {
    const match = /^(\d+) (.*)$/.exec(said);
    const count = Number(match?.[1] ?? 0);
    const key = (match?.[2] ?? said).replace(/^props\b/, 'prop');
    if (count >= (most.get(key)?.count ?? -1)) most.set(key, { count, words: said });
  }
  return [...most.values()].map((one) => one.words);
}

/** The sort of shop that has an item: common practice, no source. */
const shopOf: Readonly<Record<HardwareItem, string>> = {
  bolt: 'Fastener shop',
  nut: 'Fastener shop',
  'lock nut': 'Fastener shop',
  washer: 'Fastener shop',
  plate: 'Metal workshop, or whoever cuts plates',
  tape: 'Builder’s or roofing shop',
};

/** The buy list, a list for each sort of shop; what must be there first comes first. */
export function buySheets(
  buy: readonly BuyBefore[],
  facts: SheetFacts,
  options: KitSheetOptions & { readonly unknown?: readonly string[] } = {},
): Drawing[] {
  const shops = [...new Set(buy.map(({ line }) => shopOf[line.item]))];
  const blocks: FlowBlock[] = [
    ...(buy.length === 0
      ? [words('Nothing to buy: enough of everything that was counted is in hand.')]
      : []),
    ...shops.flatMap((shop): FlowBlock[] => [
      heading(shop),
      {
        block: 'table',
        columns: [
          { name: 'got', share: 0.07 },
          { name: 'item', share: 0.32, bold: true },
          { name: 'to buy', share: 0.12, align: 'end', bold: true },
          { name: 'packs', share: 0.12, align: 'end' },
          { name: 'cost', share: 0.1, align: 'end' },
          { name: 'before stage', share: 0.12, align: 'end' },
          { name: 'paid, where', share: 0.15 },
        ],
        rowHeight: 8,
        grid: true,
        rows: buy.filter(({ line }) => shopOf[line.item] === shop).map(buyRow),
      },
    ]),
    ...((options.unknown ?? []).length === 0
      ? []
      : [heading('Not in the list: nobody knows how many'), list('tick', options.unknown ?? [])]),
    { block: 'blanks', names: ['Bought by', 'Receipts kept by'] },
  ];
  const { paper } = options;
  return flowSheets(blocks, facts, {
    ...(paper && { paper }),
    heading: 'Buy list by shop',
    remark: 'with spares, in whole packs; sorts of shops by common practice, no source',
    lengths: 'bolts as sold',
    caution:
      'Counted, not reckoned: grade and material are not chosen here. Take a bolt of each size along, and never mix near twins of inch and metric threads.',
  });
}

function buyRow({ line, before }: BuyBefore): string[] {
  const amount = Math.round(line.toBuy * 10) / 10;
  return [
    TICK,
    `${line.item} ${sizeWords(line)}`.trim(),
    line.unit === 'm' ? `${amount} m` : String(amount),
    line.packs === 0 || line.pack === 1 ? '' : `${line.packs} of ${line.pack}`,
    line.cost === null ? '?' : line.cost === 0 ? '' : line.cost.toFixed(2),
    before === null ? 'spares' : String(before),
    '',
  ];
}
