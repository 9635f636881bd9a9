// The drawing of a panel to be made, or to be cut down from another: true shape to scale with its hole
// line, the larger panel dashed around it where there is one, and a table of sides. Seen from outside.
// Millimetres on paper.

import type { PanelPoint, PanelToMake } from '../arrange/make/make-panel.ts';
import type { Trim } from '../arrange/make/trim.ts';
import { writeAngle } from '../measure/units.ts';
import {
  circle,
  type Drawing,
  group,
  type Item,
  line,
  type Point,
  polygon,
  text,
} from './drawing.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import { type LengthsShown, lengthFirst, lengthsNote } from './length-text.ts';
import { footBlock, frameItems, headingItems, type Paper, pageOf, scaleFor } from './page.ts';
import { footNotes, middleOf, towards } from './part-sheet.ts';
import { type RuledColumn, type RuledRow, ruledTable } from './ruled-table.ts';

/** What the sheet shows. */
export interface MakeSheetContent {
  /** Its kind. */
  readonly id: string;
  readonly panel: PanelToMake;
  /** The panel that it is cut down from: its kind, its corners from the kept side on, and the way to cut;
   * null: made anew. */
  readonly from: {
    readonly id: string;
    readonly corners: readonly PanelPoint[];
    readonly trim: Trim;
  } | null;
}

/** What a panel that somebody makes must say beside it. */
export const makeCaution =
  'The shape is that of the net, no design of the panel: what it is made of, and what it and its bolts bear, is not decided here. Try it in the shell on the ground before the others are tight.';

/** Options of `makeSheet`. */
export interface MakeSheetOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
}

const rowStep = 6.4;
const labelSize = 3.2;

/** The sheet, lying. */
export function makeSheet(
  content: MakeSheetContent,
  facts: SheetFacts,
  options: MakeSheetOptions = {},
): Drawing {
  const page = pageOf(options.paper ?? 'A4', 'across');
  const lengths = options.lengths ?? 'metric';
  const { frame } = page;
  const { panel, from, id } = content;
  const warned = cautionOf(facts, makeCaution);
  const shape = shapeOf(content);
  const spanX = span(shape.all, 0);
  const spanY = span(shape.all, 1);
  const block = (scale: string) =>
    footBlock(page, { ...facts, scale, lengths: lengthsNote(lengths) });
  const notes = footNotes(page, block('1 : 1000').top, warned, notesOf(content, lengths));
  const head = frame.y + 18;
  const below = notes.top;
  const left = {
    x: frame.x + 12,
    y: head + 8,
    width: frame.width * 0.45 - 20,
    height: below - head - 20,
  };
  const scale = Math.max(scaleFor(spanX.size, left.width), scaleFor(spanY.size, left.height));
  const at = ([x, y]: PanelPoint): Point => [
    left.x + ((x - spanX.least) * 1000) / scale + (left.width - (spanX.size * 1000) / scale) / 2,
    left.y + left.height - ((y - spanY.least) * 1000) / scale,
  ];
  const table = ruledTable(
    columns,
    panel.sides.map((side, i) => rowOf(side, i, lengths)),
    {
      x: frame.x + frame.width * 0.46,
      y: head,
      width: frame.width * 0.54 - 5,
      height: below - head,
    },
    rowStep,
  );
  const title = from ? `Kind ${id}, cut down from kind ${from.id}` : `Kind ${id}, to be made`;
  return {
    width: page.width,
    height: page.height,
    title: `${facts.project}: ${title}`,
    description: `${title}: ${panel.sides.map(({ length }) => lengthFirst(length, lengths)).join(', ')}. ${warned}`,
    items: [
      ...frameItems(page),
      ...headingItems([frame.x + 5, frame.y + 7], title, 'seen from outside, hub to hub'),
      group(drawn(content, shape, at, lengths), { part: 'panel' }),
      group(table.items, { part: 'sides' }),
      notes.item,
      ...block(`1 : ${scale}`).items,
    ],
  };
}

interface Shape {
  /** Corner i is where side i starts. */
  readonly corners: readonly PanelPoint[];
  readonly place: (point: PanelPoint) => PanelPoint;
  readonly all: readonly PanelPoint[];
}

