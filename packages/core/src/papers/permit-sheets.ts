// The permit and insurance pack: dimensions, elevations and plan, loads and what they assume, a method
// statement and a list of risks drafted from the raising plan, blanks where only people can answer. A
// draft for whoever decides; it is no engineer's approval and says so on every sheet.

import type { AnchorPlan } from '../ground/anchors/plan.ts';
import type { Base } from '../ground/base.ts';
import { facesOf } from '../loads/panels.ts';
import type { Provenance } from '../loads/provenance.ts';
import { norm, pointAt } from '../math/vector.ts';
import type { RaisingPlan, RaisingStage } from '../raise/plan.ts';
import type { StageWinds } from '../raise/winds.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import { hubsOf, placeAt, placeCount, type Shell, seamCount } from '../shell/shell.ts';
import type { DesignLoads } from '../stages/site.ts';
import type { Drawing } from './drawing.ts';
import { elevationItems } from './elevation.ts';
import type { SheetFacts } from './flat-plan-sheet.ts';
import { flowSheets } from './flow.ts';
import { type FlowBlock, heading, list, words } from './flow-blocks.ts';
import { baseItems, hubNumbers, placeGround } from './ground-plan.ts';
import { type LengthsShown, largeFirst, largeSecond, lengthsNote } from './length-text.ts';
import { windWords } from './lift-card-sheets.ts';
import type { Paper } from './page.ts';

/** What the pack is drafted from. */
export interface PermitQuestion {
  readonly shell: Shell;
  /** Places left out on purpose, by index. */
  readonly leftOut: readonly number[];
  readonly base: Base;
  readonly loads: DesignLoads;
  /** Null where there is none yet. */
  readonly anchors: AnchorPlan | null;
  readonly plan: Pick<RaisingPlan, 'stages' | 'assumed'>;
  readonly winds: readonly StageWinds[];
  /** Mass of the panel at a place, kg; null where unknown. */
  readonly massOf: (place: number) => number | null;
}

/** Options of `permitSheets`. */
export interface PermitOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
}

/** The line that stands on every sheet of the pack. */
export const PERMIT_CAUTION =
  'A draft made from a plan of work by a program, for people to check, complete and sign. It is no engineer’s approval and no proof of safety: figures are estimates; local codes, the authority and a licensed engineer or rigger decide.';

/** Measures of a shell as it stands, metres, square metres, kilograms. */
export interface ShellMeasures {
  readonly width: number;
  readonly height: number;
  /** Across the base ring, hub to hub, the widest; floor within it. */
  readonly base: number;
  readonly floor: number;
  readonly skin: number;
  readonly panels: number;
  /** Seams of two panels that stand. */
  readonly seams: number;
  /** Of the panels whose mass is known, and how many are not. */
  readonly mass: number;
  readonly unweighed: number;
}

/** The measures; width is the greatest across, whichever way. */
export function shellMeasures({
  shell,
  base,
  leftOut,
  massOf,
}: Pick<PermitQuestion, 'shell' | 'base' | 'leftOut' | 'massOf'>): ShellMeasures {
  const out = new Set(leftOut);
  const places = Array.from({ length: placeCount(shell) }, (_, p) => p).filter((p) => !out.has(p));
  const faces = facesOf(shell);
  const hubs = [...new Set(places.flatMap((p) => hubsOf(shell, p as PlaceId)))].map((h) =>
    pointAt(shell.hubs, h),
  );
  const across = (points: readonly (readonly [number, number, ...number[]])[]): number =>
    Math.max(0, ...points.flatMap((a) => points.map((b) => Math.hypot(a[0] - b[0], a[1] - b[1]))));
  const heights = hubs.map(([, , z]) => z);
  const ring = base.hubs.map(({ at }) => at);
  const masses = places.map(massOf);
  return {
    width: across(hubs),
    height: Math.max(...heights) - Math.min(...heights),
    base: across(ring),
    floor: Math.abs(
      ring.reduce((sum, [x, y], i) => {
        const [u, v] = ring[(i + 1) % ring.length] as readonly [number, number];
        return sum + x * v - u * y;
      }, 0) / 2,
    ),
    skin: places.reduce((sum, p) => sum + norm(pointAt(faces.area, p)), 0),
    panels: places.length,
    seams: Array.from({ length: seamCount(shell) }, (_, m) => m).filter((m) =>
      [0, 1].every((end) => !out.has(placeAt(shell, shell.seams[2 * m + end] as SideId))),
    ).length,
    mass: masses.reduce((sum: number, mass) => sum + (mass ?? 0), 0),
    unweighed: masses.filter((mass) => mass === null).length,
  };
}

