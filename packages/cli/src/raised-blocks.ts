// The yard, lift cards, way in and way out, bags and kit, and what may wait, as tables and sentences.

import {
  type BuyBefore,
  type KitAnswer,
  type LeftAnswer,
  type LiftCard,
  type LiftTold,
  needWords,
  RAISED_CAUTION,
  type StageLifts,
  type WayAnswer,
  type YardAnswer,
} from '@shellraise/core';
import { flagBlock } from './ground-loads.ts';
import { bullets, caution, count, heading, paint, right, table, wrap } from './terminal.ts';

const metres = (x: number): string => `${x.toFixed(1)} m`;
const speed = (gust: number): string => `${gust.toFixed(1)} m/s`;
const degrees = (radians: number): string => `${Math.round((radians * 180) / Math.PI) % 360}°`;
const kilograms = (mass: number | null): string =>
  mass === null ? 'unknown' : `${mass.toFixed(0)} kg`;
const numbersOf = (list: readonly string[], most = 10): string =>
  list.length <= most
    ? list.join(', ')
    : `${list.slice(0, most).join(', ')} and ${list.length - most} more`;

/** Where the stacks lie. */
export function yardBlocks(yard: YardAnswer): string[] {
  return [
    heading('Yard'),
    caution(RAISED_CAUTION),
    wrap(
      `${count(yard.stacks.length, 'stack')}, kept down for gusts of ${speed(yard.gust)}; the longest walk with a panel is ${metres(yard.longest)}, all walks together ${metres(yard.walk)}; the yard reaches ${metres(yard.reach)} from the middle.`,
      '',
    ),
    table(
      [
        right('stack'),
        right('stage'),
        right('panels'),
        { head: 'from the top' },
        right('mass'),
        right('from middle'),
        right('clockwise of datum'),
        right('kg on top'),
        right('if strapped'),
        right('top flies at'),
      ],
      yard.stacks.map((stack) => [
        String(stack.number),
        String(stack.stage),
        String(stack.panels),
        wrap(stack.pieces.map(({ numbers }) => numbers.join('+')).join(', '), '', 30),
        kilograms(stack.unweighed.length > 0 ? null : stack.mass),
        metres(stack.out),
        degrees(stack.azimuth),
        String(fives(stack.wind.loose)),
        String(fives(stack.wind.strapped)),
        stack.wind.flies === null ? 'unknown' : speed(stack.wind.flies),
      ]),
    ),
    bullets('Assumed:', yard.assumed.slice(0, -1)),
    flagBlock('Not confirmed:', yard.flags),
  ];
}

/** Kilograms rounded up to five. */
const fives = (mass: number): number => 5 * Math.ceil(mass / 5);

/** How every piece is lifted, with the cards of one stage where one is asked for. */
export function liftBlocks(stages: readonly StageLifts[], isOne: boolean): string[] {
  const all = stages.flatMap(({ lifts }) => lifts);
  const cards = all.filter(({ card }) => card !== null);
  const none = all.filter(({ told }) => told.best === null);
  return [
    heading('Lifts'),
    caution(RAISED_CAUTION),
    table(
      [
        right('lift'),
        { head: 'panels' },
        right('mass'),
        right('size'),
        right('highest'),
        { head: 'by' },
        right('people'),
        right('index'),
        right('stops at'),
        { head: 'card' },
      ],
      all.map(liftRow),
    ),
    bullets(
      paint.red('Nothing that is there lifts these, and the least that helps:'),
      none.map(
        ({ stage, lift, told }) =>
          `${stage}.${lift + 1}, ${numbersOf(told.piece.numbers)}: ${told.leastChange}`,
      ),
    ),
    bullets(
      'What hands reach is short:',
      stages.flatMap(({ stage, heights }) => heights.short.map((one) => `stage ${stage}: ${one}`)),
    ),
    ...(isOne
      ? cards.flatMap(({ stage, lift, card }) =>
          card === null ? [] : cardBlocks(card, `${stage}.${lift + 1}`),
        )
      : [
          cards.length === 0
            ? ''
            : wrap(
                `${count(cards.length, 'lift')} ${cards.length === 1 ? 'has' : 'have'} a card: roles, words and the poll before the last metre. With --stage the cards of one stage are told.`,
                '',
              ),
        ]),
    flagBlock('Not confirmed:', uniqueFlags(all)),
  ];
}

const uniqueFlags = (all: readonly LiftTold[]) => [
  ...new Map(all.flatMap(({ told }) => told.flags.map((flag) => [flag.text, flag]))).values(),
];

function liftRow({ stage, lift, told, card }: LiftTold): string[] {
  const { piece, best } = told;
  const index = best?.index ?? null;
  return [
    `${stage}.${lift + 1}`,
    wrap(numbersOf(piece.numbers, 6), '', 24),
    kilograms(piece.unweighed.length > 0 ? null : piece.mass),
    `${piece.size[0].toFixed(1)} × ${metres(piece.size[1])}`,
    metres(piece.high),
    best === null
      ? paint.red('nothing there')
      : best.by === 'hands'
        ? `hands, ${best.name}`
        : best.name,
    best?.people == null ? '' : String(best.people),
    index === null ? '' : Number.isFinite(index) ? index.toFixed(1) : 'beyond',
    best === null ? '' : speed(best.gustLimit.value),
    card === null ? '' : 'yes',
  ];
}

