// A card for every stage, in the order of work: what goes up, who, by which bolts it is held before it is
// let go, props, passes, wind, whether it may be left. Large type: it is read at arm's length.

import { holesOff, seamName } from '../../raise/holes-off.ts';
import { heldAtLift, heldWords, type PlannedProp, type RaisingStage } from '../../raise/plan.ts';
import { type Box, type Drawing, type Item, rectangle, text } from '../drawing.ts';
import type { SheetFacts } from '../flat-plan-sheet.ts';
import { flowSheets } from '../flow.ts';
import { type FlowBlock, list, words } from '../flow-blocks.ts';
import { type LengthsShown, lengthsNote } from '../length-text.ts';
import type { Paper } from '../page.ts';
import { ARM_LENGTH_TYPE } from '../panel-labels.ts';
import { movedPlan, type StagePlan, stagePlan, stagePlanItems } from '../stage-plan.ts';
import { fittingSize, wrapText } from '../text-width.ts';
import {
  bookCaution,
  type CrewBookContent,
  gustWords,
  heightWords,
  listed,
  pieceWords,
  plural,
  stageTitle,
} from './content.ts';

/** How the sheets of the book look. */
export interface BookLook {
  readonly paper: Paper;
  readonly lengths: LengthsShown;
}

/** Height of the plan with the facts beside it, and the widths of both. */
interface Figure {
  readonly height: number;
  readonly plan: number;
  readonly facts: number;
}

/** The plan as large as it may be, and where so the card would run on to a second sheet. */
const LARGE: Figure = { height: 90, plan: 101, facts: 72 };
const SMALL: Figure = { height: 66, plan: 75, facts: 98 };

/** Size of what is read with the card in the hand. */
const DETAIL = 5.2;

/** The cards; one sheet each, with a smaller plan where it must be, more where a stage has many lifts. */
export function stageCards(content: CrewBookContent, facts: SheetFacts, look: BookLook): Drawing[] {
  const { shell, numbers, leftOut, plan } = content;
  // Where the figure stands does not change from card to card: the plan is laid out about the origin.
  const laid = (size: Figure): Laid => ({
    size,
    base: stagePlan(shell, numbers, leftOut, {
      ...{ x: 0, y: 0, width: size.plan, height: size.height - 2 },
    }),
  });
  const [large, small] = [laid(LARGE), laid(SMALL)];
  return plan.stages.flatMap((stage) => {
    const first = card(content, stage, facts, look, large);
    if (first.length === 1) return first;
    const second = card(content, stage, facts, look, small);
    return second.length < first.length ? second : first;
  });
}

/** A figure with the plan laid out in it. */
interface Laid {
  readonly size: Figure;
  readonly base: StagePlan;
}

const card = (
  content: CrewBookContent,
  stage: RaisingStage,
  facts: SheetFacts,
  look: BookLook,
  laid: Laid,
): Drawing[] => {
  const { stages } = content.plan;
  const named = `Stage ${stage.number} of ${stages.length}`;
  return flowSheets(
    stageBlocks(content, stage, look, laid),
    { ...facts, sheet: named },
    {
      paper: look.paper,
      heading: `${named}: ${stageTitle(stages, stage)}`,
      lengths: lengthsNote(look.lengths),
      caution: bookCaution,
      size: ARM_LENGTH_TYPE,
    },
  );
};

function stageBlocks(
  content: CrewBookContent,
  stage: RaisingStage,
  { lengths }: BookLook,
  laid: Laid,
): FlowBlock[] {
  const { plan } = content;
  return [
    {
      block: 'figure',
      height: laid.size.height,
      draw: (box) => figure(content, stage, laid, box),
    },
    stopBlock(content, stage, lengths),
    ...liftBlocks(content, stage),
    list(
      'dash',
      [
        ...propWords(content, stage, lengths),
        ...passWords(stage),
        ...closingWords(content, stage),
        ...nightWords(content, stage, lengths),
      ],
      DETAIL,
    ),
    ...(plan.rigging !== null && heldAtLift(plan, stage.number, null).lines.length > 0
      ? [
          words(
            `Guys and chains are reckoned for gusts up to ${gustWords(plan.rigging.gust, lengths)}: in more nobody goes near.`,
            { bold: true },
          ),
        ]
      : []),
  ];
}