/** The pack. */
export function permitSheets(
  question: PermitQuestion,
  facts: SheetFacts,
  options: PermitOptions = {},
): Drawing[] {
  const shown = options.lengths ?? 'metric';
  return flowSheets(
    [
      ...aboutBlocks(question, shown),
      { block: 'sheet' },
      ...loadBlocks(question),
      ...stageBlocks(question),
      { block: 'sheet' },
      ...methodBlocks(question),
      { block: 'sheet' },
      ...riskBlocks(question),
      { block: 'sheet' },
      ...blankBlocks,
    ],
    facts,
    {
      ...(options.paper && { paper: options.paper }),
      heading: 'Permit and insurance pack',
      remark: 'draft: dimensions, loads, method, risks, and what people have to fill in',
      lengths: lengthsNote(shown),
      scale: 'none: measures as written',
      caution: PERMIT_CAUTION,
    },
  );
}

function aboutBlocks(question: PermitQuestion, shown: LengthsShown): FlowBlock[] {
  const { shell, base, leftOut } = question;
  const of = shellMeasures(question);
  const both = (metres: number): string =>
    `${largeFirst(metres, shown)} (${largeSecond(metres, shown)})`;
  const area = (squareMetres: number): string =>
    `${squareMetres.toFixed(1)} m² (${(squareMetres / 0.3048 ** 2).toFixed(0)} sq ft)`;
  const out = new Set(leftOut);
  const turned = { ...shell, hubs: quarterTurn(shell.hubs) };
  return [
    heading('The structure'),
    words(
      'A temporary shell of flat flanged panels, bolted edge to edge, with hub plates over the points where corners meet, tied to the ground at its base ring. It is put up by volunteers by hand and comes down the same way.',
    ),
    pairs([
      ['greatest width', both(of.width)],
      ['height over the lowest base hub', both(of.height)],
      ['across the base ring', both(of.base)],
      ['radius of the sphere', both(shell.radius)],
      ['floor within the base ring', area(of.floor)],
      ['skin', area(of.skin)],
      ['panels, seams, base hubs', `${of.panels}, ${of.seams}, ${base.hubs.length}`],
      [
        'mass of the panels',
        of.unweighed === 0
          ? `${of.mass.toFixed(0)} kg`
          : of.unweighed === of.panels
            ? 'UNKNOWN: nobody weighed one'
            : `${of.mass.toFixed(0)} kg without ${of.unweighed} panels that nobody weighed`,
      ],
    ]),
    {
      block: 'figure',
      height: 74,
      draw: (box) => [
        ...elevationItems(shell, out, { ...box, width: box.width / 2 - 3 }, shown),
        ...elevationItems(
          turned,
          out,
          { ...box, x: box.x + box.width / 2 + 3, width: box.width / 2 - 3 },
          shown,
          'A quarter turn on, from the left',
        ),
      ],
    },
    heading('Plan of the base ring, datum up'),
    {
      block: 'figure',
      height: 150,
      draw: (box) => {
        // Far enough out that its name stands clear of the hubs' numbers.
        const datum = 1.3 * Math.max(...base.hubs.map(({ radius }) => radius));
        const placing = placeGround([...base.hubs.map(({ at }) => at), [datum, 0]], box);
        return [...baseItems(base, datum, placing), ...hubNumbers(base, placing, 5)];
      },
    },
  ];
}

