// A card for one kind of panel: true shape to scale, sides in both units, corner angles, holes,
// stock, marks, hand and how to tell it. Drawn as seen from outside, standing as `standingSide`
// says. Millimetres on paper.

import type { Kind } from '../pile/kind.ts';
import {
  type Box,
  type CircleItem,
  circle,
  type Fill,
  group,
  type Item,
  inked,
  onPaper,
  type Point,
  polygon,
  rectangle,
  type TextItem,
  text,
} from './drawing.ts';
import { handTest, handWords, readingWords, stockWords } from './kind-words.ts';
import { type LengthsShown, lengthFirst, lengthSecond } from './length-text.ts';
import { type PanelShape, panelShape, standingSide } from './panel-shape.ts';
import { outlinesOverlap, textCorners } from './text-box.ts';
import { capHeight, cutText, fittingSize, linesIn, textWidth, wrapText } from './text-width.ts';

/** What a card shows of its kind. */
export interface KindCard {
  readonly kind: Kind;
  readonly fill: Fill;
  /** Places that take it, or null where no shell is chosen. */
  readonly places: number | null;
  /** Side → holes along it, null where nobody counted; null where nothing is known. */
  readonly holes: readonly (number | null)[] | null;
}

/** How the cards of a sheet are drawn alike. */
export interface CardStyle {
  /** 1 : scale, the same for all cards of a sheet, so that shapes compare. */
  readonly scale: number;
  readonly lengths: LengthsShown;
}

const pad = 4;
const headHeight = 14;
const sideLabelRoom = 10;
const footLine = 3.7;
const footSize = 2.7;
const footRows = 5;

/** Room left for the shape itself in a card, millimetres. */
export const shapeRoom = (box: Box): { readonly width: number; readonly height: number } => ({
  width: box.width - 2 * pad - 2 * sideLabelRoom,
  height: box.height - headHeight - 2 * sideLabelRoom - footRows * footLine - pad,
});

/** The card's items inside the box. */
export function kindCardItems(card: KindCard, box: Box, style: CardStyle): Item[] {
  const shape = panelShape(card.kind.sides, standingSide(card.kind));
  return [
    group(
      [
        rectangle(box, { weight: 'thin' }),
        ...headItems(card, box),
        ...(shape === null ? noShapeItems(box) : shapeItems(card, shape, box, style)),
        ...footItems(card, box, shape?.angles ?? []),
      ],
      { kind: card.kind.id },
    ),
  ];
}

function headItems({ kind, places }: KindCard, box: Box): Item[] {
  const [x, y] = [box.x + pad, box.y + 8];
  const right = box.x + box.width - pad;
  const middle = box.x + box.width / 2;
  const size = fittingSize(kind.id, 8, 3, middle - x - 18, true) ?? 3;
  const left = x + textWidth(kind.id, size, true) + 2.5;
  const marks = kind.marks.length === 0 ? 'no marks' : `marked ${kind.marks.join(', ')}`;
  const stock = stockWords(kind);
  const upper = places === null ? stock : `${places} places`;
  const lower = places === null ? '' : stock;
  const half = right - middle - 2;
  const free = right - left - 3 - (lower === '' ? 0 : Math.min(half, textWidth(lower, headSize)));
  return [
    text([x, y], kind.id, size, { bold: true }),
    ...headLine([left, y - 2.2], handWords(kind), middle - left, 'start', true),
    ...markLines([left, y + 2.4], marks, free),
    ...headLine([right, y - 2.2], upper, half, 'end', true),
    ...(lower === '' ? [] : headLine([right, y + 2.4], lower, half, 'end', false)),
  ];
}

const headSize = 3.2;

/** Marks in as many lines as they take, ever smaller. RangeError, with the marks, where they do not fit. */
function markLines([x, y]: Point, marks: string, width: number): Item[] {
  const { lines, size } = linesIn(marks, headSize, 1.6, { width, height: MARKS });
  return lines.map((row, i) => text([x, y + i * size * 1.2], row, size, { ink: 'grey' }));
}

/** Height of the room for marks: down into that of the shape's topmost words, millimetres. */
const MARKS = 8;

