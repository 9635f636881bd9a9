// The first sheets of the crew book: what is read aloud in two minutes before the first piece is lifted,
// who does what, and what to beware of. Common practice; the lifting words are those of the lift cards.

import type { Kind } from '../../pile/kind.ts';
import { type HolesOff, holesOff } from '../../raise/holes-off.ts';
import { LIFT_WORDS } from '../../raise/lifts/card.ts';
import { WINDS_LEAVE_OUT } from '../../raise/winds.ts';
import { type Box, type Drawing, type Item, type Point, polygon, text } from '../drawing.ts';
import type { SheetFacts } from '../flat-plan-sheet.ts';
import { flowSheets } from '../flow.ts';
import { type FlowBlock, heading, list, words } from '../flow-blocks.ts';
import { kindFills } from '../hatch.ts';
import { handTest } from '../kind-words.ts';
import { lengthsNote } from '../length-text.ts';
import { ARM_LENGTH_TYPE } from '../panel-labels.ts';
import { panelShape, standingSide } from '../panel-shape.ts';
import { bookCaution, type CrewBookContent, listed, plural } from './content.ts';
import type { BookLook } from './stage-cards.ts';

const practice = 'Common practice, no source: your own site’s rules go before it.';

/** The briefing: about 250 words, two minutes read aloud. */
export function briefingSheets(
  content: CrewBookContent,
  facts: SheetFacts,
  look: BookLook,
): Drawing[] {
  const { plan, kinds, shell, leftOut } = content;
  const panels = shell.kind.length - leftOut.length;
  const paired = pairOf(kinds);
  const blocks: FlowBlock[] = [
    words('STOP: anybody says it, everybody stops at once. Nobody asks why until it is quiet.', {
      bold: true,
    }),
    list('number', [
      `${panels} panels go up in ${plural(plan.stages.length, 'stage')}. Each stage stands before the next begins: nobody runs ahead.`,
      'One calls, the others do. The caller lifts nothing.',
      'Nobody stands or walks below a piece, nor where it would fall.',
      'Fingers out of holes and seams: the drift goes in first.',
      'LET GO only after BOLTS IN. A prop goes only when its card says so.',
      'Every bolt finger-tight until the card says snug. Tight too early, and the last panel will not go in.',
      'The look-out watches the gusts. Over the limit on the card: piece down, everybody off and away.',
      'Helmet, gloves, shoes. No rings. Drink. Who climbs is clipped on.',
      'Hurt, tired or unsure: say it. The last page says where we are and whom to call.',
    ]),
    heading('The words of a lift'),
    {
      block: 'table',
      columns: [
        { name: '', share: 0.27, bold: true },
        { name: '', share: 0.73 },
      ],
      rows: LIFT_WORDS.map(({ say, means }) => [say, means]),
    },
    heading('Left or right?'),
    ...handBlocks(kinds, paired),
  ];
  return flowSheets(
    blocks,
    { ...facts, sheet: 'Briefing' },
    {
      paper: look.paper,
      heading: 'Briefing: read this aloud before the first lift, two minutes',
      lengths: lengthsNote(look.lengths),
      caution: `${bookCaution} ${practice}`,
      size: ARM_LENGTH_TYPE,
    },
  );
}

/** Indices of the first kinds that are each other's mirror image, left first; null where there are none. */
function pairOf(kinds: readonly Kind[]): readonly [number, number] | null {
  for (const [k, { id, hand }] of kinds.entries()) {
    if (hand !== 'L') continue;
    const mate = kinds.findIndex((one) => one.hand === 'R' && one.id === id.replace(/L$/, 'R'));
    if (mate >= 0) return [k, mate];
  }
  return null;
}

function handBlocks(kinds: readonly Kind[], pair: readonly [number, number] | null): FlowBlock[] {
  if (pair === null)
    return [
      words(
        'No kind here has a hand: left and right are the same. Outside is outside all the same.',
      ),
    ];
  const tests = pair.map((k) => handTest(kinds[k] as Kind) ?? '');
  const names = kinds.filter(({ hand }) => hand !== null).map(({ id }) => id);
  return [
    words(
      `${listed(names)} are left- and right-handed: alike to the tape, and they do not fit in each other’s place. Before a panel leaves the stack:`,
    ),
    {
      block: 'figure',
      height: 52,
      draw: (box) => pairItems(kinds, pair, box),
    },
    ...(isSide(tests[0]) && isSide(tests[1])
      ? [
          words(
            `Stand it on its longest side, outside towards you. Shortest side on the ${sideOf(tests[0])}: ${kinds[pair[0]]?.id}. On the ${sideOf(tests[1])}: ${kinds[pair[1]]?.id}.`,
          ),
        ]
      : pair.map((k, i) => words(`${kinds[k]?.id}: ${tests[i]}`))),
  ];
}

/** Whether a test ends with the side on which the shortest side lies. */
const isSide = (test = ''): boolean => /the shortest side is on the (left|right)\.$/.test(test);
const sideOf = (test = ''): string => (test.endsWith('left.') ? 'left' : 'right');

