// The flat plan as drawn: each place with its kind's hatch and its number, seams light, base ring
// heavy, what is left out dashed, what is missing in the accent colour. Millimetres on paper.

import type { FlatPlan } from '../shell/flat-plan.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import { rims } from '../shell/rims.ts';
import { hubsOf, placeAt, placeCount, type Shell, sidesOf } from '../shell/shell.ts';
import { classOfSide, type ShellSideClasses } from '../takeoff/side-classes.ts';
import {
  circle,
  type Fill,
  group,
  type Item,
  onPaper,
  type PathItem,
  type Point,
  polygon,
  type Stroke,
  text,
} from './drawing.ts';
import { fitLabel, type LabelFit, labelShape, type Segment } from './label-fit.ts';
import { planSides, pointsOf } from './plan-sides.ts';
import { capHeight, textWidth } from './text-width.ts';

/** What the plan is drawn from. */
export interface PlanContent {
  readonly shell: Shell;
  readonly plan: FlatPlan;
  /** Place → its number. */
  readonly numbers: readonly string[];
  /** Place → the id of its kind, written below the number; null where none is to be written. */
  readonly kindIds: readonly (string | null)[];
  /** Place → its fill. */
  readonly fills: readonly Fill[];
  /** Places left out on purpose. */
  readonly leftOut: ReadonlySet<number>;
  /** Places that no panel is there for. */
  readonly missing: ReadonlySet<number>;
  /** Places to draw; null for all. */
  readonly only: ReadonlySet<number> | null;
  /** Numbers on the seams by side class; null for none. */
  readonly classes: ShellSideClasses | null;
}

/** Where the drawing stands: paper metres → millimetres on the sheet. */
export interface Placing {
  /** The crown's point. */
  readonly centre: Point;
  /** 1 : scale. */
  readonly scale: number;
}

/** The drawing, and the type sizes it came out with. */
export interface PlanDrawing {
  readonly items: readonly Item[];
  /** Smallest size of a place number, millimetres. */
  readonly smallestNumber: number;
  /** True where seams carry their class. */
  readonly seamsNumbered: boolean;
}

/** Millimetres on the sheet of a point of the plan: v runs up the page, y down. */
export const onSheet = (placing: Placing, [u, v]: Point): Point => [
  placing.centre[0] + (u * 1000) / placing.scale,
  placing.centre[1] - (v * 1000) / placing.scale,
];

const largestNumber = 4.6;
/** Seams shorter than this carry no class number, millimetres. */
const leastNumberedSeam = 8;
const lineClearance = 0.45;

/** The flat plan's items. */
export function planDrawing(content: PlanContent, placing: Placing): PlanDrawing {
  const { shell, plan } = content;
  const paths = planSides(shell, plan).map((path) => path.map((p) => onSheet(placing, p)));
  const outlines = plan.outlines.map((flat) => pointsOf(flat).map((p) => onSheet(placing, p)));
  const marks = seamMarks(content, paths);
  const labels = pointsOf(plan.labels);
  const fits = outlines.flatMap((outline, p) =>
    isDrawn(content, p)
      ? [fitNumber(content, p, outline, marks, onSheet(placing, labels[p] as Point))]
      : [],
  );
  const usual = usualSize(fits.map((one) => one.fit.size));
  return {
    items: [
      ...fits.map(({ place }) => placeItem(content, place, outlines[place] as Point[])),
      ...nadirCircle(content, placing),
      group(seamItems(content, paths), { part: 'seams' }),
      group([...new Set([...marks.values()].map((mark) => mark.item))], { part: 'seam-classes' }),
      group(rimItems(content, paths), { part: 'rims' }),
      group(hubItems(content, placing), { part: 'hubs' }),
      ...fits.map((fitted) => numberItem(content, fitted, usual)),
    ],
    smallestNumber: Math.min(...fits.map((one) => Math.min(one.fit.size, usual))),
    seamsNumbered: marks.size > 0,
  };
}

const isDrawn = ({ only }: PlanContent, place: number): boolean => only?.has(place) ?? true;

/** The size that most numbers get, so that the sheet looks even; small places go below it. */
function usualSize(sizes: readonly number[]): number {
  const sorted = [...sizes].sort((a, b) => a - b);
  return Math.min(largestNumber, sorted[Math.floor(sorted.length * 0.3)] ?? largestNumber);
}

function placeItem(content: PlanContent, place: number, outline: readonly Point[]): Item {
  const bare = content.leftOut.has(place) || content.missing.has(place);
  return group([polygon(outline, null, bare ? onPaper : (content.fills[place] as Fill))], {
    place: String(place),
  });
}

