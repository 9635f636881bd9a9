// A hatch as the lines and dots themselves, cut off at an outline: for printers and PDF, where a pattern
// comes out tile by tile. Millimetres on paper, x to the right, y down.

import type { Point } from './drawing.ts';
import { type Hatch, type HatchName, hatchNamed } from './hatch.ts';

/** What is drawn within an outline: lines to stroke, and dots to fill, or to stroke where they are rings. */
export interface HatchMarks {
  readonly lines: readonly (readonly [Point, Point])[];
  readonly dots: readonly { readonly at: Point; readonly r: number }[];
  readonly rings: boolean;
  /** Length drawn and left out in turn, millimetres; null for whole lines. */
  readonly dash: readonly [number, number] | null;
}

/** The marks of a hatch within an outline of straight lines, corners in either turning order. Tiles stand
 * at the origin, as those of a pattern do, so that the hatches of neighbours run on into each other. */
export function hatchMarks(name: HatchName, outline: readonly Point[]): HatchMarks {
  const hatch = hatchNamed(name);
  const turn = (hatch.angle * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const onTile = outline.map(([x, y]): Point => [cos * x + sin * y, cos * y - sin * x]);
  const onPaper = ([x, y]: Point): Point => [cos * x - sin * y, cos * y + sin * x];
  const level = levelRuns(hatch, onTile);
  const upright = hatch.crossed ? levelRuns(hatch, onTile.map(swap)).map(swapRun) : [];
  return {
    lines: [...level, ...upright].map(([a, b]): Run => [onPaper(a), onPaper(b)]),
    dots: dotsWithin(hatch, onTile).map(({ at, r }) => ({ at: onPaper(at), r })),
    rings: hatch.dots[0]?.ring ?? false,
    dash: hatch.drawn < 1 ? [hatch.tile * hatch.drawn, hatch.tile * (1 - hatch.drawn)] : null,
  };
}

type Run = readonly [Point, Point];

const swap = ([x, y]: Point): Point => [y, x];
const swapRun = ([a, b]: Run): Run => [swap(a), swap(b)];

/** The hatch's level lines within the outline. A dashed one begins at a whole tile, as its dashes do. */
function levelRuns({ tile, lines, drawn }: Hatch, outline: readonly Point[]): Run[] {
  const ys = outline.map((p) => p[1]);
  const [first, last] = [Math.floor(Math.min(...ys) / tile), Math.ceil(Math.max(...ys) / tile)];
  const runs: Run[] = [];
  for (let row = first; row <= last; row++)
    for (const line of lines) {
      const y = row * tile + line;
      const xs = crossings(outline, y);
      for (let i = 0; i + 1 < xs.length; i += 2) {
        const [from, to] = [xs[i] as number, xs[i + 1] as number];
        const start = drawn < 1 ? Math.ceil(from / tile) * tile : from;
        if (to > start)
          runs.push([
            [start, y],
            [to, y],
          ]);
      }
    }
  return runs;
}

/** Where a level line meets the outline, from left to right. */
function crossings(outline: readonly Point[], y: number): number[] {
  return outline
    .flatMap((a, i) => {
      const b = outline[(i + 1) % outline.length] as Point;
      if (a[1] > y === b[1] > y) return [];
      return [a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])];
    })
    .sort((p, q) => p - q);
}

function dotsWithin({ tile, dots }: Hatch, outline: readonly Point[]): { at: Point; r: number }[] {
  if (dots.length === 0) return [];
  const [xs, ys] = [outline.map((p) => p[0]), outline.map((p) => p[1])];
  const found: { at: Point; r: number }[] = [];
  for (let i = Math.floor(Math.min(...xs) / tile); i * tile <= Math.max(...xs); i++)
    for (let j = Math.floor(Math.min(...ys) / tile); j * tile <= Math.max(...ys); j++)
      for (const { x, y, r } of dots) {
        const at: Point = [i * tile + x, j * tile + y];
        if (crossings(outline, at[1]).filter((left) => left < at[0]).length % 2 === 1)
          found.push({ at, r });
      }
  return found;
}