/** One line of the head, smaller where it is long, cut with an ellipsis where that does not do. */
function headLine(
  at: Point,
  words: string,
  room: number,
  anchor: 'start' | 'end',
  bold: boolean,
): Item[] {
  const size = fittingSize(words, headSize, 2, room, bold);
  const shown = size === null ? cutText(words, 2, room, bold) : words;
  return [text(at, shown, size ?? 2, { anchor, bold, ink: bold ? 'ink' : 'grey' })];
}

function footItems({ kind }: KindCard, box: Box, angles: readonly number[]): Item[] {
  const width = box.width - 2 * pad;
  const test = handTest(kind);
  const tested = test === null ? [] : wrapText(test, footSize, width);
  const read = wrapText(readingWords(kind, angles), footSize, width);
  const rows = [...tested, ...read].slice(0, footRows);
  const bottom = box.y + box.height - pad + 0.5;
  return rows.map((row, i) =>
    text([box.x + pad, bottom - (rows.length - i - 0.5) * footLine], row, footSize, {
      ink: i < tested.length ? 'ink' : 'grey',
    }),
  );
}

const noShapeItems = (box: Box): Item[] => [
  text([box.x + box.width / 2, box.y + box.height / 2], 'these sides do not meet', 3, {
    anchor: 'middle',
    ink: 'accent',
  }),
];

function shapeItems(card: KindCard, shape: PanelShape, box: Box, style: CardStyle): Item[] {
  const points = placed(shape, box, style.scale);
  const centre = centroid(points);
  const sides = card.kind.sides.map((length, i) => {
    const ends = [points[i], points[(i + 1) % points.length]] as [Point, Point];
    return { length, ends, holes: card.holes?.[i] ?? null, name: i + 1 };
  });
  const holes = sides.flatMap(({ ends, holes }) => holeItems(ends, centre, holes));
  const words = sides.flatMap((side) => sideWords(side, centre, style.lengths));
  return [
    polygon(points, { weight: 'bold' }, card.fill),
    ...holes,
    ...words,
    ...angleItems(points, shape.angles, [...words.map(textCorners), ...holes.map(aroundCircle)]),
    ...points.map((point) => circle(point, 0.9, { weight: 'light' }, onPaper)),
    circle(points[0] as Point, 0.9, { weight: 'light' }, inked),
  ];
}

/** Corners on the sheet, the shape in the middle of its room. */
function placed(shape: PanelShape, box: Box, scale: number): Point[] {
  const k = 1000 / scale;
  const xs = shape.corners.map(([x]) => x * k);
  const ys = shape.corners.map(([, y]) => y * k);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const room = shapeRoom(box);
  const x0 = box.x + box.width / 2 - (left + right) / 2;
  const y0 = box.y + headHeight + sideLabelRoom + room.height / 2 + (low + high) / 2;
  return xs.map((x, i) => [x0 + x, y0 - (ys[i] as number)]);
}

function centroid(points: readonly Point[]): Point {
  const n = points.length;
  return [
    points.reduce((sum, p) => sum + p[0], 0) / n,
    points.reduce((sum, p) => sum + p[1], 0) / n,
  ];
}

/** Along the side, and at right angles to it away from the centre: unit vectors, and its middle. */
function frameOf([a, b]: readonly [Point, Point], centre: Point) {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const along: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const normal: Point = [along[1], -along[0]];
  const outward = normal[0] * (middle[0] - centre[0]) + normal[1] * (middle[1] - centre[1]) > 0;
  const out: Point = outward ? normal : [-normal[0], -normal[1]];
  return { length, along, middle, out };
}

/** Length along the side outside it, first unit above in bold, read without turning one's head
 * over: never upside down. */