/** Hubs turned so that what was at −y faces the viewer of an elevation. */
function quarterTurn(hubs: Float64Array): Float64Array {
  const turned = Float64Array.from(hubs);
  for (let i = 0; i < hubs.length; i += 3) {
    turned[i] = -(hubs[i + 1] as number);
    turned[i + 1] = hubs[i] as number;
  }
  return turned;
}

const pairs = (rows: readonly (readonly [string, string])[]): FlowBlock => ({
  block: 'table',
  columns: [
    { name: '', share: 0.42 },
    { name: '', share: 0.58, bold: true },
  ],
  rows,
});

const kilonewtons = (newtons: number): string =>
  `${(newtons / 1000).toFixed(2)} kN (${(newtons / 9.80665).toFixed(0)} kgf)`;

function loadBlocks({ loads, anchors }: PermitQuestion): FlowBlock[] {
  const { wind, drag, lift, weight, unweighed, snow, assumed, flags } = loads;
  return [
    heading('Loads on the whole shell'),
    pairs([
      [
        'wind',
        wind === null
          ? 'NOT ENTERED: no design wind, so no wind load and no anchors are reckoned'
          : `velocity pressure at the crown ${wind.value.toFixed(0)} Pa, by ${wind.code.toUpperCase()}`,
      ],
      ...(drag === null
        ? []
        : [
            [
              'drag, the most of all wind cases',
              `${kilonewtons(drag.force)}, ${drag.from}`,
            ] as const,
          ]),
      ...(lift === null
        ? []
        : [['lift, likewise', `${kilonewtons(lift.force)}, ${lift.from}`] as const]),
      [
        'weight',
        `${kilonewtons(weight)}${unweighed.length === 0 ? '' : `, without ${unweighed.length} panels that nobody weighed`}`,
      ],
      ...(snow.length === 0
        ? [['snow', 'not entered'] as const]
        : snow.map(({ name, force }) => ['snow', `${kilonewtons(force)}, ${name}`] as const)),
      [
        'anchors',
        anchors === null
          ? 'no anchor plan yet'
          : `${anchors.count} anchors of ${anchors.pieces} pieces, each pulled ${kilonewtons(anchors.allowed)} at most by ${anchors.practice}; ${anchors.tooNear.length === 0 ? 'spacing holds' : 'they stand TOO NEAR each other as drawn'}`,
      ],
    ]),
    heading('What the loads assume'),
    list('dash', assumed.length === 0 ? ['Nothing besides what is named above.'] : assumed),
    ...unsure([...flags, ...(anchors?.sources ?? [])]),
  ];
}

/** Sources that are not confirmed, each once. */
function unsure(flags: readonly Provenance[]): FlowBlock[] {
  const said = [
    ...new Set(
      flags
        .filter(({ confirmation }) => confirmation !== 'confirmed')
        .map(({ text, confirmation }) => `${text} (${confirmation})`),
    ),
  ];
  return said.length === 0
    ? []
    : [heading('Figures that are not confirmed'), list('dash', said, 2.9)];
}

function stageBlocks({ plan, winds }: PermitQuestion): FlowBlock[] {
  const windOf = new Map(winds.map((one) => [one.stage, one]));
  return [
    heading('Wind in which work stops, stage by stage'),
    words('Gusts of three seconds at the shell. What seams and panels bear is in none of these.', {
      quiet: true,
      keep: true,
    }),
    {
      block: 'table',
      columns: [
        { name: 'stage', share: 0.08, bold: true },
        { name: 'what', share: 0.2 },
        { name: 'panels standing', share: 0.11, align: 'end' },
        { name: 'work stops over', share: 0.34 },
        { name: 'may be left overnight', share: 0.27 },
      ],
      rows: plan.stages.map((stage) => {
        const wind = windOf.get(stage.number);
        return [
          String(stage.number),
          stageWords(stage),
          String(stage.placed.length),
          wind === undefined ? 'not known' : windWords(wind.stopWork),
          overnightWords(stage),
        ];
      }),
    },
  ];
}

