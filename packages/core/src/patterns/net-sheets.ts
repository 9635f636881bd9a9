// The paper net drawn on sheets: cut, mountain and valley lines, place number, kind and mark on every
// face, on every tab the place it goes under, on every fold how far it is folded. The printed face is
// the outer one. Millimetres on paper.

import { toDegrees } from '../math/angle.ts';
import {
  type Drawing,
  group,
  type Item,
  line,
  type Point,
  polygon,
  type Stroke,
  type TextItem,
  text,
} from '../papers/drawing.ts';
import { cautionOf, type SheetFacts } from '../papers/flat-plan-sheet.ts';
import { type LengthsShown, lengthsNote } from '../papers/length-text.ts';
import {
  footBlock,
  frameItems,
  headingItems,
  type Page,
  type Paper,
  pageOf,
  scales,
  type TitleBlock,
} from '../papers/page.ts';
import { capHeight, cutText, textWidth } from '../papers/text-width.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import type { Shell } from '../shell/shell.ts';
import { type GridPoint, MICRON, onGrid } from './grid.ts';
import { firstPlace, netGround } from './grow.ts';
import { type NetPiece, type PaperNet, roomWithin } from './paper-net.ts';

/** What stands on a face of the net. */
export interface FaceWords {
  /** Place number. */
  readonly number: string;
  readonly kind: string;
  /** What is painted on the panel; empty where nothing is. */
  readonly mark: string;
}

/** Options of `netSheets` and `netRoom`. */
export interface NetSheetOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
}

/** Smallest type of a place number, millimetres: what is read on a model in the hand. */
const leastNumber = 1.5;
const mostNumber = 5;
const headRoom = 24;
const edge = 3;

/** Width and height of a sheet's room for pieces, millimetres: what its heading and title block leave. */
export function netRoom(
  facts: SheetFacts,
  options: NetSheetOptions = {},
): readonly [number, number] {
  const page = pageOf(options.paper ?? 'A4', 'upright');
  const { top } = footBlock(page, blockOf(facts, `${facts.sheet}, 100 of 100`, 1000, options));
  const { frame } = page;
  return [frame.width - 2 * edge, top - frame.y - headRoom - edge];
}

/** The scales, 1 : n, at which every panel fits the room with its tabs and every place number can be read;
 * where `least` is above `most` there is none on this paper. `least` is one of the usual scales. */
export function netScales(
  shell: Shell,
  words: readonly FaceWords[],
  room: readonly [number, number],
  tab: number,
): { readonly least: number; readonly most: number } {
  const { panels } = netGround(shell, 1, room);
  const most = panels.reduce((least, panel, p) => {
    const half = textWidth((words[p] as FaceWords).number, 1, true) / 2;
    const { radius } = inset(panel.map(([x, y]) => onGrid(x, y)));
    return Math.min(least, sizeIn(radius, half) / leastNumber);
  }, Infinity);
  const fits = (n: number): boolean => {
    const ground = netGround(shell, n, roomWithin(room, tab));
    return panels.every((_, p) => firstPlace(ground, p as PlaceId) !== null);
  };
  return { least: scales.find(fits) ?? Infinity, most: Math.floor(most) };
}

/** The sheets of a net; `words` says what stands on each place's face. */
export function netSheets(
  shell: Shell,
  net: PaperNet,
  words: readonly FaceWords[],
  facts: SheetFacts,
  options: NetSheetOptions = {},
): Drawing[] {
  const page = pageOf(options.paper ?? 'A4', 'upright');
  const { frame } = page;
  const [, height] = netRoom(facts, options);
  const at = ([x, y]: GridPoint): Point => [
    frame.x + edge + x / MICRON,
    frame.y + headRoom + height - y / MICRON,
  ];
  return Array.from({ length: net.sheets }, (_, sheet): Drawing => {
    const title = `${facts.sheet}, ${sheet + 1} of ${net.sheets}`;
    const pieces = net.pieces.filter((piece) => piece.sheet === sheet);
    return {
      width: page.width,
      height: page.height,
      title: `${facts.project}: ${title}`,
      description: `${title}: ${pieces.reduce((sum, { faces }) => sum + faces.length, 0)} panels on ${pieces.length} pieces.`,
      items: [
        ...frameItems(page),
        ...headingItems(
          [frame.x + 5, frame.y + 6.5],
          title,
          'Printed face outside; a tab says what it goes under. Print at 100 %: the rule is 50 mm.',
        ),
        ...legend(page),
        ...pieces.flatMap((piece) => pieceItems(shell, piece, words, at)),
        ...footBlock(page, blockOf(facts, title, net.scale, options)).items,
      ],
    };
  });
}