function sideWords(
  side: { length: number; ends: [Point, Point]; holes: number | null; name: number },
  centre: Point,
  lengths: LengthsShown,
): TextItem[] {
  const { length, along, middle, out } = frameOf(side.ends, centre);
  const degrees = (Math.atan2(along[1], along[0]) * 180) / Math.PI;
  const rotate = degrees > 90.001 ? degrees - 180 : degrees < -90 ? degrees + 180 : degrees;
  const holes = side.holes === null ? '' : ` · ${side.holes} holes`;
  const main = `${side.name} · ${lengthFirst(side.length, lengths)}`;
  const second = `${lengthSecond(side.length, lengths)}${holes}`;
  const room = Math.max(length, 16);
  const sizes = [
    fittingSize(main, 3.2, 1.8, room, true) ?? 1.8,
    fittingSize(second, 2.6, 1.6, room) ?? 1.6,
  ] as const;
  // The line nearer the side is the one that reads first when the text stands upright below it.
  const below =
    Math.cos((rotate * Math.PI) / 180) * out[1] - Math.sin((rotate * Math.PI) / 180) * out[0] > 0;
  const [near, far] = [2.9, 6.7];
  const at = (d: number): Point => [middle[0] + out[0] * d, middle[1] + out[1] * d];
  return [
    text(at(below ? near : far), main, sizes[0], { anchor: 'middle', rotate, bold: true }),
    text(at(below ? far : near), second, sizes[1], { anchor: 'middle', rotate, ink: 'grey' }),
  ];
}

/** Holes in a row inside the side, evenly spaced: their number is true, their places are not. */
function holeItems(
  ends: readonly [Point, Point],
  centre: Point,
  holes: number | null,
): CircleItem[] {
  if (holes === null || holes === 0) return [];
  const { length, along, out } = frameOf(ends, centre);
  const [inset, radius] = [1.5, 0.45];
  const first = 5;
  const run = length - 2 * first;
  if (run / holes < 2.2 * radius) return [];
  return Array.from({ length: holes }, (_, i) => {
    const t = first + (holes === 1 ? run / 2 : (run * i) / (holes - 1));
    const x = ends[0][0] + along[0] * t - out[0] * inset;
    const y = ends[0][1] + along[1] * t - out[1] * inset;
    return circle([x, y], radius, { weight: 'hair' }, onPaper);
  });
}

/** Each corner's angle inside it on the bisector, left out of the drawing where it would run into a
 * side, a hole or other words: the card's foot lists all of them. */
function angleItems(
  points: readonly Point[],
  angles: readonly number[],
  taken: readonly (readonly Point[])[],
): Item[] {
  const edges = points.map((p, i) => band(p, points[(i + 1) % points.length] as Point, 0.9));
  const placedItems: TextItem[] = [];
  angles.forEach((angle, i) => {
    const item = angleItem(points, i, angle);
    const corners = textCorners(item);
    const inTheWay = [...edges, ...taken, ...placedItems.map(textCorners)];
    if (!inTheWay.some((other) => outlinesOverlap(corners, other))) placedItems.push(item);
  });
  return placedItems;
}

function angleItem(points: readonly Point[], i: number, angle: number): TextItem {
  const n = points.length;
  const p = points[i] as Point;
  const [u, v] = [
    unitTo(p, points[(i + n - 1) % n] as Point),
    unitTo(p, points[(i + 1) % n] as Point),
  ];
  const bisector = unitTo([0, 0], [u[0] + v[0], u[1] + v[1]]);
  const size = 2.4;
  const words = `${((angle * 180) / Math.PI).toFixed(1)}°`;
  const reach = Math.hypot(textWidth(words, size), capHeight * size) / 2 + 2.2;
  const d = Math.max(6, reach / Math.sin(angle / 2));
  const at: Point = [p[0] + bisector[0] * d, p[1] + bisector[1] * d];
  return text(at, words, size, { anchor: 'middle', halo: 0.5 });
}

function unitTo(p: Point, q: Point): Point {
  const d = Math.hypot(q[0] - p[0], q[1] - p[1]);
  return [(q[0] - p[0]) / d, (q[1] - p[1]) / d];
}

/** A line's surroundings to either side, millimetres. */
function band(a: Point, b: Point, half: number): Point[] {
  const [ux, uy] = unitTo(a, b);
  const [nx, ny] = [-uy * half, ux * half];
  return [
    [a[0] + nx, a[1] + ny],
    [b[0] + nx, b[1] + ny],
    [b[0] - nx, b[1] - ny],
    [a[0] - nx, a[1] - ny],
  ];
}

function aroundCircle({ centre: [x, y], radius: r }: CircleItem): Point[] {
  return [
    [x - r, y - r],
    [x + r, y - r],
    [x + r, y + r],
    [x - r, y + r],
  ];
}
