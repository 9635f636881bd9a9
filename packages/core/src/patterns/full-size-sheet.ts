// The drawing of a part at full size: a panel with its flanges and hole lines, coordinates from one corner and
// what a tape checks, or a hub plate with its holes. Drawn smaller on the sheet; the DXF beside it is 1 : 1.
// Millimetres on paper.

import { toDegrees } from '../math/angle.ts';
import {
  circle,
  type Drawing,
  group,
  type Item,
  line,
  type Point,
  polygon,
  text,
} from '../papers/drawing.ts';
import { cautionOf, type SheetFacts } from '../papers/flat-plan-sheet.ts';
import { type LengthsShown, lengthFirst, lengthsNote } from '../papers/length-text.ts';
import { makeCaution } from '../papers/make-sheet.ts';
import {
  footBlock,
  frameItems,
  headingItems,
  type Page,
  type Paper,
  pageOf,
  scaleFor,
} from '../papers/page.ts';
import { footNotes, middleOf, towards } from '../papers/part-sheet.ts';
import { type RuledColumn, type RuledRow, ruledTable } from '../papers/ruled-table.ts';
import type { FullPanelPart, HubPlate } from './full-size-parts.ts';

/** How the sheet is set. */
export interface FullSheetOptions {
  readonly paper: Paper;
  readonly lengths: LengthsShown;
}

type At = readonly [number, number];

const ROW = 5.6;

/** The sheet of a panel, lying; `deep`: depth of its flanges, metres, 0 for none. */
export function fullPanelSheet(
  part: FullPanelPart,
  deep: number,
  facts: SheetFacts,
  options: FullSheetOptions,
): Drawing {
  const { panel, name, count, base } = part;
  const { lengths } = options;
  const length = (metres: number): string => lengthFirst(metres, lengths);
  const all = [...panel.corners, ...panel.sides.flatMap(({ flange }) => flange)];
  const notes = [
    'Sides are numbered from the corner of the same number on. Chain line: the holes. Face to flange: inside, between the face and the flange. Saw off square: how far a sawn edge leans in, the inner face being the smaller where it is above 0.',
    deep > 0
      ? `Light outline: the blank with flanges ${length(deep)} deep, as asked for, its ends along the lines to the sphere’s centre; take off what the sheet wants at a bend.`
      : 'No depth of flange was asked for: the outline is that of the face.',
    panel.sides.some(({ holes }) => holes !== null)
      ? 'Holes evenly spaced in the middle of the flange: common practice, no source. Drill through a good panel of the kind, or through the panel that it meets.'
      : 'Nobody counted the holes: drill through the panels that it meets.',
    ...(base
      ? [
          'The side on the floor has no flange here; face to flange is there the angle between face and floor.',
        ]
      : []),
  ];
  return sheetOf(facts, options, {
    title: `${capital(name)}, ${count} of them`,
    notes,
    points: all,
    draw: (at) => [
      ...panel.sides.map(({ flange }, i) => {
        const [p, q] = [panel.corners[i], panel.corners[(i + 1) % panel.corners.length]] as [
          At,
          At,
        ];
        return polygon([p, flange[0], flange[1], q].map(at), { weight: 'light' });
      }),
      polygon(panel.corners.map(at), { weight: 'bold' }),
      ...panel.sides.flatMap(({ holeLine: [a, b], holeAt, onFloor }) =>
        onFloor
          ? []
          : [
              line(at(a), at(b), { weight: 'thin', dash: 'chain', ink: 'accent' }),
              ...holeAt.map((hole) => circle(at(hole), 0.7, { weight: 'thin', ink: 'accent' })),
            ],
      ),
      ...panel.corners.map((corner, i) => {
        const inward = towards(at(corner), middleOf(panel.corners.map(at)), 6);
        return text(inward, String(i + 1), 4, { anchor: 'middle', bold: true, halo: 0.6 });
      }),
    ],
    tables: [
      {
        columns: columnsOf([
          ['side', 0.1],
          ['hub to hub', 0.2],
          ['as measured', 0.2],
          ['face to flange', 0.2],
          ['saw off square', 0.18],
          ['holes', 0.12],
        ]),
        rows: panel.sides.map((side, i) =>
          row(side.onFloor ? `${i + 1} floor` : String(i + 1), [
            length(side.length),
            side.measured === null ? '?' : length(side.measured),
            angle(side.flangeAngle),
            angle(side.bevel),
            side.holes === null ? '?' : String(side.holes),
          ]),
        ),
      },
      {
        columns: columnsOf([
          ['corner', 0.16],
          ['x', 0.28],
          ['y', 0.28],
          ['inside angle', 0.28],
        ]),
        rows: panel.corners.map(([x, y], i) =>
          row(String(i + 1), [length(x), length(y), angle(panel.angles[i] as number)]),
        ),
      },
      {
        columns: columnsOf([
          ['check by tape', 0.6],
          ['', 0.4],
        ]),
        rows: panel.checks.map(({ from, to, square, length: far }) =>
          row(
            square
              ? `corner ${from + 1} square to side ${to + 1}`
              : `corner ${from + 1} to corner ${to + 1}`,
            [length(far)],
          ),
        ),
      },
    ],
  });
}