/** The wind at which work stops, in a frame across the card. */
function stopBlock(
  { winds }: CrewBookContent,
  { number }: RaisingStage,
  lengths: LengthsShown,
): FlowBlock {
  const own = winds.find(({ stage }) => stage === number);
  const said =
    own === undefined
      ? 'Wind to stop work at: NOT KNOWN'
      : `STOP WORK at gusts of ${gustWords(own.stopWork, lengths)}`;
  const draw = ({ x, y, width, height }: Box): Item[] => [
    rectangle({ x, y, width, height: height - 2 }, { weight: 'bold' }),
    text([x + width / 2, y + (height - 2) / 2], said, 7.4, { bold: true, anchor: 'middle' }),
  ];
  return { block: 'figure', height: 15, draw };
}

/** On the left what to see at a glance, on the right the plan. */
function figure(
  content: CrewBookContent,
  stage: RaisingStage,
  { size: room, base }: Laid,
  box: Box,
): Item[] {
  const { plan, shell } = content;
  const panels = shell.kind.length - content.leftOut.length;
  const up = stage.pieces.flat().length;
  const rows: readonly (readonly [string, boolean])[] = [
    [
      up === 0
        ? 'Nothing goes up.'
        : stage.lifts.length === up
          ? `${plural(up, 'panel')} up.`
          : `${plural(up, 'panel')} up in ${plural(stage.lifts.length, 'lift')}.`,
      true,
    ],
    [`${stage.placed.length} of ${panels} stand after it.`, false],
    [peopleWords(content, stage), false],
  ];
  const number = String(stage.number);
  const size = fittingSize(number, 30, 12, 48, true) ?? 12;
  const items: Item[] = [
    text([box.x, box.y + 14], number, size, { bold: true }),
    text([box.x + 68, box.y + 20.5], `of ${plan.stages.length}`, 5, {
      ink: 'grey',
      anchor: 'end',
    }),
  ];
  let y = box.y + 33;
  for (const [said, bold] of rows) {
    if (said === '') continue;
    for (const row of wrapText(said, ARM_LENGTH_TYPE, room.facts - 2, bold)) {
      items.push(text([box.x, y], row, ARM_LENGTH_TYPE, { bold }));
      y += ARM_LENGTH_TYPE * 1.25;
    }
    y += 2.2;
  }
  const own = movedPlan(base, [box.x + box.width - room.plan, box.y]);
  return [...items, ...stagePlanItems(own, plan, stage.number)];
}

/** Most people that one thing in the stage takes at once. */
function peopleWords({ tasks }: CrewBookContent, { number }: RaisingStage): string {
  const own = tasks.filter(({ stage }) => stage === number);
  const most = (of: (task: (typeof own)[number]) => number): number => Math.max(0, ...own.map(of));
  const people = most((task) => task.people);
  if (people === 0) return '';
  const climb = most((task) => task.climbers);
  const lead = most((task) => task.leads);
  const more = [climb > 0 ? `${climb} climb` : '', lead > 0 ? `${lead} leads` : ''];
  return `${[`${people} people at once`, ...more.filter(Boolean)].join(', ')}.`;
}

function liftBlocks({ plan, numbers }: CrewBookContent, stage: RaisingStage): FlowBlock[] {
  if (stage.lifts.length === 0) return [];
  const rows = stage.lifts.map((lift, i) => {
    const named = (at: (prop: PlannedProp) => PlannedProp['until']): string =>
      plan.props
        .flatMap((prop, p) => {
          const when = at(prop);
          return when?.stage === stage.number && when.lift === i ? [propName(prop, p)] : [];
        })
        .join(', ');
    const [goIn, goOut] = [named(({ from }) => from), named(({ until }) => until)];
    const moves = [goIn && `${goIn} in`, goOut && `${goOut} may go`];
    return [
      String(i + 1),
      `${pieceWords(lift.places, numbers)}${lift.made === 'panel' ? '' : made[lift.made].mark}`,
      boltWords(lift.boltsBeforeLettingGo),
      moves.filter(Boolean).join('; '),
    ];
  });
  const marks = (['made up', 'group', 'cap'] as const).flatMap((how) =>
    stage.lifts.some((lift) => lift.made === how) ? [made[how].means] : [],
  );
  const moves = rows.some((row) => row[3] !== '');
  const shares = moves ? [0.06, 0.32, 0.35, 0.27] : [0.06, 0.56, 0.38, 0];
  const names = ['', 'panels in order', 'bolts, then let go', 'props'];
  const columns = names.flatMap((name, i) =>
    (shares[i] as number) === 0 ? [] : [{ name, share: shares[i] as number, bold: i < 2 }],
  );
  return [
    { block: 'table', columns, rows: moves ? rows : rows.map((row) => row.slice(0, 3)) },
    ...(marks.length === 0 ? [] : [words(`${marks.join('; ')}.`, { size: 4.2 })]),
  ];
}

