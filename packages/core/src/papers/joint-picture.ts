// The joint picture of a place: the panel in its true shape as it hangs in the shell, its
// neighbours folded flat around it, and for every seam which side meets which. Seen from outside,
// or from inside as the mirror image; what points to the crown points up the page. Millimetres on
// paper; lengths are the kinds' own.

import { cross, dot, norm, normalize, scale, subtract, type Vec3 } from '../math/vector.ts';
import type { Kind } from '../pile/kind.ts';
import { hubPoint, placeCentre, placeNormal } from '../shell/geometry.ts';
import type { HubId, PlaceId, SideId } from '../shell/ids.ts';
import {
  hubAt,
  hubsOf,
  kindSide,
  mateOf,
  nextSide,
  placeAt,
  previousSide,
  type Shell,
  sidesOf,
} from '../shell/shell.ts';
import {
  type Box,
  circle,
  type Fill,
  group,
  type Item,
  line,
  onPaper,
  type Point,
  polygon,
  text,
} from './drawing.ts';
import { hullOf } from './hull.ts';
import { fitLabel, labelShape, type Segment } from './label-fit.ts';
import { type LengthsShown, lengthFirst, lengthSecond } from './length-text.ts';
import { capHeight, fittingSize, textWidth } from './text-width.ts';

/** What the picture is drawn from. */
export interface JointContent {
  readonly shell: Shell;
  readonly place: PlaceId;
  /** Place → its number. */
  readonly numbers: readonly string[];
  readonly kinds: readonly Kind[];
  /** Kind → its fill. */
  readonly fills: readonly Fill[];
  readonly lengths: LengthsShown;
  /** Places left out on purpose, by index: nothing is bolted to them. */
  readonly leftOut?: readonly number[];
  /** True for the picture as seen by people inside. */
  readonly fromInside: boolean;
}

/** The picture and the room it takes, millimetres. */
export interface JointPicture {
  readonly items: readonly Item[];
  readonly box: Box;
}

/** Across the panel's longest reach, millimetres. */
const PANEL = 78;
/** How much of a neighbour is shown, millimetres from the seam. */
const STRIP = 17;
const MARGIN = 6;
/** Kept clear of words at either end of a side: its hub, millimetres. */
const HUB = 7;

/** The joint picture of one place. */
export function jointPicture(content: JointContent): JointPicture {
  const { shell, place } = content;
  const frame = frameOf(shell, place, content.fromInside);
  const points = hubsOf(shell, place).map((hub) => frame.at(hubPoint(shell, hub)));
  const reach = Math.max(...points.flatMap((p) => points.map((q) => apart(p, q))));
  const k = PANEL / reach;
  const outline = points.map(([x, y]): Point => [x * k, y * k]);
  const seams = sidesOf(shell, place).map((side, i) => seamItems(content, side, i, outline));
  const fill = content.fills[shell.kind[place] as number] ?? onPaper;
  const items: Item[] = [
    ...seams.map(({ strip }) => strip).filter((item) => item !== null),
    polygon(outline, { weight: 'bold' }, fill),
    ...seams.flatMap(({ words }) => words),
    ...hubItems(content, outline),
    ...middleItems(content, outline),
  ];
  const reached = [...outline, ...seams.flatMap(({ reach: far }) => far)];
  return { items: [...items, upArrow(reached)], box: boxAround(reached) };
}

/** The place's own plane: x to the right and y down the page as on paper, the crown upwards. */
function frameOf(shell: Shell, place: PlaceId, fromInside: boolean) {
  const normal = placeNormal(shell, place);
  const centre = placeCentre(shell, place);
  const inPlane = (v: Vec3): Vec3 => subtract(v, scale(normal, dot(v, normal)));
  const toCrown = inPlane([0, 0, 1]);
  // At the crown itself nothing points up: there the datum does.
  const up = normalize(norm(toCrown) > 1e-6 ? toCrown : inPlane([1, 0, 0]));
  const right = cross(up, normal);
  const flip = fromInside ? -1 : 1;
  return {
    at: (point: Vec3): Point => {
      const v = subtract(point, centre);
      return [flip * dot(v, right), -dot(v, up)];
    },
  };
}

