// A door on the flat plan: the panels that come out, in their order; the hubs that are propped before, with
// what each prop pushes; what is framed as header, jambs and sill, and what those bear; and where the wind
// comes from.

import { DOOR_SOURCES, type DoorAdvice } from '../fitout/door.ts';
import type { DoorBracing, PartBears } from '../fitout/door-bracing.ts';
import type { DoorFrame } from '../fitout/door-frame.ts';
import { writeForce } from '../measure/units.ts';
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
import { type LengthsShown, largeFirst, lengthsNote } from './length-text.ts';
import { pageOf } from './page.ts';

const caution =
  'Panels carry: what is cut out is missing until the frame bears. Forces are an estimate without wind, people or a factor of safety: an engineer or rigger decides on props and sections.';

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
      ...costWords(frame, shown),
      ...(frame?.bracing ? bracingWords(frame.bracing, shown) : []),
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
      ...propRows(advice, frame?.bracing ?? null, shown),
      ...(frame?.bracing?.bears ?? []).flatMap((one) => bearRows(one, shown)),
      ...advice.cutOrder.map((place, i) => plainRow([`out ${i + 1}`, numbers[place] ?? ''])),
    ],
  });
}

const letterLook = { bold: true, halo: 0.6, ink: 'accent', anchor: 'middle' } as const;

/** The middle of a letter beside a ring, away from the middle of the door. */
function beside([x, y]: Point, [mx, my]: Point): Point {
  const away = Math.max(1e-9, Math.hypot(x - mx, y - my));
  return [x + (4.4 * (x - mx)) / away, y + (4.4 * (y - my)) / away + 1];
}

/** The letter of a prop, from the highest: a, b … z, then a2. */
const letterOf = (i: number): string =>
  `${String.fromCharCode(97 + (i % 26))}${i < 26 ? '' : Math.floor(i / 26) + 1}`;

const forceIn = (newtons: number, shown: LengthsShown): string =>
  shown === 'metric' ? writeForce(newtons, 'kN', 2) : writeForce(newtons, 'lbf', 0);

const smallIn = (metres: number, shown: LengthsShown): string =>
  shown === 'metric' ? `${(1000 * metres).toFixed(1)} mm` : `${(metres / 0.0254).toFixed(2)} in`;

function propRows(
  { props }: DoorAdvice,
  bracing: DoorBracing | null,
  shown: LengthsShown,
): ReturnType<typeof plainRow>[] {
  if (bracing === null) return [plainRow(['props', String(props.length)])];
  return bracing.props.map(({ push }, i) =>
    plainRow([`prop ${letterOf(i)}`, push < 0.5 ? 'stands by' : `pushes ${forceIn(push, shown)}`]),
  );
}

/** What one part bears, and the section that the lead's stress asks for. */
function bearRows(
  { part, axial, moment, area, modulus }: PartBears,
  shown: LengthsShown,
): ReturnType<typeof plainRow>[] {
  const metric = shown === 'metric';
  const name = part === 'jamb' ? 'jambs' : part;
  return [
    plainRow([
      `${name} ${axial < 0 ? 'pushed' : 'pulled'}, bent`,
      `${forceIn(Math.abs(axial), shown)}, ${metric ? `${moment.toFixed(0)} N·m` : `${(moment / 1.355_818).toFixed(0)} lbf·ft`}`,
    ]),
    ...(area === null || modulus === null
      ? []
      : [
          plainRow([
            `${name} want A, W`,
            metric
              ? `${(1e4 * area).toFixed(2)} cm², ${(1e6 * modulus).toFixed(1)} cm³`
              : `${(area / 0.0254 ** 2).toFixed(2)} in², ${(modulus / 0.0254 ** 3).toFixed(2)} in³`,
          ]),
        ]),
  ];
}

/** What holds the door, in sentences. */
function bracingWords({ bears, sag, snow, section }: DoorBracing, shown: LengthsShown): string[] {
  const used = bears.flatMap((one) => (one.used === null ? [] : [one.used]));
  const aside = Math.max(0, ...bears.map((one) => one.aside));
  return [
    `Props push under the panels’ weight alone: nobody cuts in wind or snow. The frame bears weight${snow > 0 ? ` and snow of ${(snow / 1000).toFixed(2)} kN/m²` : ', no snow is entered'}, without wind or a factor of safety; with it in the edge sags by ${smallIn(sag, shown)}.`,
    used.length === 0
      ? 'What stress the bars may bear is not entered: A and W that they want are left open.'
      : `The bars named take ${(100 * Math.max(...used)).toFixed(0)} % of the ${((section.allowable ?? 0) / 1e6).toFixed(1)} MPa that the lead allows. A bears the force alone, W the moment alone.`,
    aside > 0.2
      ? `A bar bears ${(100 * aside).toFixed(0)} % of the push at which it bends aside between two hubs.`
      : '',
  ];
}

/** What a door costs the frame, in sentences. */
function costWords(frame: DoorFrame | null, shown: LengthsShown): string[] {
  if (frame === null) return [];
  const length = (metres: number): string => smallIn(metres, shown);
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
  const labels = [...turn.keys()].map((place) => placing.at(plan.labels[place] ?? [0, 0]));
  const middle: Point = [0, 1].map(
    (k) => labels.reduce((sum, at) => sum + (at[k] as number), 0) / Math.max(1, labels.length),
  ) as unknown as Point;
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
    ...advice.props.flatMap((hub, i) => {
      const at = plan.hubs[hub];
      if (at === undefined) return [];
      return [text(beside(placing.at(at), middle), letterOf(i), 3, letterLook)];
    }),
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
