// The storage and dismantling pack: the order of work backwards, stacks with contents, sizes and weights,
// trips of a van, bolts, what is missing, and kinds and net as codes, so that the next owner starts with
// what this one lacked. Estimates; a rigger and the driver decide.

import type { Kind } from '../pile/kind.ts';
import type { RaisingPlan } from '../raise/plan.ts';
import { placesByKind, type Shell } from '../shell/shell.ts';
import type { TakeOff } from '../takeoff/take-off.ts';
import { codeItem, codeModules } from './code-item.ts';
import { type Drawing, text } from './drawing.ts';
import type { SheetFacts } from './flat-plan-sheet.ts';
import { flowSheets } from './flow.ts';
import { type FlowBlock, heading, list, TICK, words } from './flow-blocks.ts';
import { type LengthsShown, largeFirst, lengthFirst, lengthsNote } from './length-text.ts';
import { kindsIn, loadsByHand, type PackedStack } from './packing.ts';
import type { Paper } from './page.ts';
import { LONGEST_CODE, netCode, projectCode } from './small-project.ts';
import { stageWords } from './stage-words.ts';
import { supposedVehicles } from './storage-section.ts';
import { sizeWords } from './tables.ts';
import { type Trip, tripsOf, type Vehicle } from './trips.ts';

/** What the pack is made from. */
export interface StorageQuestion {
  readonly shell: Shell;
  readonly numbers: readonly string[];
  readonly kinds: readonly Kind[];
  /** Places left out on purpose, by index: they hold no panel. */
  readonly leftOut: readonly number[];
  /** Null where there is no order of work: it is then told in general. */
  readonly plan: Pick<RaisingPlan, 'stages'> | null;
  readonly stacks: readonly PackedStack[];
  /** None named: two are supposed, and the sheet says so. */
  readonly vehicles: readonly Vehicle[];
  readonly takeOff: TakeOff;
}

/** Options of `storageSheets`. */
export interface StorageOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
}

const CAUTION =
  'An estimate and no design approval. A shell that is opened is not self-supporting any more: props and lines of the raising come back before the first bolt comes out. Local codes and a licensed engineer or rigger decide; the driver decides what a vehicle carries and how it is tied.';

/** The pack. */
export function storageSheets(
  question: StorageQuestion,
  facts: SheetFacts,
  options: StorageOptions = {},
): Drawing[] {
  const shown = options.lengths ?? 'metric';
  return flowSheets(
    [
      ...orderBlocks(question),
      { block: 'sheet' },
      ...stackBlocks(question, shown),
      ...vehicleBlocks(question, shown),
      ...boltBlocks(question),
      ...codeBlocks(question, facts.project, shown),
    ],
    facts,
    {
      ...(options.paper && { paper: options.paper }),
      heading: 'Storage and dismantling',
      remark: 'for whoever takes it down, keeps it, and puts it up next',
      lengths: lengthsNote(shown),
      caution: CAUTION,
    },
  );
}

const BEFORE: readonly string[] = [
  'Read the forecast: no wind over the limits of the stages, none on the way.',
  'Every panel bears its number, on both faces, outside arrow up. Photograph each course from outside and inside.',
  'Stick match-marks on both sides of every seam that fits badly.',
  'Bags for bolts lie ready, one a course; a box for what is bent, stripped or rusted.',
  'Everything inside is out; nobody is inside without need.',
];

function orderBlocks({ plan, numbers }: StorageQuestion): FlowBlock[] {
  if (plan === null)
    return [
      heading('Before the first bolt comes out'),
      list('tick', BEFORE),
      heading('In which order'),
      words(
        'There is no order of work in this project: take courses down from the crown, each opened at one place and closed in again by props on both sides, the base ring last. Ask a rigger.',
        { bold: true },
      ),
    ];
  const stages = [...plan.stages].reverse();
  return [
    heading('Before the first bolt comes out'),
    list('tick', BEFORE),
    heading('The order of the raising, backwards'),
    {
      block: 'table',
      columns: [
        { name: 'step', share: 0.08, bold: true },
        { name: 'stage of the raising', share: 0.2 },
        { name: 'panels, in this order', share: 0.4 },
        { name: 'props first in, then out', share: 0.22 },
        { name: 'done', share: 0.1, align: 'end' },
      ],
      rows: stages.map((stage, i) => [
        String(i + 1),
        `${stage.number}: ${stageWords(stage)}`,
        stage.pieces.length === 0
          ? 'loosen every seam from final to snug, none further'
          : [...stage.pieces]
              .reverse()
              .map((piece) => piece.map((p) => numbers[p]).join(' + '))
              .join(', '),
        `${stage.propsOut.length + stage.props.length} in place, ${stage.propsIn.length} may go after`,
        TICK,
      ]),
    },
    words(
      'Props: before a stage is taken down, everything stands propped as it did when that stage was being raised.',
      { quiet: true },
    ),
  ];
}