interface SeamDrawn {
  readonly strip: Item | null;
  readonly words: readonly Item[];
  readonly reach: readonly Point[];
}

/** One side: what of the neighbour shows beyond it, and the words on either bank of the seam. */
function seamItems(
  content: JointContent,
  side: SideId,
  i: number,
  outline: readonly Point[],
): SeamDrawn {
  const { shell, numbers } = content;
  const [a, b] = [outline[i] as Point, outline[(i + 1) % outline.length] as Point];
  const centre = middle(outline);
  const out = outwards(a, b, centre);
  const met = mateOf(shell, side);
  const left = met !== null && (content.leftOut ?? []).includes(placeAt(shell, met));
  const mate = left ? null : met;
  const own = bankWords(content, side, `side ${kindSide(shell, side) + 1}`);
  const inside = words(...bankOf(outline, i), scaled(out, -4.4), own, 4, true);
  if (mate === null) {
    const open = words(a, b, scaled(out, 4.2), 'open: nothing is bolted here', 3.4, false);
    return { strip: null, words: [inside, open], reach: [offset(a, out, 9), offset(b, out, 9)] };
  }
  const strip = stripOf(shell, mate, a, b, out);
  const other = placeAt(shell, mate);
  const kind = content.kinds[shell.kind[other] as number];
  const far = [
    words(a, b, scaled(out, 4.6), `to ${numbers[other]}`, 5, true),
    words(
      a,
      b,
      scaled(out, 10.2),
      `kind ${kind?.id ?? '?'}, its side ${kindSide(shell, mate) + 1}`,
      3.5,
      false,
    ),
  ];
  const fill = content.fills[shell.kind[other] as number] ?? onPaper;
  return {
    strip: group(
      [
        polygon(strip, null, { tint: fill.tint ?? onPaper.tint, hatch: null }),
        line(strip[0] as Point, strip[3] as Point, { weight: 'light' }),
        line(strip[1] as Point, strip[2] as Point, { weight: 'light' }),
        line(strip[3] as Point, strip[2] as Point, { weight: 'thin', dash: 'dashed', ink: 'grey' }),
      ],
      { place: String(other) },
    ),
    words: [inside, ...far],
    reach: strip,
  };
}

/** The part of a side along which its words stand clear of those of the sides beside it. */
function bankOf(outline: readonly Point[], i: number): [Point, Point] {
  const n = outline.length;
  const at = (k: number): Point => outline[(i + k + n) % n] as Point;
  const [a, b] = [at(0), at(1)];
  const length = apart(a, b);
  const along: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  // Bands of one width along two sides meet on the bisector of their corner.
  const from = BANK / Math.tan(angleAt(at(-1), a, b) / 2);
  const to = BANK / Math.tan(angleAt(a, b, at(2)) / 2);
  return [offset(a, along, from - HUB), offset(b, along, HUB - to)];
}

/** The angle between two sides that meet in `p`, radians. */
function angleAt(before: Point, p: Point, after: Point): number {
  const [ux, uy] = [before[0] - p[0], before[1] - p[1]];
  const [vx, vy] = [after[0] - p[0], after[1] - p[1]];
  return Math.atan2(Math.abs(ux * vy - uy * vx), ux * vx + uy * vy);
}

/** `side 2 · 1078 mm (42 7/16″)`: what the tape shows along this side. */
function bankWords({ shell, kinds, lengths }: JointContent, side: SideId, name: string): string {
  const kind = kinds[shell.kind[placeAt(shell, side)] as number];
  const length = kind?.sides[kindSide(shell, side)];
  if (length === undefined) return name;
  return `${name} · ${lengthFirst(length, lengths)} (${lengthSecond(length, lengths)})`;
}

