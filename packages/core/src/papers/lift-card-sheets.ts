// Lift cards on paper, read aloud before a piece leaves the ground: large type, a card to each sort of lift
// in a stage, with the heaviest, the largest and the least wind among those that share it; front what is
// lifted and in which order, back who does what and the words.

import { mergeSources } from '../loads/provenance.ts';
import { LIFT_WORDS, type LiftCard } from '../raise/lifts/card.ts';
import type { StageLifts } from '../raise/raised/lifts.ts';
import type { Drawing } from './drawing.ts';
import type { SheetFacts } from './flat-plan-sheet.ts';
import { flowSheets } from './flow.ts';
import { type FlowBlock, heading, list, words } from './flow-blocks.ts';
import { type LengthsShown, largeFirst, lengthsNote } from './length-text.ts';
import type { Paper } from './page.ts';
import { ARM_LENGTH_TYPE } from './panel-labels.ts';

/** Options of `liftCardSheets`. */
export interface LiftCardOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
}

/** Lifts of a stage that are done alike; at least one. */
interface Shared {
  readonly stage: number;
  readonly cards: readonly LiftCard[];
}

/** Cards of all lifts that want one, and a sheet of those that nothing lifts; none where there are
 * neither. */
export function liftCardSheets(
  stages: readonly StageLifts[],
  facts: SheetFacts,
  options: LiftCardOptions = {},
): Drawing[] {
  const shown = options.lengths ?? 'metric';
  const look = { ...(options.paper && { paper: options.paper }), lengths: lengthsNote(shown) };
  const none = stages.flatMap(({ lifts }) => lifts.filter(({ told }) => told.best === null));
  const all = shared(stages);
  return [
    ...all.flatMap((one) =>
      flowSheets(
        cardBlocks(one, shown),
        { ...facts, sheet: `Lift card, stage ${one.stage}` },
        { ...look, heading: titleOf(one), caution: cautionsOf(one), size: 4.2 },
      ),
    ),
    ...(none.length === 0
      ? []
      : flowSheets(
          [
            {
              block: 'table',
              columns: [
                { name: 'lift', share: 0.12, bold: true },
                { name: 'panels', share: 0.3 },
                { name: 'the least that helps', share: 0.58 },
              ],
              rows: none.map(({ stage, lift, told }) => [
                `${stage}.${lift + 1}`,
                told.piece.numbers.join(', '),
                told.leastChange,
              ]),
            },
          ],
          { ...facts, sheet: 'Lifts without a way' },
          {
            ...look,
            heading: 'Nothing that is there lifts these',
            caution: 'An estimate and no design approval: local rules and a rigger decide.',
            size: 4.2,
          },
        )),
  ];
}

/** Lifts that are done alike, by stage. */
function shared(stages: readonly StageLifts[]): Shared[] {
  const found = new Map<string, Shared>();
  for (const { stage, lifts } of stages)
    for (const { card } of lifts) {
      if (card === null) continue;
      const { by, name, people, tagLines } = card.way;
      const key = JSON.stringify([
        stage,
        card.numbers.length,
        by,
        name,
        people,
        tagLines,
        card.roles,
      ]);
      found.set(key, { stage, cards: [...(found.get(key)?.cards ?? []), card] });
    }
  return [...found.values()];
}

function titleOf({ stage, cards }: Shared): string {
  const [card] = cards as readonly [LiftCard];
  if (cards.length === 1) return `Stage ${stage}: ${card.title}`;
  const of = card.numbers.length === 1 ? 'panel' : `${card.numbers.length} panels`;
  return `Stage ${stage}: ${cards.length} lifts of one ${of} each`.replace(
    /one (\d+ panels)/,
    '$1',
  );
}

/** Every caution once; of those that differ only in their number, the one with the greatest. */
function cautionsOf({ cards }: Shared): string {
  const number = (said: string): number => Number(/\d+\.\d+/.exec(said)?.[0] ?? 0);
  const found = new Map<string, string>();
  for (const said of cards.flatMap(({ cautions }) => cautions)) {
    const key = said.replace(/\d+\.\d+/, '#');
    if (number(said) >= number(found.get(key) ?? '')) found.set(key, said);
  }
  return [...found.values()].join(' ');
}

function cardBlocks({ cards }: Shared, shown: LengthsShown): FlowBlock[] {
  const [{ way, roles, steps }] = cards as readonly [LiftCard];
  const most = cards.length > 1 ? 'up to ' : '';
  const masses = cards.flatMap(({ mass }) => (mass === null ? [] : [mass]));
  const heaviest = Math.max(...masses);
  const size = [0, 1, 2].map((i) => Math.max(...cards.map((card) => card.size[i as 0 | 1 | 2])));
  const gust = Math.min(...cards.map(({ gustLimit }) => gustLimit.value));
  const seen = [...new Set(cards.flatMap((card) => card.way.why))];
  const rows: (readonly [string, string])[] = [
    ['panels', cards.map(({ numbers }) => numbers.join(' + ')).join(', ')],
    [
      'mass',
      masses.length < cards.length
        ? 'UNKNOWN of some: weigh one of each kind first'
        : `${most}${heaviest.toFixed(heaviest < 10 ? 1 : 0)} kg`,
    ],
    ['size', `${most}${size.map((edge) => largeFirst(edge, shown)).join(' × ')}`],
    [
      'lifted by',
      `${way.by === 'hands' ? 'hands from ' : ''}${way.name}${way.people === null ? '' : `, ${way.people} at the piece`}`,
    ],
    ['nothing leaves the ground in gusts over', windWords(gust)],
    ...(way.tagLines > 0 ? [['tag lines', String(way.tagLines)] as const] : []),
    ...(seen.length > 0 ? [['see to', seen.join('; ')] as const] : []),
  ];
  return [
    {
      block: 'table',
      size: 4.4,
      columns: [
        { name: '', share: 0.3 },
        { name: '', share: 0.7, bold: true },
      ],
      rows,
    },
    heading('In this order'),
    list('number', steps, ARM_LENGTH_TYPE),
    { block: 'sheet' },
    heading('Who does what'),
    {
      block: 'table',
      size: 4.2,
      columns: [
        { name: 'part', share: 0.2, bold: true },
        { name: 'people', share: 0.12, align: 'end' },
        { name: 'does', share: 0.42 },
        { name: 'name', share: 0.26 },
      ],
      rowHeight: 10,
      grid: true,
      rows: roles.map(({ role, people, does }) => [role, String(people), does, '']),
    },
    ...wordBlocks(cards),
  ];
}

/** `10.7 m/s (38 km/h, 24 mph)`. */
export const windWords = (speed: number): string =>
  `${speed.toFixed(1)} m/s (${(speed * 3.6).toFixed(0)} km/h, ${(speed * 2.23694).toFixed(0)} mph)`;

function wordBlocks(cards: readonly LiftCard[]): FlowBlock[] {
  const flags = mergeSources(...cards.map((card) => card.flags));
  const unsure = flags.map(({ text, confirmation }) => `${text} (${confirmation})`);
  return [
    heading('Words: nobody but the caller calls, anybody calls STOP'),
    {
      block: 'table',
      size: ARM_LENGTH_TYPE,
      columns: [
        { name: 'say', share: 0.32, bold: true },
        { name: 'it means', share: 0.68 },
      ],
      rows: LIFT_WORDS.map(({ say, means }) => [say, means]),
    },
    ...(unsure.length === 0
      ? []
      : [words(`Not confirmed, or entered: ${unsure.join('; ')}.`, { quiet: true, size: 2.6 })]),
  ];
}