/** `course 3`, `closing the course`, … */
export const stageWords = ({ sort, course }: Pick<RaisingStage, 'sort' | 'course'>): string =>
  sort === 'course'
    ? `course ${course}`
    : sort === 'closing'
      ? `closes course ${course}`
      : sort === 'base'
        ? 'base ring'
        : sort;

const overnightWords = ({ overnight: { verdict, gust } }: RaisingStage): string =>
  verdict === 'stands'
    ? 'yes, wind not asked'
    : verdict === 'holds'
      ? `closed down, up to ${gust === null ? 'the gust asked for' : `${gust.toFixed(0)} m/s`}`
      : verdict === 'no'
        ? 'no: on props that move'
        : verdict === 'unknown'
          ? 'not known: no'
          : 'no: gives way';

function methodBlocks({
  plan,
  anchors,
  base,
  shell,
  leftOut,
  massOf,
}: PermitQuestion): FlowBlock[] {
  const { stages } = plan;
  const props = Math.max(0, ...stages.map((stage) => stage.props.length));
  const heaviest = Math.max(
    0,
    ...Array.from(shell.kind, (_, p) => (leftOut.includes(p) ? 0 : (massOf(p) ?? 0))),
  );
  const highest = Math.max(0, ...stages.flatMap(({ lifts }) => lifts.map(({ height }) => height)));
  const steps = [
    'Before the day: the site is looked at for cables, pipes, slopes, trees, soft ground and who passes by; the forecast is read each evening and each morning by one named person.',
    `Marking out: ${base.hubs.length} base hubs are staked from one centre with chords and check diagonals; levels are read and shims laid.`,
    anchors === null
      ? 'Anchors: there is no anchor plan yet; nothing is raised before there is one.'
      : `Anchors: ${anchors.count} are set, some of them pulled in a test; the base ring is tied down as soon as it stands.`,
    `Raising: ${stages.length} stages in the order of the plan, ${stages.reduce((sum, { lifts }) => sum + lifts.length, 0)} lifts. ${heaviest > 0 ? `The heaviest single panel weighs ${heaviest.toFixed(0)} kg.` : 'Nobody weighed a panel yet.'} The highest place ends ${highest.toFixed(1)} m over the base ring.`,
    props === 0
      ? 'No stage needs props.'
      : `Props: as many as ${props} at once, tied at head and foot, each put in before the piece that needs it is let go, and taken out only when the plan says so.`,
    'Bolts go finger-tight, then snug course by course, then final over the whole shell; nobody drills, files or forces a hole without a word from the lead.',
    'Each lift has one caller. Nobody stands below a piece or where it would fall. Anybody may call STOP.',
    'Wind: gusts are measured at the shell. Over the limit of the stage everybody comes down, props and lines are checked, the area is cleared.',
    'Evening: work ends only at a stop point; what stands is closed down, guyed as planned, fenced and told to whoever watches.',
    'After the last pass: bolts are sampled, anchors and base ring looked at again, seams sealed, the record handed over.',
    'Taking down: the same order backwards; the shell is not self-supporting once a course is opened, and the props of the raising come back.',
  ];
  return [
    heading('Method statement, drafted from the plan'),
    list('number', steps),
    heading('What the plan assumes'),
    list('dash', plan.assumed.length === 0 ? ['Nothing besides.'] : plan.assumed),
  ];
}

