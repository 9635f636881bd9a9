// A drawing as plain data: what is drawn, on which sheet, before any file format. Millimetres on
// paper, x to the right, y down, origin at the sheet's top left corner. Angles in degrees,
// clockwise as on screen. Line widths follow the ISO 128-2 series, each √2 of the one before.

import type { HatchName } from './hatch.ts';

/** A point on the sheet, millimetres. */
export type Point = readonly [number, number];

/** Width of a line by what it means. */
export type LineWeight = 'hair' | 'thin' | 'light' | 'medium' | 'bold' | 'heavy';

/** Line widths, millimetres. */
export const lineWeights: Readonly<Record<LineWeight, number>> = {
  hair: 0.13,
  thin: 0.18,
  light: 0.25,
  medium: 0.35,
  bold: 0.5,
  heavy: 0.7,
};

/** Solid for what stands, dashed for what is hidden or left out, chain for axes, dotted for aids. */
export type Dash = 'solid' | 'dashed' | 'chain' | 'dotted';

/** Dash lengths of each family in millimetres, drawn and blank in turn; none for a solid line. */
export const dashLengths: Readonly<Record<Dash, readonly number[]>> = {
  solid: [],
  dashed: [2, 1],
  chain: [5, 1, 0.5, 1],
  dotted: [0.5, 1],
};

/** The few colours of a sheet. */
export type Ink = 'ink' | 'grey' | 'accent' | 'paper';

/** sRGB of each; grey keeps 5:1 on white, so that small print can be read. */
export const inkColours: Readonly<Record<Ink, string>> = {
  ink: '#15171c',
  grey: '#646b75',
  accent: '#bf3b0b',
  paper: '#ffffff',
};

/** How a line is drawn. */
export interface Stroke {
  readonly weight: LineWeight;
  readonly dash?: Dash;
  readonly ink?: Ink;
}

/** How an area is filled: a tint (sRGB) below a hatch; null for either alone or neither. */
export interface Fill {
  readonly tint: string | null;
  readonly hatch: HatchName | null;
}

/** One line of text. */
export interface TextItem {
  readonly type: 'text';
  /** Where its anchor stands, halfway up its capitals. */
  readonly at: Point;
  readonly text: string;
  /** Size of the type (em), millimetres. */
  readonly size: number;
  readonly bold?: boolean;
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Degrees clockwise about `at`. */
  readonly rotate?: number;
  readonly ink?: Ink;
  /** Width of a paper-coloured edge that keeps hatch and lines off the letters, millimetres. */
  readonly halo?: number;
}

/** A run of straight lines, closed to an area or open. */
export interface PathItem {
  readonly type: 'path';
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly stroke: Stroke | null;
  readonly fill?: Fill | null;
}

/** A circle. */
export interface CircleItem {
  readonly type: 'circle';
  readonly centre: Point;
  readonly radius: number;
  readonly stroke: Stroke | null;
  readonly fill?: Fill | null;
}

/** Items that belong together: a place, a legend. `data` names them for whoever shows the sheet. */
export interface GroupItem {
  readonly type: 'group';
  readonly items: readonly Item[];
  readonly data?: Readonly<Record<string, string>>;
}

/** Anything drawn. Later items cover earlier ones. */
export type Item = TextItem | PathItem | CircleItem | GroupItem;

/** A whole sheet. */
export interface Drawing {
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
  /** Read out in place of the drawing. */
  readonly title: string;
  readonly description: string;
  readonly items: readonly Item[];
}

/** A rectangle on the sheet, millimetres. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A straight line. */
export const line = (from: Point, to: Point, stroke: Stroke): PathItem => ({
  type: 'path',
  points: [from, to],
  closed: false,
  stroke,
});

/** A closed outline. */
export const polygon = (
  points: readonly Point[],
  stroke: Stroke | null,
  fill: Fill | null = null,
): PathItem => ({ type: 'path', points, closed: true, stroke, fill });

/** A rectangle. */
export function rectangle(box: Box, stroke: Stroke | null, fill: Fill | null = null): PathItem {
  const [right, bottom] = [box.x + box.width, box.y + box.height];
  const corners: Point[] = [
    [box.x, box.y],
    [right, box.y],
    [right, bottom],
    [box.x, bottom],
  ];
  return polygon(corners, stroke, fill);
}

/** A circle about a point. */
export const circle = (
  centre: Point,
  radius: number,
  stroke: Stroke | null,
  fill: Fill | null = null,
): CircleItem => ({ type: 'circle', centre, radius, stroke, fill });

/** A line of text; `more` sets weight, anchor, turn and colour. */
export const text = (
  at: Point,
  words: string,
  size: number,
  more: Omit<TextItem, 'type' | 'at' | 'text' | 'size'> = {},
): TextItem => ({ type: 'text', at, text: words, size, ...more });

/** Items under one name. */
export const group = (
  items: readonly Item[],
  data?: Readonly<Record<string, string>>,
): GroupItem => (data === undefined ? { type: 'group', items } : { type: 'group', items, data });

/** Plain paper under what is drawn on it. */
export const onPaper: Fill = { tint: inkColours.paper, hatch: null };

/** Solid ink. */
export const inked: Fill = { tint: inkColours.ink, hatch: null };

/** Every item that is no group, in drawing order. */
export function flatItems(items: readonly Item[]): Exclude<Item, GroupItem>[] {
  return items.flatMap((item) => (item.type === 'group' ? flatItems(item.items) : [item]));
}