/** The neighbour's part along the seam, laid flat: its own corner angles on both ends. */
function stripOf(shell: Shell, mate: SideId, a: Point, b: Point, out: Point): Point[] {
  // The neighbour's side runs from b to a; the angles lie at b (its start) and at a.
  const atB = cornerAngle(shell, mate);
  const atA = cornerAngle(shell, nextSide(shell, mate));
  const length = apart(a, b);
  const along: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  // Ends that lean inwards must not cross.
  const lean = (angle: number): number => 1 / Math.tan(angle);
  const closing = lean(atA) + lean(atB);
  const depth = closing > 0 ? Math.min(STRIP, (0.8 * length) / closing) : STRIP;
  const at = (p: Point, shift: number): Point => [
    p[0] + out[0] * depth + along[0] * shift,
    p[1] + out[1] * depth + along[1] * shift,
  ];
  return [a, b, at(b, -depth * lean(atB)), at(a, depth * lean(atA))];
}

/** A panel's flat angle at the hub where a side starts, radians. */
function cornerAngle(shell: Shell, side: SideId): number {
  const at = (hub: HubId): Vec3 => hubPoint(shell, hub);
  const own = at(hubAt(shell, side));
  const next = subtract(at(hubAt(shell, nextSide(shell, side))), own);
  const before = subtract(at(hubAt(shell, previousSide(shell, side))), own);
  return Math.atan2(norm(cross(next, before)), dot(next, before));
}

/** Each hub with the number of panels that meet there: what its plate must have. */
function hubItems({ shell, place }: JointContent, outline: readonly Point[]): Item[] {
  return hubsOf(shell, place).flatMap((hub, i) => {
    const p = outline[i] as Point;
    const meet = shell.sideHub.reduce((sum, one) => sum + (one === hub ? 1 : 0), 0);
    return [
      circle(p, 4, { weight: 'medium' }, onPaper),
      text(p, String(meet), 4.4, { anchor: 'middle', bold: true }),
    ];
  });
}

/** In the middle: the number of the place, its kind, and which face is towards the reader: as large
 * as they can stand clear of the words along the sides. */
function middleItems(
  { shell, place, numbers, kinds, fromInside }: JointContent,
  outline: readonly Point[],
): Item[] {
  const kind = kinds[shell.kind[place] as number];
  const lines = [
    { words: numbers[place] ?? '', share: 1, bold: true },
    { words: `kind ${kind?.id ?? '?'}`, share: 0.64, bold: true },
    { words: fromInside ? 'inside towards you' : 'outside towards you', share: 0.36, bold: false },
  ];
  // The long line goes where the panel is wider.
  const fits = [lines, [lines[2], lines[0], lines[1]] as typeof lines].map((order) =>
    fitLines(order, outline),
  );
  const [below, above] = fits as [FittedLines, FittedLines];
  const { order, at, size } = above.size > 1.05 * below.size ? above : below;
  const set = Math.min(size, LARGEST);
  return rowsOf(order).map(({ words, share, bold, y }) =>
    text([at[0], at[1] + y * set], words, share * set, { anchor: 'middle', halo: 1, bold }),
  );
}

/** Largest type in the middle, and the band along the sides that is their words', millimetres. */
const LARGEST = 9.5;
const BANK = 7.2;

interface MiddleLine {
  readonly words: string;
  /** Of the block's size. */
  readonly share: number;
  readonly bold: boolean;
}

interface FittedLines {
  readonly order: readonly MiddleLine[];
  readonly at: Point;
  readonly size: number;
}