function cardBlocks(card: LiftCard, number: string): string[] {
  return [
    heading(`Lift card ${number}: ${card.title}`),
    wrap(
      `${kilograms(card.mass)}; ${card.size.map((x) => x.toFixed(2)).join(' × ')} m; ${card.way.by === 'hands' ? 'by hands from' : 'by'} ${card.way.name}. Nothing leaves the ground over gusts of ${speed(card.gustLimit.value)}.`,
      '',
    ),
    table(
      [{ head: 'role' }, right('people'), { head: 'does' }],
      card.roles.map(({ role, people, does }) => [role, String(people), wrap(does, '', 60)]),
    ),
    table(
      [{ head: 'said' }, { head: 'means' }],
      card.words.map(({ say, means }) => [say, wrap(means, '', 60)]),
    ),
    card.steps.map((step, i) => wrap(`${i + 1}. ${step}`, '   ')).join('\n'),
    bullets('Cautions:', card.cautions),
  ];
}

/** Way in and way out. */
export function wayBlocks({ heights, standing, inside }: WayAnswer): string[] {
  const isTrapped = inside.things.some(({ status }) => status === 'trapped');
  return [
    heading('Way in and way out'),
    caution(RAISED_CAUTION),
    table(
      [
        right('stage'),
        right('hands to'),
        right('boards at'),
        { head: 'standing on' },
        right('hook to'),
        right('owned'),
      ],
      heights.map((one) => [
        String(one.stage),
        metres(one.hands),
        metres(one.boards),
        one.standing?.name ?? paint.red('nothing owned is high enough'),
        one.hook === null ? 'no hook' : metres(one.hook),
        one.hookOwned === null ? '' : metres(one.hookOwned),
      ]),
    ),
    bullets(
      paint.red('Too short, before anyone builds it:'),
      heights.flatMap(({ stage, short }) => short.map((one) => `stage ${stage}: ${one}`)),
    ),
    bullets(
      'Needed until:',
      standing.map(({ name, until }) =>
        until === null
          ? `${name}: no stage needs it for its height`
          : `${name}: stage ${until} is the last`,
      ),
    ),
    inside.things.length === 0
      ? 'Nothing is entered that stands inside ("gear.inside" in the project file).'
      : bullets(
          isTrapped ? paint.red('Inside; something is trapped:') : 'Inside:',
          inside.things.map(({ words }) => words),
        ),
    bullets('Assumed:', inside.things.length === 0 ? [] : inside.assumed),
    flagBlock('Not confirmed:', inside.things.length === 0 ? [] : inside.flags),
  ];
}

/** Bags and kit, of one stage where one is asked for. */
export function kitBlocks(kit: KitAnswer, stage: number | undefined): string[] {
  const { bags, buy, tools, charge, check } = kit;
  const own = bags.bags.filter((bag) => stage === undefined || bag.stage === stage);
  return [
    heading('Bags and kit'),
    wrap(
      `${count(bags.bags.length, 'bag')}, ${count(check.lines, 'line')}, ${check.left} still to go in.`,
      '',
    ),
    bullets('Nobody knows, and no bag has:', bags.unknown),
    ...own.map(({ label }) => bullets(paint.bold(label.title), label.lines)),
    own.length === 0 && stage !== undefined ? `Stage ${stage} uses nothing up: it has no bag.` : '',
    buy.length === 0
      ? 'Nothing is to be bought: all of it is in hand, with spares.'
      : bullets('To buy, what is wanted first before the rest:', buy.map(buyWords)),
    bullets(
      'Tools:',
      tools
        .filter((one) => (stage === undefined || one.stage === stage) && one.tools.length > 0)
        .map((one) => `stage ${one.stage}: ${one.tools.join('; ')}`),
    ),
    charge === null
      ? 'No power tool and no light is entered ("gear" in the project file): nothing draws charge.'
      : wrap(`Charge: ${charge.words}`, ''),
    bullets('Unknown of the charge:', charge?.unknown ?? []),
    flagBlock('Not confirmed:', kit.flags),
  ];
}

function buyWords({ line, before, short }: BuyBefore): string {
  const missing = short.reduce((sum, { quantity }) => sum + quantity, 0);
  const when =
    before === null
      ? 'only spares are short'
      : `before stage ${before} (${missing.toFixed(line.unit === 'm' ? 1 : 0)} short over the build)`;
  return `${needWords({ ...line, quantity: line.toBuy })}: ${when}`;
}

/** What may wait for the next trip. */
export function waitBlocks(answer: LeftAnswer): string[] {
  const { leave } = answer;
  return [
    heading(`What may wait after stage ${answer.stage}`),
    caution(RAISED_CAUTION),
    wrap(
      `${count(answer.days, 'day')} until the next trip, gusts of ${speed(answer.gust)} to reckon with. `,
      '',
    ).trimEnd(),
    leave === null ? paint.red(wrap(answer.words, '')) : paint.bold(wrap(answer.words, '')),
    table(
      [{ head: 'work' }, { head: 'may wait' }, right('to spare'), { head: 'why' }],
      answer.items.map(({ words, mayWait, reserve, why }) => [
        wrap(words, '', 34),
        mayWait === 'no' ? paint.red('no') : mayWait,
        reserve === null ? '' : `× ${reserve.toFixed(2)}`,
        wrap(why, '', 34),
      ]),
    ),
    ...(leave === null
      ? []
      : [
          heading(leave.card.title),
          bullets('Before you go:', leave.card.before),
          bullets('Waits:', leave.card.waits),
          bullets('When you are back:', leave.card.back),
          caution(leave.card.caution),
        ]),
    bullets('Assumed:', answer.assumed.slice(0, -1)),
    flagBlock('Not confirmed:', answer.flags),
  ];
}