function nadirCircle({ shell, plan, only }: PlanContent, placing: Placing): Item[] {
  if (plan.outer === null || only !== null) return [];
  const radius = (Math.PI * shell.radius * 1000) / placing.scale;
  return [circle(placing.centre, radius, { weight: 'thin', dash: 'chain' })];
}

// --- lines ---

const run = (points: readonly Point[], stroke: Stroke): PathItem => ({
  type: 'path',
  points,
  closed: false,
  stroke,
});

function seamItems(content: PlanContent, paths: readonly (readonly Point[])[]): Item[] {
  const { shell, leftOut, missing } = content;
  const items: Item[] = [];
  for (let i = 0; i < shell.seams.length; i += 2) {
    const side = shell.seams[i] as SideId;
    const places = [side, shell.seams[i + 1] as SideId].map((s) => placeAt(shell, s) as number);
    if (!places.some((p) => isDrawn(content, p))) continue;
    const out = places.filter((p) => leftOut.has(p)).length;
    const gap = places.some((p) => missing.has(p));
    const stroke: Stroke =
      out === 2
        ? { weight: 'thin', dash: 'dashed', ink: 'grey' }
        : out === 1
          ? { weight: 'bold' }
          : { weight: gap ? 'bold' : 'light', ink: gap ? 'accent' : 'ink' };
    items.push(run(paths[side] as Point[], stroke));
  }
  return items;
}

function rimItems(content: PlanContent, paths: readonly (readonly Point[])[]): Item[] {
  const { shell, leftOut } = content;
  return rims(shell).flatMap((rim, i) =>
    rim.sides.flatMap((side) => {
      if (!isDrawn(content, placeAt(shell, side))) return [];
      const out = leftOut.has(placeAt(shell, side));
      const standing: Stroke = { weight: i === 0 ? 'heavy' : 'bold' };
      return [run(paths[side] as Point[], out ? { weight: 'thin', dash: 'dashed' } : standing)];
    }),
  );
}

function hubItems(content: PlanContent, placing: Placing): Item[] {
  const { shell, plan, leftOut } = content;
  const used = new Set<number>();
  for (let p = 0; p < placeCount(shell); p++)
    if (isDrawn(content, p) && !leftOut.has(p))
      for (const hub of hubsOf(shell, p as PlaceId)) used.add(hub);
  const nadir = plan.outer?.at === 'hub' ? plan.outer.hub : -1;
  const points = pointsOf(plan.hubs);
  return [...used]
    .filter((hub) => hub !== nadir)
    .sort((a, b) => a - b)
    .map((hub) => circle(onSheet(placing, points[hub] as Point), 0.5, { weight: 'thin' }, onPaper));
}

// --- class numbers on seams ---

interface SeamMark {
  readonly item: Item;
  readonly at: Point;
  readonly half: Point;
}

/** Side → the class number in the middle of its seam; both sides of a seam share one. */
function seamMarks(
  content: PlanContent,
  paths: readonly (readonly Point[])[],
): Map<number, SeamMark> {
  const { shell, classes, leftOut } = content;
  const marks = new Map<number, SeamMark>();
  if (classes === null) return marks;
  const lengths = paths
    .filter((_, side) => isDrawn(content, placeAt(shell, side as SideId)))
    .map(pathLength)
    .sort((a, b) => a - b);
  const short = lengths[Math.floor(lengths.length * 0.1)] ?? 0;
  if (short < leastNumberedSeam) return marks;
  const classSize = Math.min(2.6, Math.max(1.5, short / 7));
  for (let i = 0; i < shell.seams.length; i += 2) {
    const [side, mate] = [shell.seams[i] as SideId, shell.seams[i + 1] as SideId];
    const places = [placeAt(shell, side), placeAt(shell, mate)];
    if (places.every((p) => leftOut.has(p) || !isDrawn(content, p))) continue;
    const name = String(classes.classes[classOfSide(shell, classes, side)]?.number ?? '?');
    const at = middleOf(paths[side] as Point[]);
    const item = text(at, name, classSize, { anchor: 'middle', halo: 0.35, ink: 'grey' });
    const half: Point = [textWidth(name, classSize) / 2 + 0.25, (capHeight * classSize) / 2 + 0.25];
    marks.set(side, { item, at, half });
    marks.set(mate, { item, at, half });
  }
  return marks;
}

function pathLength(path: readonly Point[]): number {
  return path.reduce((sum, p, i) => sum + (i === 0 ? 0 : apart(path[i - 1] as Point, p)), 0);
}