const blockOf = (
  facts: SheetFacts,
  sheet: string,
  scale: number,
  { lengths = 'metric' }: NetSheetOptions,
): TitleBlock => ({
  ...facts,
  sheet,
  assumes: [facts.assumes, cautionOf(facts)].filter((words) => words !== '').join(' '),
  scale: `1 : ${scale}`,
  lengths: lengthsNote(lengths),
});

const cutStroke: Stroke = { weight: 'medium' };
const tabStroke: Stroke = { weight: 'light' };
const mountain: Stroke = { weight: 'thin', dash: 'chain' };
const valley: Stroke = { weight: 'thin', dash: 'dashed', ink: 'accent' };
const level: Stroke = { weight: 'hair', dash: 'dotted' };

function pieceItems(
  shell: Shell,
  piece: NetPiece,
  words: readonly FaceWords[],
  at: (point: GridPoint) => Point,
): Item[] {
  const strokes = { mountain, valley, flat: level };
  return [
    ...piece.tabs.map(({ side, corners }) => {
      const [to, from, near, far] = corners.map(at) as [Point, Point, Point, Point];
      const under = placeBeyond(shell, side);
      return group(
        [
          { ...polygon([from, near, far, to], tabStroke), closed: false },
          ...alongSide(words[under]?.number ?? '', from, to, near, far),
        ],
        { tab: words[under]?.number ?? '' },
      );
    }),
    ...piece.folds.map(({ ends, way }) => line(at(ends[0]), at(ends[1]), strokes[way])),
    ...piece.edges.map(({ ends, meets }) =>
      line(at(ends[0]), at(ends[1]), meets === 'nothing' ? { weight: 'bold' } : cutStroke),
    ),
    ...piece.folds.flatMap(({ ends, dihedral, atTab }) =>
      atTab ? [] : foldWords(at(ends[0]), at(ends[1]), Math.PI - dihedral),
    ),
    ...piece.edges.flatMap(({ side, ends, meets }) =>
      meets === 'tape' ? tapeMark(at(ends[0]), at(ends[1]), placeBeyond(shell, side), words) : [],
    ),
    ...piece.faces.map(({ place, corners }) =>
      faceWords(words[place] as FaceWords, corners, place, at),
    ),
  ];
}

const placeBeyond = (shell: Shell, side: SideId): PlaceId =>
  shell.sidePlace[shell.mate[side] as number] as PlaceId;

/** Number in the middle, kind and mark below it where there is room. */
function faceWords(
  { number, kind, mark }: FaceWords,
  corners: readonly GridPoint[],
  place: PlaceId,
  at: (point: GridPoint) => Point,
): Item {
  const { centre, radius } = inset(corners);
  const [x, y] = at(centre);
  const size = fitting(number, radius);
  const below = cutText(mark === '' ? kind : `${kind} · ${mark}`, size * 0.6, radius * 1.7);
  return group(
    [
      text([x, y - size * 0.32], number, size, { bold: true, anchor: 'middle' }),
      ...(size * 0.6 >= 1
        ? [text([x, y + size * 0.6], below, size * 0.6, { anchor: 'middle' })]
        : []),
    ],
    { place: String(place) },
  );
}

/** The largest type in which a number and a line under it lie within a circle. */
function fitting(number: string, radius: number): number {
  return Math.min(mostNumber, sizeIn(radius, textWidth(number, 1, true) / 2));
}

const sizeIn = (radius: number, half: number): number =>
  (0.82 * radius) / Math.hypot(half, 0.32 + capHeight / 2);

/** The middle of a triangle's inscribed circle and its radius, millimetres; of another polygon the mean of
 * its corners and the distance of the nearest side. */