function stackBlocks({ stacks }: StorageQuestion, shown: LengthsShown): FlowBlock[] {
  const mass = stacks.reduce((sum, one) => sum + one.mass, 0);
  const unweighed = stacks.reduce((sum, one) => sum + one.unweighed, 0);
  const [one, four] = [loadsByHand(1), loadsByHand()].map((kg) => Math.floor(kg)) as [
    number,
    number,
  ];
  const heavy = stacks.flatMap(({ panels }) =>
    panels.flatMap((panel) =>
      panel.mass !== null && panel.mass > four
        ? [`${panel.number} (${panel.mass.toFixed(0)} kg)`]
        : [],
    ),
  );
  return [
    heading('Stacks'),
    words(
      `${stacks.length} stacks, ${mass.toFixed(0)} kg${unweighed === 0 ? '' : ` and ${unweighed} panels that nobody weighed`}. Flat on battens, outside up, a batten over each batten below, under a roof or a tied sheet with air below it; never on edge outdoors. What is taken down first lies at the bottom, so that what goes up first is on top. Sizes by common practice, no source: 60 mm a panel where nobody measured the flange.`,
    ),
    words(
      `A stack is no load for hands: take it apart, panel by panel. Off the battens into a van one person loads up to ${one} kg, four together up to ${four} kg (lifting equation of NIOSH, team shares of HSE; reach and heights by common practice, no source).${heavy.length === 0 ? '' : ` More than that weigh ${heavy.join(', ')}: a lift or a ramp.`}`,
    ),
    {
      block: 'table',
      columns: [
        { name: 'stack', share: 0.07, bold: true },
        { name: 'course', share: 0.08 },
        { name: 'panels, from the bottom up', share: 0.34 },
        { name: 'count × kind', share: 0.17 },
        { name: 'long, wide, high', share: 0.16 },
        { name: 'mass', share: 0.11, align: 'end' },
        { name: 'tagged', share: 0.07, align: 'end' },
      ],
      rows: stacks.map((stack) => [
        `S${stack.number}`,
        String(stack.course),
        stack.panels.map(({ number }) => number).join(', '),
        kindsIn(stack.panels),
        stack.size.map((edge) => largeFirst(edge, shown)).join(', '),
        massWords(stack),
        TICK,
      ]),
    },
  ];
}

const massWords = ({ mass, unweighed, panels }: PackedStack): string =>
  unweighed === 0
    ? `${mass.toFixed(0)} kg`
    : unweighed === panels.length
      ? 'unknown'
      : `over ${mass.toFixed(0)} kg`;

function vehicleBlocks({ stacks, vehicles }: StorageQuestion, shown: LengthsShown): FlowBlock[] {
  const named = vehicles.length > 0;
  return [
    heading('Trips'),
    words(
      `${named ? '' : 'The file names no vehicle (storage.vehicles): the ones below are supposed, common practice, no source. Measure yours. '}Load from the last to the first: what goes up first stands nearest the door and on top. The heaviest over the axle; what each axle and a trailer’s coupling may bear is on its plate, and the driver looks.`,
    ),
    ...(named ? vehicles : supposedVehicles).flatMap((vehicle) =>
      tripBlocks(stacks, vehicle, shown),
    ),
  ];
}

/** A row of a vehicle: spots from left to right, on each the stacks from the top down. */
const rowWords = (row: Trip['rows'][number]): string =>
  row.map((spot) => spot.map((one) => `S${one}`).join(' on ')).join(' beside ');

function tripBlocks(
  stacks: readonly PackedStack[],
  vehicle: Vehicle,
  shown: LengthsShown,
): FlowBlock[] {
  const { trips, left } = tripsOf(stacks, vehicle);
  const unweighed = stacks.some((one) => one.unweighed > 0);
  const room = [vehicle.length, vehicle.width, vehicle.height]
    .map((edge) => largeFirst(edge, shown))
    .join(' × ');
  return [
    heading(
      `${vehicle.name}: ${trips.length} ${trips.length === 1 ? 'trip' : 'trips'}, panels alone`,
    ),
    words(
      `Room ${room}, load ${vehicle.payload.toFixed(0)} kg.${unweighed ? ' Panels that nobody weighed count as weightless here: weigh one of each kind.' : ''}`,
      { keep: true },
    ),
    {
      block: 'table',
      columns: [
        { name: 'trip', share: 0.08, bold: true },
        { name: 'stacks in rows, from the door inwards', share: 0.66 },
        { name: 'mass', share: 0.16, align: 'end' },
        { name: 'gone', share: 0.1, align: 'end' },
      ],
      rows: trips.map((trip, i) => [
        String(i + 1),
        trip.rows.map(rowWords).join('; '),
        trip.mass === 0 && unweighed
          ? 'unknown'
          : `${unweighed ? 'over ' : ''}${trip.mass.toFixed(0)} kg`,
        TICK,
      ]),
    },
    ...(left.length === 0
      ? []
      : [
          list(
            'dash',
            left.map(
              ({ stack, panels, why }) =>
                `Stack S${stack} (${panels.join(', ')}) does not go in: ${why}.`,
            ),
          ),
        ]),
  ];
}