/** What a mark behind a piece means. */
const made = {
  'made up': { mark: ' *', means: '* made up on the ground first' },
  group: { mark: ' †', means: '† still joined from the pile' },
  cap: { mark: ' ‡', means: '‡ made up on the ground, lifted whole' },
} as const;

/** Bolts wanted in the seams before a piece is let go. */
export function boltWords(bolts: readonly (number | null)[]): string {
  const known = bolts.filter((one) => one !== null);
  if (bolts.length === 0) return 'on the ground';
  const [least, most] = [Math.min(...known), Math.max(...known)];
  const each =
    known.length < bolts.length ? '2 or more' : least === most ? `${least}` : `${least} to ${most}`;
  return bolts.length === 1 ? `${each} in the seam` : `${each} each, ${bolts.length} seams`;
}

function propWords(
  { plan, shell, numbers }: CrewBookContent,
  { number, placed }: RaisingStage,
  lengths: LengthsShown,
): string[] {
  const standing = new Set(placed);
  return plan.props.flatMap((prop, i): string[] => {
    const { from, until, hub, height, lines } = prop;
    if (from.stage > number || (until !== null && until.stage < number)) return [];
    const around = [...shell.sideHub.keys()]
      .filter((side) => shell.sideHub[side] === hub)
      .map((side) => shell.sidePlace[side] as number)
      .filter((place) => standing.has(place))
      .map((place) => numbers[place] ?? '')
      .sort();
    const where = around.length > 1 ? `where ${listed(around)} meet` : `at ${around.join('')}`;
    // What comes or goes in this stage stands beside its lift.
    const goes =
      until?.stage === number
        ? ''
        : until === null
          ? '; stays'
          : `; stays until stage ${until.stage}, lift ${until.lift + 1}`;
    const what = lines.length === 0 ? '' : `, ${heldWords({ props: 0, lines })}`;
    return [`${propName(prop, i)} ${where}, ${heightWords(height, lengths)} up${what}${goes}.`];
  });
}

/** What to slacken where the piece that closes a course will not go in; the rest is among the cautions. */
function closingWords(content: CrewBookContent, { number, lifts }: RaisingStage): string[] {
  const lift = lifts.findIndex(({ closes }) => closes);
  if (lift < 0) return [];
  const { slacken } = holesOff(content, number, lift);
  if (slacken.length === 0) return [];
  const named = slacken.slice(0, 4).map((seam) => seamName(content.shell, content.numbers, seam));
  return [`If the last piece will not go in: drift, then slacken ${listed(named)}. No force.`];
}

const propName = ({ lines }: PlannedProp, i: number): string =>
  `${lines.length === 0 ? 'P' : 'G'}${i + 1}`;

const passes = {
  finger: 'finger-tight',
  snug: 'snug, from the rim inward',
  final: 'to the final pass',
} as const;

function passWords({ pass }: RaisingStage): string[] {
  const said = (['finger', 'snug', 'final'] as const).flatMap((one) =>
    pass[one].length === 0 ? [] : [`${plural(pass[one].length, 'seam')} ${passes[one]}`],
  );
  return said.length === 0 ? [] : [`${said.join('; ')}.`];
}

const night = {
  stands: 'Overnight: stands without props.',
  holds: 'Overnight: may stay, closed down.',
  'gives way': 'NOT to be left overnight.',
  unknown: 'Not known whether it may stay overnight.',
  no: 'NOT to be left overnight: it stands by props.',
} as const;

function nightWords(
  { winds }: CrewBookContent,
  { number, overnight, stopPoint }: RaisingStage,
  lengths: LengthsShown,
): string[] {
  const own = winds.find(({ stage }) => stage === number);
  const leave = overnight.leave ?? own?.leave ?? null;
  return [
    ...(leave === null
      ? [night[overnight.verdict]]
      : [
          `${night[overnight.verdict]} ${stopPoint ? 'Not for a night with gusts of' : 'Everybody leaves it and its fall range at'} ${gustWords(leave, lengths)}${stopPoint ? ' or more' : ''}.`,
        ]),
    ...(own !== undefined && own.unknown.length > 0
      ? [`Not known, may give way sooner: ${own.unknown.join(', ')}.`]
      : []),
  ];
}
