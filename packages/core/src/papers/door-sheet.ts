// A door on the flat plan: the panels that come out, in their order; the hubs that are propped before; what
// is framed as header, jambs and sill; and where the wind comes from.

import { DOOR_SOURCES, type DoorAdvice } from '../fitout/door.ts';
import type { DoorFrame } from '../fitout/door-frame.ts';
import type { Shell } from '../shell/shell.ts';
import {
  circle,
  type Drawing,
  type Item,
  line,
  type Point,
  polygon,
  type Stroke,
  text,
} from './drawing.ts';
import {
  datumItems,
  type FitoutSheetOptions,
  laidPlan,
  placeItems,
  placeWords,
  run,
} from './fitout-plan.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import { type GroundPlacing, groundSheets, plainRow, sourceNotes } from './ground-plan.ts';
import { largeFirst, lengthsNote } from './length-text.ts';
import { pageOf } from './page.ts';

const caution =
  'Panels carry: what is cut out is missing until the frame bears. Sections of header and jambs are for an engineer; nothing here designs them.';

const lines: Readonly<Record<'header' | 'jamb' | 'sill', Stroke>> = {
  header: { weight: 'heavy', ink: 'accent' },
  jamb: { weight: 'heavy' },
  sill: { weight: 'heavy', dash: 'dashed' },
};

/** The sheet of a door; one at least. */
export function doorSheets(
  drawn: {
    readonly shell: Shell;
    readonly numbers: readonly string[];
    readonly advice: DoorAdvice;
    /** Null where it was not reckoned. */
    readonly frame: DoorFrame | null;
    /** Radians from the datum; null: not told. */
    readonly windFrom: number | null;
  },
  facts: SheetFacts,
  options: FitoutSheetOptions = {},
): Drawing[] {
  const { shell, numbers, advice, frame } = drawn;
  const shown = options.lengths ?? 'metric';
  const plan = laidPlan(shell);
  const turn = new Map(advice.cutOrder.map((place, i) => [place, i + 1] as const));
  return groundSheets(pageOf(options.paper ?? 'A4', 'across'), {
    heading: 'Door',
    remark: `${advice.spares} panels come out: spares from then on`,
    facts,
    lengths: lengthsNote(shown),
    caution: cautionOf(facts, caution),
    notes: [
      ...costWords(frame, (metres) =>
        shown === 'metric'
          ? `${(1000 * metres).toFixed(1)} mm`
          : `${(metres / 0.0254).toFixed(2)} in`,
      ),
      advice.offWind === null || drawn.windFrom === null
        ? ''
        : `It looks ${((advice.offWind * 180) / Math.PI).toFixed(0)}° away from where the wind mostly comes from; 180° is best.`,
      advice.held.length > 0
        ? `After panel ${advice.held.map((step) => step + 1).join(', ')} of the order another hangs by one seam or none: hold it by hand, or take both out together.`
        : '',
      'Ringed hubs are propped before the first panel comes out, until the frame is in. Accent: header; bold: jambs; dashed: sill.',
      ...sourceNotes([...DOOR_SOURCES, ...(frame?.sources ?? [])]),
    ].filter((words) => words !== ''),
    points: plan.box,
    plan: (placing) => items(drawn, plan, turn, placing),
    columns: [
      { name: 'what', share: 0.55, align: 'start' },
      { name: 'how much', share: 0.45, align: 'end' },
    ],
    rows: [
      ...(['header', 'jamb', 'sill'] as const)
        .filter((part) => advice.lengths[part] > 0)
        .map((part) =>
          plainRow([part === 'jamb' ? 'jambs' : part, largeFirst(advice.lengths[part], shown)]),
        ),
      plainRow(['props', String(advice.props.length)]),
      ...advice.cutOrder.map((place, i) => plainRow([`out ${i + 1}`, numbers[place] ?? ''])),
    ],
  });
}

/** What a door costs the frame, in sentences. */
function costWords(frame: DoorFrame | null, length: (metres: number) => string): string[] {
  if (frame === null) return [];
  const { stiffness, sag, buckling, supposed } = frame;
  return [
    `Without a frame round it the shell keeps ${(100 * stiffness.kept).toFixed(0)} % of its stiffness.`,
    sag === null
      ? ''
      : `Its edge sags by ${length(sag.open)} under the own weight (${length(sag.whole)} whole).`,
    buckling === null
      ? ''
      : `It keeps ${(100 * Math.min(1, buckling.open / buckling.whole)).toFixed(0)} % of the load at which a perfect shell buckles; a real one does at a third or a fifth of it.`,
    supposed.length === 0 ? '' : `Supposed, nobody said: ${supposed.join(', ')}.`,
  ];
}

function items(
  { shell, numbers, advice, windFrom }: Parameters<typeof doorSheets>[0],
  plan: ReturnType<typeof laidPlan>,
  turn: ReadonlyMap<number, number>,
  placing: GroundPlacing,
): Item[] {
  return [
    ...placeItems(shell, plan, placing, (place) =>
      turn.has(place) ? { tint: null, hatch: 'slant-left' } : null,
    ),
    ...advice.reveal.map(({ part, side }) =>
      run((plan.sides[side] ?? []).map(placing.at), lines[part]),
    ),
    ...advice.props.flatMap((hub) => {
      const at = plan.hubs[hub];
      return at === undefined ? [] : [circle(placing.at(at), 2.2, { weight: 'bold' })];
    }),
    ...placeWords(
      plan,
      placing,
      (place) => (turn.has(place) ? null : (numbers[place] ?? null)),
      1.8,
    ),
    ...[...turn].map(([place, i]) =>
      text(placing.at(plan.labels[place] ?? [0, 0]), String(i), 3.4, {
        bold: true,
        anchor: 'middle',
        halo: 0.8,
      }),
    ),
    ...datumItems(plan, placing),
    ...(windFrom === null ? [] : windItems(plan, placing, windFrom)),
  ];
}

/** An arrow from outside to the ring, from where the wind comes. */
function windItems(
  plan: ReturnType<typeof laidPlan>,
  placing: GroundPlacing,
  from: number,
): Item[] {
  const r = (plan.box[1] as readonly [number, number])[0];
  const spot = (away: number): Point => placing.at([away * Math.cos(from), away * Math.sin(from)]);
  const [tail, head] = [spot(r * 1.14), spot(r * 1.03)];
  const [dx, dy] = [head[0] - tail[0], head[1] - tail[1]];
  const k = 1.6 / Math.hypot(dx, dy);
  return [
    line(tail, head, { weight: 'medium' }),
    polygon(
      [
        head,
        [head[0] - 1.8 * k * dx - 0.7 * k * dy, head[1] - 1.8 * k * dy + 0.7 * k * dx],
        [head[0] - 1.8 * k * dx + 0.7 * k * dy, head[1] - 1.8 * k * dy - 0.7 * k * dx],
      ],
      { weight: 'thin' },
      { tint: '#15171c', hatch: null },
    ),
    text([tail[0], tail[1] - 2.2], 'wind', 2.8, { anchor: 'middle' }),
  ];
}