/** The sheet of a hub plate, lying; its diameter, where its holes lie and theirs, metres. */
export function hubPlateSheet(
  plate: HubPlate,
  size: PlateSize,
  facts: SheetFacts,
  options: FullSheetOptions,
): Drawing {
  const length = (metres: number): string => lengthFirst(metres, options.lengths);
  const on = (direction: number, far: number): At => [
    far * Math.cos(direction),
    far * Math.sin(direction),
  ];
  const radius = size.diameter / 2;
  const far = holeCircle(size);
  return sheetOf(facts, options, {
    title: `${capital(plate.name)}, ${plate.count} of them`,
    notes: [
      `A flat plate ${length(size.diameter)} across over ${plate.holes.length} corners${plate.closed ? '' : ' at the rim'}. Chain lines: the seams, as they lie seen along the line to the sphere’s centre. A hole of ${length(size.hole)} over the middle of each corner, ${length(far)} from the middle of the plate: diameters as asked for, the place of the holes our own choice. On the panel it lies a little further out, as its row says.`,
      'Where good plates are there, take theirs.',
    ],
    points: [
      [-radius, -radius],
      [radius, radius],
    ],
    draw: (at, mm) => [
      circle(at([0, 0]), mm(radius), { weight: 'bold' }),
      circle(at([0, 0]), mm(far), { weight: 'hair' }),
      ...plate.seams.map((seam) =>
        line(at([0, 0]), at(on(seam, radius)), { weight: 'thin', dash: 'chain' }),
      ),
      ...plate.holes.flatMap((hole, i): Item[] => [
        circle(at(on(hole, far)), mm(size.hole / 2), { weight: 'medium', ink: 'accent' }),
        text(at(on(hole, far * 0.66)), String(i + 1), 4, {
          anchor: 'middle',
          bold: true,
          halo: 0.6,
        }),
      ]),
    ],
    tables: [
      {
        columns: columnsOf([
          ['hole', 0.12],
          ['from first seam', 0.22],
          ['x', 0.2],
          ['y', 0.2],
          ['on the panel', 0.26],
        ]),
        rows: plate.holes.map((hole, i) => {
          const [x, y] = on(hole, far);
          return row(String(i + 1), [
            angle(hole),
            length(x),
            length(y),
            length(far / Math.cos(plate.slopes[i] as number)),
          ]);
        }),
      },
      {
        columns: columnsOf([
          ['seam', 0.3],
          ['from first seam', 0.35],
          ['to the next', 0.35],
        ]),
        rows: plate.seams.map((seam, i) => {
          const next = plate.seams[i + 1] ?? (plate.closed ? 2 * Math.PI : null);
          return row(String(i + 1), [angle(seam), next === null ? '' : angle(next - seam)]);
        }),
      },
    ],
  });
}

/** Of a hub plate and its holes, metres. */
export interface PlateSize {
  readonly diameter: number;
  readonly hole: number;
}

/** Radius of the circle of holes, metres: two thirds of the plate's, our own choice. */
export const holeCircle = ({ diameter }: PlateSize): number => diameter / 3;

interface Content {
  readonly title: string;
  readonly notes: readonly string[];
  /** What must find room, metres. */
  readonly points: readonly At[];
  readonly draw: (at: (point: At) => Point, mm: (metres: number) => number) => Item[];
  readonly tables: readonly {
    readonly columns: readonly RuledColumn[];
    readonly rows: readonly RuledRow[];
  }[];
}

function sheetOf(facts: SheetFacts, options: FullSheetOptions, content: Content): Drawing {
  const page: Page = pageOf(options.paper, 'across');
  const { frame } = page;
  const warned = cautionOf(facts, makeCaution);
  const block = (scale: string) =>
    footBlock(page, { ...facts, scale, lengths: lengthsNote(options.lengths) });
  const head = frame.y + 16;
  const notes = footNotes(page, block('1 : 1000').top, warned, content.notes);
  const below = notes.top;
  const half = frame.width * 0.46;
  const room = { x: frame.x + 8, y: head + 4, width: half - 14, height: below - head - 8 };
  const xs = content.points.map(([x]) => x);
  const ys = content.points.map(([, y]) => y);
  const [left, low] = [Math.min(...xs), Math.min(...ys)];
  const [wide, high] = [Math.max(...xs) - left, Math.max(...ys) - low];
  const scale = Math.max(scaleFor(wide, room.width), scaleFor(high, room.height));
  const mm = (metres: number): number => (metres * 1000) / scale;
  const at = ([x, y]: At): Point => [
    room.x + (room.width - mm(wide)) / 2 + mm(x - left),
    room.y + (room.height + mm(high)) / 2 - mm(y - low),
  ];
  let y = head;
  const tables = content.tables.flatMap(({ columns, rows }) => {
    const made = ruledTable(
      columns,
      rows,
      { x: frame.x + half, y, width: frame.width - half - 5, height: below - y },
      ROW,
    );
    y += made.height + 3;
    return made.items;
  });
  return {
    width: page.width,
    height: page.height,
    title: `${facts.project}: ${content.title}`,
    description: `${content.title}. ${content.notes.join(' ')} ${warned}`,
    items: [
      ...frameItems(page),
      ...headingItems(
        [frame.x + 5, frame.y + 7],
        content.title,
        'seen from outside; the DXF beside it is 1 : 1',
      ),
      group(content.draw(at, mm), { part: 'part' }),
      group(tables, { part: 'tables' }),
      notes.item,
      ...block(`1 : ${scale}`).items,
    ],
  };
}

const columnsOf = (names: readonly (readonly [string, number])[]): RuledColumn[] =>
  names.map(([name, share], i) => ({ name, share, align: i === 0 ? 'start' : 'end' }));

const row = (first: string, rest: readonly string[]): RuledRow => ({
  cells: [first, ...rest],
  accent: false,
  bold: [true, ...rest.map((_, i) => i === 0)],
  swatch: null,
});

/** To a hundredth of a degree. */
const angle = (radians: number): string => {
  const degrees = Math.round(toDegrees(radians) * 100) / 100;
  return `${degrees.toFixed(2)}°`;
};

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