/** The panel where it is drawn: on the kept side of the larger one where there is such. */
function shapeOf({ panel, from }: MakeSheetContent): Shape {
  const { corners } = panel;
  if (from === null) return { corners, place: (point) => point, all: corners };
  const { becomes, from: start } = from.trim;
  const a = corners[becomes] as PanelPoint;
  const b = corners[(becomes + 1) % corners.length] as PanelPoint;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [c, s] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const place = ([x, y]: PanelPoint): PanelPoint => [
    start + (x - a[0]) * c + (y - a[1]) * s,
    -(x - a[0]) * s + (y - a[1]) * c,
  ];
  const own = corners.map(place);
  return { corners: own, place, all: [...own, ...from.corners] };
}

const span = (points: readonly PanelPoint[], axis: 0 | 1): { least: number; size: number } => {
  const values = points.map((point) => point[axis]);
  const least = Math.min(...values);
  return { least, size: Math.max(...values) - least };
};

function drawn(
  { panel, from }: MakeSheetContent,
  { corners, place }: Shape,
  at: (point: PanelPoint) => Point,
  lengths: LengthsShown,
): Item[] {
  const points = corners.map(at);
  const middle = middleOf(points);
  return [
    ...(from ? [polygon(from.corners.map(at), { weight: 'light', dash: 'dashed' })] : []),
    polygon(points, { weight: 'bold' }),
    ...panel.sides.flatMap(({ line: [a, b], holeAt }) => [
      line(at(place(a)), at(place(b)), { weight: 'thin', dash: 'chain', ink: 'accent' }),
      ...holeAt.map((hole) => circle(at(place(hole)), 0.7, { weight: 'thin', ink: 'accent' })),
    ]),
    ...panel.sides.flatMap(({ length }, i) => {
      const [p, q] = [points[i], points[(i + 1) % points.length]] as [Point, Point];
      const inside = towards(middleOf([p, q]), middle, 5);
      return [text(inside, `${i + 1}: ${lengthFirst(length, lengths)}`, labelSize, label)];
    }),
    ...points.map((point, i) =>
      text(towards(point, middle, -4.5), degrees(panel.angles[i] as number), labelSize, label),
    ),
  ];
}

const label = { anchor: 'middle', halo: 0.6 } as const;

const degrees = (angle: number): string => writeAngle(angle, 'deg');

const columns: readonly RuledColumn[] = [
  { name: 'side', share: 0.1, align: 'start' },
  { name: 'hub to hub', share: 0.22, align: 'end' },
  { name: 'as measured', share: 0.22, align: 'end' },
  { name: 'face to flange', share: 0.18, align: 'end' },
  { name: 'saw off square', share: 0.18, align: 'end' },
  { name: 'holes', share: 0.1, align: 'end' },
];

function rowOf(side: PanelToMake['sides'][number], i: number, lengths: LengthsShown): RuledRow {
  return {
    cells: [
      String(i + 1),
      lengthFirst(side.length, lengths),
      side.measured === null ? '?' : lengthFirst(side.measured, lengths),
      degrees(side.flangeAngle),
      degrees(side.bevel),
      side.holes === null ? '?' : String(side.holes),
    ],
    accent: false,
    bold: [true, true, false, false, false, false],
    swatch: null,
  };
}

function notesOf({ panel, from }: MakeSheetContent, lengths: LengthsShown): string[] {
  const kept = from
    ? `Side ${from.trim.keptSide + 1} of kind ${from.id} keeps its flange and holes and becomes side ${from.trim.becomes + 1}: the new side starts ${lengthFirst(from.trim.from, lengths)} from that side’s start. At the other sides ${lengthFirst(from.trim.margin, lengths)} or more is left to saw off.`
    : '';
  const holes = panel.sides.some((side) => side.holes !== null)
    ? 'Holes are drawn evenly spaced: common practice, no source. Drill through a good panel of the kind, or through the panel that it meets.'
    : 'Nobody counted the holes: drill through the panels that it meets.';
  return [
    kept,
    'The chain line is where the sides were measured. Face to flange: the angle inside between the face and the flange; saw off square: how far a sawn edge leans in, the inner face being the smaller where it is above 0.',
    holes,
  ].filter((words) => words !== '');
}