function riskBlocks({ plan, loads, anchors }: PermitQuestion): FlowBlock[] {
  const onProps = plan.stages.filter(({ props }) => props.length > 0).length;
  const nights = plan.stages.filter(({ stopPoint }) => stopPoint).length;
  const risks: (readonly [string, string, string])[] = [
    [
      'wind takes the half-built shell',
      'crew, passers-by',
      `a stop-work gust for each stage, measured at the shell; ${nights} stop points for the night; ${anchors === null ? 'NO ANCHOR PLAN YET' : 'base tied down from the first stage'}`,
    ],
    [
      'part of the shell folds or falls in',
      'crew inside',
      `an order in which every stage stands by its geometry; props in ${onProps} stages; nobody inside without need, helmets`,
    ],
    [
      'a panel or tool is dropped',
      'crew, passers-by',
      'fenced fall range, a look-out, helmets, tools on lanyards',
    ],
    [
      'fall from ladder, platform or tower',
      'crew',
      'platforms before ladders, three points of contact, nobody alone, nobody on the shell',
    ],
    [
      'backs and hands hurt by lifting',
      'crew',
      'teams by weight, gloves, turns, panels stacked where they go up',
    ],
    ['fingers in holes and seams', 'crew', 'drift pins, never fingers; the caller’s words'],
    [
      'a cable or pipe is struck by a stake',
      'crew',
      'plans of services asked for, scan before driving',
    ],
    [
      'hidden damage of second-hand panels',
      'crew, users',
      'every panel looked at on both faces; doubtful ones set aside',
    ],
    ['bolts left loose', 'users', 'a record of each seam’s pass; samples with a torque wrench'],
    ['lightning', 'crew, users', 'stop at the first thunder; nobody in or at the shell'],
    ['heat, cold, tiredness', 'crew', 'breaks, water, shelter; end of work before dark'],
    [
      'fire, smoke, no second way out',
      'users',
      'openings kept free; extinguisher; materials’ fire class asked for',
    ],
    ['cars and visitors on site', 'everybody', 'one way in, fence, somebody who greets'],
    [
      'snow or ponding water after the handover',
      'users',
      loads.snow.length === 0
        ? 'snow NOT reckoned: clear it, or close the shell'
        : 'loads above; clear it before they are reached',
    ],
  ];
  return [
    heading('Risks, drafted from the plan'),
    words(
      'Blank columns are for people on this site: how bad and how likely is it then, and who sees to it?',
      { quiet: true },
    ),
    {
      block: 'table',
      grid: true,
      size: 3,
      rowHeight: 10,
      columns: [
        { name: 'what can happen', share: 0.22, bold: true },
        { name: 'to whom', share: 0.13 },
        { name: 'what is done about it', share: 0.37 },
        { name: 'what is left', share: 0.14 },
        { name: 'who sees to it', share: 0.14 },
      ],
      rows: [
        ...risks.map((row) => [...row, '', '']),
        ...Array.from({ length: 2 }, () => ['', '', '', '', '']),
      ],
    },
  ];
}

/** What only people can answer. */
const blankBlocks: readonly FlowBlock[] = [
  heading('Only people can answer'),
  {
    block: 'blanks',
    names: [
      'Organiser, address, telephone',
      'Lead on site, telephone',
      'Place of the shell, with coordinates',
      'Owner of the land, consent of (day)',
      'First and last day of work',
      'Stands from, until',
      'Use; most people inside at once',
      'Where the shell comes from, its maker and age',
      'Material of the panels and its fire class (paper at hand?)',
      'Insurer, number of the policy, sum insured',
      'Authority, number of the application',
      'Engineer or rigger who checked (name, licence, scope)',
      'Soil, and who tested the anchors (day, pulls)',
      'Services under the ground asked for at',
      'Distance to buildings, trees, lines, roads',
      'Electricity, lightning protection by',
      'Ways out, lights, extinguishers',
      'First aider; nearest emergency room',
      'Way for ambulance and fire brigade',
      'Who watches it at night and in wind',
      'Who decides to clear it, at what gust',
    ],
  },
  heading('Signed'),
  {
    block: 'blanks',
    names: [
      'Organiser: name, day, signature',
      'Lead on site: name, day, signature',
      'Checked by: name, day, signature',
    ],
  },
];