/** Kind → panels that stand. */
const panelsByKind = ({ shell, kinds, leftOut }: StorageQuestion): number[] =>
  placesByKind(shell, kinds.length, leftOut);

function boltBlocks(question: StorageQuestion): FlowBlock[] {
  const { takeOff, kinds } = question;
  const needs = panelsByKind(question);
  const missing = kinds.flatMap((kind, k) => {
    const places = needs[k] as number;
    return kind.counted && kind.good < places
      ? [`Kind ${kind.id}: ${places - kind.good} short of ${places}.`]
      : [];
  });
  const short = takeOff.lines
    .filter((one) => one.short > 0)
    .map(
      (one) =>
        `${one.item} ${sizeWords(one)}: ${Math.round(one.short * 10) / 10} ${one.unit === 'm' ? 'm ' : ''}short of ${Math.round(one.quantity * 10) / 10}.`,
    );
  return [
    heading('Bolts and what else is small'),
    {
      block: 'table',
      grid: true,
      rowHeight: 8,
      columns: [
        { name: 'item', share: 0.36, bold: true },
        { name: 'in the shell', share: 0.14, align: 'end' },
        { name: 'good, counted', share: 0.17 },
        { name: 'to throw away', share: 0.17 },
        { name: 'box', share: 0.16 },
      ],
      rows: takeOff.lines.map((one) => [
        `${one.item} ${sizeWords(one)}`.trim(),
        one.unit === 'm' ? `${one.quantity.toFixed(1)} m` : String(Math.round(one.quantity)),
        '',
        '',
        '',
      ]),
    },
    heading('Missing, as known before taking down'),
    list(
      'dash',
      [...missing, ...short].length === 0
        ? ['Nothing of what was counted.']
        : [...missing, ...short],
    ),
    {
      block: 'blanks',
      names: ['Broken or lost on the way', 'Kept at', 'Key with', 'Next look at it (day)'],
    },
  ];
}

function codeBlocks(question: StorageQuestion, title: string, shown: LengthsShown): FlowBlock[] {
  const { shell, numbers, kinds } = question;
  const standing = panelsByKind(question);
  return [
    heading('For the next owner'),
    list('tick', [
      'The project file is on a stick in this bag, and a copy is with',
      'These sheets lie in the same bag as the labels that are left over.',
      'Photographs of each course are on the stick too.',
    ]),
    {
      block: 'table',
      columns: [
        { name: 'kind', share: 0.12, bold: true },
        { name: 'sides from the dot, hub to hub', share: 0.5 },
        { name: 'standing', share: 0.12, align: 'end' },
        { name: 'good', share: 0.12, align: 'end' },
        { name: 'mass', share: 0.14, align: 'end' },
      ],
      rows: kinds.map((kind, k) => [
        kind.id,
        kind.sides.map((side) => lengthFirst(side, shown)).join(', '),
        String(standing[k]),
        kind.counted ? String(kind.good) : '?',
        kind.mass === null ? '?' : `${kind.mass.toFixed(1)} kg`,
      ]),
    },
    ...codeBlock(
      'The kinds, as a project file',
      projectCode(title, kinds),
      'Read it with any phone or scanner, keep the text as a file, and open that file.',
    ),
    ...codeBlock(
      'The net: numbers, kinds, turns and hubs of all places',
      netCode(shell, numbers, kinds),
      'For a program: deflated JSON in the characters of RFC 9285.',
    ),
  ];
}

/** A code with what it holds; or why there is none. */
function codeBlock(name: string, said: string, how: string): FlowBlock[] {
  const modules = said.length <= LONGEST_CODE ? codeModules(said, 'least') : null;
  // A module of half a millimetre reads off paper; larger codes than 110 mm fill the sheet.
  const side = modules === null ? 0 : Math.min(110, Math.max(40, (modules.size + 8) * 0.62));
  if (modules === null)
    return [
      heading(name),
      words(
        `Too big for a code: ${said.length} characters, at most ${LONGEST_CODE} go into one. The file on the stick has it.`,
      ),
    ];
  return [
    heading(name),
    words(`${how} ${said.length} characters of at most ${LONGEST_CODE}.`, {
      quiet: true,
      keep: true,
    }),
    {
      block: 'figure',
      height: side + 4,
      draw: (box) => {
        const item = codeItem(modules, { x: box.x, y: box.y, width: side, height: side });
        return item === null
          ? [
              text(
                [box.x, box.y + 4],
                'Too fine for this paper: the file on the stick has it.',
                3.3,
              ),
            ]
          : [item];
      },
    },
  ];
}