/** The lines at size 1, one below the other about 0, with their heights. */
function rowsOf(order: readonly MiddleLine[]): (MiddleLine & { readonly y: number })[] {
  const gap = 0.32;
  const heights = order.map(({ share }) => share * capHeight);
  const whole = heights.reduce((sum, h) => sum + h, 0) + gap * (order.length - 1);
  let top = -whole / 2;
  return order.map((line, i) => {
    const y = top + (heights[i] as number) / 2;
    top += (heights[i] as number) + gap;
    return { ...line, y };
  });
}

function fitLines(order: readonly MiddleLine[], outline: readonly Point[]): FittedLines {
  const corners = rowsOf(order).flatMap(({ words, share, bold, y }): Point[] => {
    const half = textWidth(words, share, bold) / 2;
    const [up, down] = [y - (share * capHeight) / 2, y + (share * capHeight) / 2];
    return [
      [-half, up],
      [half, up],
      [half, down],
      [-half, down],
    ];
  });
  const centre = middle(outline);
  const banks = outline.map((a, i): Segment => {
    const b = outline[(i + 1) % outline.length] as Point;
    const inwards = scaled(outwards(a, b, centre), -1);
    return [offset(a, inwards, BANK), offset(b, inwards, BANK)];
  });
  const reach = Math.max(...outline.map((p) => apart(p, centre))) / 4;
  const shape = labelShape(hullOf(corners));
  return { order, ...fitLabel(shape, centre, banks, reach) };
}

/** Beside the panel: the way to the crown. */
function upArrow(points: readonly Point[]): Item {
  const x = Math.min(...points.map((p) => p[0])) - 3;
  const y = Math.min(...points.map((p) => p[1])) - 4;
  const accent = { weight: 'medium', ink: 'accent' } as const;
  return group([
    line([x, y + 12], [x, y + 2], accent),
    line([x - 1.8, y + 4.6], [x, y + 2], accent),
    line([x + 1.8, y + 4.6], [x, y + 2], accent),
    text([x + 3, y + 8], 'up', 4.2, { bold: true, ink: 'accent' }),
  ]);
}

// --- plane geometry on paper ---

const apart = (p: Point, q: Point): number => Math.hypot(p[0] - q[0], p[1] - q[1]);

const scaled = (v: Point, s: number): Point => [v[0] * s, v[1] * s];

const offset = (p: Point, along: Point, by: number): Point => [
  p[0] + along[0] * by,
  p[1] + along[1] * by,
];

const middle = (points: readonly Point[]): Point => [
  points.reduce((sum, p) => sum + p[0], 0) / points.length,
  points.reduce((sum, p) => sum + p[1], 0) / points.length,
];

/** Unit vector square to a side, away from the panel's middle. */
function outwards(a: Point, b: Point, centre: Point): Point {
  const length = apart(a, b);
  const normal: Point = [(b[1] - a[1]) / length, -(b[0] - a[0]) / length];
  const mid = middle([a, b]);
  const away = normal[0] * (mid[0] - centre[0]) + normal[1] * (mid[1] - centre[1]) > 0;
  return away ? normal : scaled(normal, -1);
}

/** A line of text along a side, shifted off it, never upside down, no longer than the side. */
function words(a: Point, b: Point, shift: Point, line: string, size: number, bold: boolean): Item {
  const degrees = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
  const rotate = degrees > 90.001 ? degrees - 180 : degrees < -89.999 ? degrees + 180 : degrees;
  const [x, y] = middle([a, b]);
  const fitted = fittingSize(line, size, 1.6, apart(a, b) - 2 * HUB, bold) ?? 1.6;
  return text([x + shift[0], y + shift[1]], line, fitted, {
    anchor: 'middle',
    rotate,
    bold,
    halo: 0.6,
  });
}

function boxAround(points: readonly Point[]): Box {
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  const x = Math.min(...xs) - MARGIN - 4;
  const y = Math.min(...ys) - MARGIN - 4;
  return {
    x,
    y,
    width: Math.max(...xs) + MARGIN + 4 - x,
    height: Math.max(...ys) + MARGIN + 4 - y,
  };
}