function inset(corners: readonly GridPoint[]): { centre: GridPoint; radius: number } {
  const n = corners.length;
  const lengths = corners.map((p, i) => {
    const q = corners[(i + 1) % n] as GridPoint;
    return Math.hypot(q[0] - p[0], q[1] - p[1]);
  });
  const weight = corners.map((_, i) => (n === 3 ? (lengths[(i + 1) % 3] as number) : 1));
  const sum = weight.reduce((a, b) => a + b, 0);
  const mean = (axis: 0 | 1): number =>
    corners.reduce((total, p, i) => total + p[axis] * (weight[i] as number), 0) / sum;
  const centre: GridPoint = [mean(0), mean(1)];
  const radius = Math.min(
    ...corners.map((p, i) => {
      const q = corners[(i + 1) % n] as GridPoint;
      const twice = (q[0] - p[0]) * (centre[1] - p[1]) - (q[1] - p[1]) * (centre[0] - p[0]);
      return twice / (lengths[i] as number);
    }),
  );
  return { centre, radius: radius / MICRON };
}

/** The number on a tab, read from outside the piece. */
function alongSide(number: string, from: Point, to: Point, near: Point, far: Point): TextItem[] {
  const side = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const top = Math.hypot(far[0] - near[0], far[1] - near[1]);
  const middle: Point = [
    (from[0] + to[0] + near[0] + far[0]) / 4,
    (from[1] + to[1] + near[1] + far[1]) / 4,
  ];
  const deep =
    Math.abs((to[0] - from[0]) * (near[1] - from[1]) - (to[1] - from[1]) * (near[0] - from[0])) /
    side;
  const size = Math.min(3, deep * 0.75, (0.8 * (side + top)) / 2 / textWidth(number, 1));
  if (size < 1) return [];
  return [text(middle, number, size, { anchor: 'middle', rotate: readable(from, to) })];
}

/** How far a fold goes, beside its middle. */
function foldWords(from: Point, to: Point, fold: number): TextItem[] {
  const side = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (side < 14) return [];
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const size = Math.min(1.8, side / 12);
  const words = `${Math.abs(toDegrees(fold)).toFixed(1)}°`;
  return [
    text(middle, words, size, {
      anchor: 'middle',
      rotate: readable(from, to),
      ink: 'grey',
      halo: 0.4,
    }),
  ];
}

/** A small bar across a side that is taped, with the number of its neighbour inside the side. */
function tapeMark(from: Point, to: Point, beyond: PlaceId, words: readonly FaceWords[]): Item[] {
  const side = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [ux, uy] = [(to[0] - from[0]) / side, (to[1] - from[1]) / side];
  // Inside lies to the right of the way on paper turned upside down: y runs down.
  const inside = ([x, y]: Point, by: number): Point => [x + uy * by, y - ux * by];
  const on = (part: number): Point => [from[0] + ux * side * part, from[1] + uy * side * part];
  const size = Math.min(1.6, side / 14);
  const bars = [0.32, 0.68].map((part) =>
    line(on(part), inside(on(part), Math.min(1.6, side / 12)), { weight: 'light', ink: 'accent' }),
  );
  const number = words[beyond]?.number ?? '';
  if (size < 1) return bars;
  const at = inside(on(0.5), size * 0.75);
  return [
    ...bars,
    text(at, number, size, { anchor: 'middle', rotate: readable(from, to), ink: 'accent' }),
  ];
}

/** Degrees by which text along a line is turned so that nobody reads it upside down. */
function readable(from: Point, to: Point): number {
  const turn = toDegrees(Math.atan2(to[1] - from[1], to[0] - from[0]));
  return turn > 90 ? turn - 180 : turn <= -90 ? turn + 180 : turn;
}

/** The sorts of lines, and a rule to check the print by. */
function legend({ frame }: Page): Item[] {
  const y = frame.y + 18;
  const sorts: readonly (readonly [Stroke, string])[] = [
    [cutStroke, 'cut'],
    [mountain, 'mountain fold'],
    [valley, 'valley fold'],
    [{ weight: 'bold' }, 'open'],
    [{ weight: 'light', ink: 'accent' }, 'tape'],
  ];
  const step = (frame.width - 70) / sorts.length;
  const rule = frame.x + frame.width - 56;
  return [
    group(
      sorts.flatMap(([stroke, words], i) => {
        const x = frame.x + 5 + i * step;
        return [line([x, y], [x + 7, y], stroke), text([x + 8, y], words, 2.2)];
      }),
      { part: 'legend' },
    ),
    group(
      [
        line([rule, y], [rule + 50, y], { weight: 'light' }),
        ...[0, 10, 20, 30, 40, 50].map((mm) =>
          line([rule + mm, y - 1.5], [rule + mm, y + 1.5], { weight: 'light' }),
        ),
      ],
      { part: 'rule' },
    ),
  ];
}