/** The pair side by side as they stand on their longest side, outside towards the reader. */
function pairItems(kinds: readonly Kind[], pair: readonly [number, number], box: Box): Item[] {
  const fills = kindFills(kinds);
  return pair.flatMap((k, i): Item[] => {
    const kind = kinds[k] as Kind;
    const shape = panelShape(kind.sides, standingSide(kind));
    if (shape === null) return [];
    const [xs, ys] = [shape.corners.map((p) => p[0]), shape.corners.map((p) => p[1])];
    const [left, right] = [Math.min(...xs), Math.max(...xs)];
    const [low, high] = [Math.min(...ys), Math.max(...ys)];
    const room = { width: box.width / 2 - 16, height: box.height - 4 };
    const k1 = Math.min(room.width / (right - left), room.height / (high - low));
    const middle = box.x + box.width * (0.25 + 0.5 * i);
    const at = ([x, y]: Point): Point => [
      middle + (x - (left + right) / 2) * k1,
      box.y + 2 + (high - y) * k1,
    ];
    const outline = shape.corners.map(([x, y]): Point => at([x, y]));
    const centre: Point = [
      outline.reduce((sum, [x]) => sum + x, 0) / outline.length,
      outline.reduce((sum, [, y]) => sum + y, 0) / outline.length,
    ];
    return [
      polygon(outline, { weight: 'bold' }, fills[k] ?? null),
      text(centre, kind.id, 11, { bold: true, anchor: 'middle', halo: 1 }),
    ];
  });
}

/** Who does what, with room for names; those that the file names stand below. */
export function roleSheets(content: CrewBookContent, facts: SheetFacts, look: BookLook): Drawing[] {
  const { people } = content.crew;
  const named = (of: (one: (typeof people)[number]) => boolean): string =>
    people
      .filter(of)
      .map(({ name }) => name)
      .join(', ');
  const [leads, climbs, sure] = [
    named(({ leads }) => leads),
    named(({ climbs }) => climbs),
    named((one) => one.sure),
  ];
  return flowSheets(
    [
      {
        block: 'table',
        grid: true,
        rowHeight: 18.4,
        columns: [
          { name: 'role', share: 0.22, bold: true },
          { name: 'does', share: 0.48 },
          { name: 'who', share: 0.3 },
        ],
        rows: roles.map(([role, does]) => [role, does, '']),
      },
      ...(leads ? [words(`Lead lifts: ${leads}.`)] : []),
      ...(climbs ? [words(`Climb: ${climbs}.`)] : []),
      ...(sure ? [words(`Come for certain: ${sure}.`)] : []),
    ],
    { ...facts, sheet: 'Roles' },
    {
      paper: look.paper,
      heading: 'Roles: write the names in, on the day',
      remark: 'One person may have two, but the caller and the look-out have one each.',
      lengths: lengthsNote(look.lengths),
      caution: practice,
      size: 4.6,
    },
  );
}

const roles: readonly (readonly [string, string])[] = [
  ['lead', 'opens and closes each stage with its card; says go and no-go; lifts nothing'],
  ['caller', 'says every word of a lift, sees everybody'],
  ['lifters', 'lift and hold until LET GO'],
  ['bolters', 'one inside, one outside: drift, bolt, say BOLTS IN'],
  ['props', 'sets, wedges and ties them; takes one away only by its card'],
  ['look-out', 'gusts and sky; keeps everybody out of the fall range'],
  ['bags', 'the right bag to the right stage; counts bolts back'],
  ['stacks', 'finds the panel, checks place, kind and hand, carries it'],
  ['record', 'ticks each panel and seam, writes down what is missing'],
  ['first aid', 'box, water, shade; knows the last page of this book'],
];

/** What to beware of: the plan's own assumptions among it. */
export function cautionSheets(
  content: CrewBookContent,
  facts: SheetFacts,
  look: BookLook,
): Drawing[] {
  const { plan } = content;
  const holes = holesBlocks(content);
  const flags = [...plan.flags, ...holes.flags];
  return flowSheets(
    [
      list('dash', [
        'Wind takes a half-built shell more often than anything else. The limit of each stage is on its card; gusts count, not the mean.',
        'A stage that stands by props falls without them: nobody moves a prop, nobody ties anything to one.',
        'Tie each base hub to its anchor before the next course begins.',
        'If the last panel of a course will not go in: slacken, look at the base ring, never force.',
        'Nobody on the shell, nobody under a course that is not closed.',
        'Ladders stand on firm ground and are held. Power lines: keep the shell’s height and a ladder’s length away.',
        WINDS_LEAVE_OUT,
      ]),
      ...holes.blocks,
      heading('What this order assumes'),
      list('dash', plan.assumed, 3.8),
      ...(flags.length === 0
        ? []
        : [
            heading('Not confirmed'),
            list(
              'dash',
              flags.map(({ confirmation, text: said }) => `${confirmation}: ${said}`),
              3.8,
            ),
          ]),
    ],
    { ...facts, sheet: 'Cautions' },
    {
      paper: look.paper,
      heading: 'Cautions',
      lengths: lengthsNote(look.lengths),
      caution: `${bookCaution} ${practice}`,
      size: 4.8,
    },
  );
}

/** What to do when holes will not meet; which seams may be slackened stands on the card of each stage that
 * closes a course. */
function holesBlocks(content: CrewBookContent): Pick<HolesOff, 'flags'> & {
  readonly blocks: readonly FlowBlock[];
} {
  const stage = content.plan.stages.find(({ lifts }) =>
    lifts.some(({ seams }) => seams.length > 0),
  );
  const lift = stage?.lifts.findIndex(({ seams }) => seams.length > 0) ?? 0;
  if (stage === undefined) return { blocks: [], flags: [] };
  const { steps, flags } = holesOff(content, stage.number, lift);
  const [drift, , ream, stop] = steps;
  const slacken =
    'Slacken to finger-tight what is snug round the piece, the nearest first; where a course closes its card names the seams. What had its final pass, and what holds a prop or a load, stays.';
  return {
    blocks: [heading('When holes will not meet'), list('number', [drift, slacken, ream, stop])],
    flags,
  };
}