/** The point halfway along a run of lines. */
function middleOf(path: readonly Point[]): Point {
  let left = pathLength(path) / 2;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1] as Point, path[i] as Point];
    const length = apart(a, b);
    if (left <= length && length > 0) {
      const t = left / length;
      return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    }
    left -= length;
  }
  return path[0] as Point;
}

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

// --- place numbers ---

/** Where the kind stands: above the number it is better in a place with its wide side below; left
 * to the hatch alone where both would come out too small. */
type KindLine = 'below' | 'above' | 'none';

interface NumberFit {
  readonly place: number;
  readonly fit: LabelFit;
  readonly kindLine: KindLine;
}

/** Below this size the kind's line makes way for a larger number, millimetres. */
const leastWithKind = 1.8;
const kindShare = 0.8;
const lineGap = 0.3;

/** The largest number that fits into the place, its kind below or above it. */
function fitNumber(
  content: PlanContent,
  place: number,
  outline: readonly Point[],
  marks: ReadonlyMap<number, SeamMark>,
  start: Point,
): NumberFit {
  const boxes = sidesOf(content.shell, place as PlaceId).flatMap((side) => {
    const mark = marks.get(side);
    return mark === undefined ? [] : boxSides(mark.at, mark.half);
  });
  const obstacles: Segment[] = [...segmentsOf(outline), ...boxes];
  const reach = Math.max(...outline.map((p) => apart(p, start))) / 4;
  const fitted = (kindLine: KindLine): NumberFit => {
    const shape = labelShape(numberCorners(content, place, kindLine));
    const { at, size } = fitLabel(shape, start, obstacles, reach);
    return { fit: { at, size: Math.max(0, size - lineClearance / 1.2) }, kindLine, place };
  };
  if (content.kindIds[place] === null) return fitted('none');
  const [below, above] = [fitted('below'), fitted('above')];
  const withKind = above.fit.size > 1.05 * below.fit.size ? above : below;
  return withKind.fit.size < leastWithKind ? fitted('none') : withKind;
}

/** Corners of the number's and the kind's boxes together, at size 1 about their middle. */
function numberCorners(content: PlanContent, place: number, kindLine: KindLine): Point[] {
  const wide = textWidth(content.numbers[place] as string, 1, true) / 2;
  const kind = content.kindIds[place] ?? null;
  if (kind === null || kindLine === 'none') {
    const half = capHeight / 2;
    return [
      [-wide, -half],
      [wide, -half],
      [wide, half],
      [-wide, half],
    ];
  }
  const narrow = Math.min(wide, (textWidth(kind, kindShare) + 0.1) / 2);
  const { top, bottom, step } = numberLines;
  const flip = kindLine === 'above' ? -1 : 1;
  const corners: Point[] = [
    [-wide, top],
    [wide, top],
    [wide, step],
    [narrow, bottom],
    [-narrow, bottom],
    [-wide, step],
  ];
  return corners.map(([x, y]) => [x, flip * y]);
}

/** Heights of the two lines at size 1 about the middle of both, the number on top. */
const numberLines = (() => {
  const whole = capHeight + lineGap + kindShare * capHeight;
  const top = -whole / 2;
  return { top, step: top + capHeight, bottom: -top };
})();

function numberItem(content: PlanContent, fitted: NumberFit, usual: number): Item {
  const { fit, kindLine, place } = fitted;
  const size = Math.min(fit.size, usual);
  const [x, y] = fit.at;
  const ink = content.missing.has(place) ? 'accent' : content.leftOut.has(place) ? 'grey' : 'ink';
  const style = { anchor: 'middle', ink, halo: 0.35 } as const;
  const number = content.numbers[place] as string;
  const kind = content.kindIds[place] ?? null;
  const data = { label: String(place) };
  if (kind === null || kindLine === 'none')
    return group([text([x, y], number, size, { ...style, bold: true })], data);
  const flip = kindLine === 'above' ? -1 : 1;
  const numberAt = flip * (numberLines.top + capHeight / 2) * size;
  const kindAt = flip * (numberLines.bottom - (kindShare * capHeight) / 2) * size;
  return group(
    [
      text([x, y + numberAt], number, size, { ...style, bold: true }),
      text([x, y + kindAt], kind, size * kindShare, style),
    ],
    data,
  );
}

const segmentsOf = (outline: readonly Point[]): Segment[] =>
  outline.map((p, i) => [p, outline[(i + 1) % outline.length] as Point]);

function boxSides([x, y]: Point, [w, h]: Point): Segment[] {
  return segmentsOf([
    [x - w, y - h],
    [x + w, y - h],
    [x + w, y + h],
    [x - w, y + h],
  ]);
}
