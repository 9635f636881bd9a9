// Parts laid on sheets of a given size, none on another: each part is turned and pushed as far down and
// then left as it goes, the largest first. Positions are tried on a raster whose cells are marked
// wherever a part, widened by half the gap, touches them; so two parts are always at least the gap
// apart, and the yield is a little less than an exact fit would give. No proof of the fewest sheets.
// Whole micrometres; x right, y up from the sheet's lower left corner.

import { toRadians } from '../math/angle.ts';
import { doubleArea, type GridPoint, onGrid } from './grid.ts';

/** A part to be laid: convex pieces that touch or join, anticlockwise. */
export interface Part {
  readonly shapes: readonly (readonly GridPoint[])[];
  /** Degrees anticlockwise that it may be turned by. */
  readonly turns: readonly number[];
  /** Parts of one class are alike; absent: like no other. */
  readonly alike?: string;
}

/** Where a part lies: turned about 0, 0 of its own axes, then moved. */
export interface Laid {
  readonly sheet: number;
  readonly turnDeg: number;
  readonly x: number;
  readonly y: number;
}

/** The sheets. */
export interface Nested {
  readonly laid: readonly Laid[];
  readonly sheets: number;
  /** Area of the parts over that of the sheets, 0 to 1. */
  readonly yield: number;
}

/** What the parts are laid on, micrometres. */
export interface NestOptions {
  readonly width: number;
  readonly height: number;
  /** Least distance between two parts, and from the edge half of it. */
  readonly gap: number;
  /** Side of a raster cell; absent: a 250th of the longer side, at least half a millimetre. */
  readonly cell?: number;
}

interface Rasterised {
  readonly turnDeg: number;
  /** Least x and y of the turned part, micrometres. */
  readonly low: readonly [number, number];
  readonly columns: number;
  readonly rows: number;
  /** Row → first and last cell. */
  readonly runs: readonly (readonly [number, number, number])[];
}

/** Parts on as many sheets as they take; null where some part fits on none. Same parts, same answer. */
export function nest(parts: readonly Part[], options: NestOptions): Nested | null {
  const { width, height, gap } = options;
  const cell = options.cell ?? Math.max(500, Math.ceil(Math.max(width, height) / 250));
  const columns = Math.floor(width / cell);
  const rows = Math.floor(height / cell);
  const areas = parts.map(({ shapes }) => shapes.reduce((sum, s) => sum + doubleArea(s) / 2, 0));
  const order = parts.map((_, i) => i).sort((a, b) => (areas[b] as number) - (areas[a] as number));
  const rasters = new Map<string, readonly Rasterised[]>();
  const hints = new Map<string, number>();
  const sheets: Uint8Array[] = [];
  const laid: Laid[] = new Array(parts.length);
  for (const i of order) {
    const part = parts[i] as Part;
    const key = part.alike ?? `only ${i}`;
    const own = rasters.get(key) ?? part.turns.map((turn) => rasterised(part, turn, gap, cell));
    rasters.set(key, own);
    const fits = own.filter((one) => one.columns <= columns && one.rows <= rows);
    if (fits.length === 0) return null;
    for (let sheet = 0; ; sheet++) {
      if (sheet === sheets.length) sheets.push(new Uint8Array(columns * rows));
      const grid = sheets[sheet] as Uint8Array;
      let best: { one: Rasterised; x: number; y: number; top: number } | null = null;
      for (const one of fits) {
        const hint = `${sheet} ${one.turnDeg} ${key}`;
        const at = firstFree(grid, columns, rows, one, hints.get(hint) ?? 0);
        hints.set(hint, at < 0 ? columns * rows : at);
        if (at < 0) continue;
        const [x, y] = [at % columns, Math.floor(at / columns)];
        const top = y + one.rows;
        if (!best || top < best.top || (top === best.top && x < best.x)) best = { one, x, y, top };
      }
      if (!best) continue;
      const { one, x, y } = best;
      for (const [row, from, to] of one.runs)
        grid.fill(1, (y + row) * columns + x + from, (y + row) * columns + x + to + 1);
      laid[i] = {
        sheet,
        turnDeg: one.turnDeg,
        x: x * cell + gap / 2 - one.low[0],
        y: y * cell + gap / 2 - one.low[1],
      };
      break;
    }
  }
  const area = areas.reduce((sum, one) => sum + one, 0);
  const used = sheets.length * width * height;
  return { laid, sheets: sheets.length, yield: used > 0 ? area / used : 0 };
}

/** A point of a part where it lies on its sheet. */
export function laidPoint(point: readonly [number, number], { turnDeg, x, y }: Laid): GridPoint {
  const [c, s] = turnOf(turnDeg);
  return onGrid(x + c * point[0] - s * point[1], y + s * point[0] + c * point[1]);
}

/** Cosine and sine, exact at quarter turns. */
function turnOf(degrees: number): readonly [number, number] {
  const quarter = (((degrees % 360) + 360) % 360) / 90;
  if (Number.isInteger(quarter))
    return (
      [
        [1, 0],
        [0, 1],
        [-1, 0],
        [0, -1],
      ] as const
    )[quarter as 0];
  const angle = toRadians(degrees);
  return [Math.cos(angle), Math.sin(angle)];
}

/** The cells that a part touches once widened by half the gap: in every row of cells the reach of each
 * convex shape within the row (widened up and down), widened to both sides. */
function rasterised(part: Part, turnDeg: number, gap: number, cell: number): Rasterised {
  const at = { sheet: 0, turnDeg, x: 0, y: 0 };
  const shapes = part.shapes.map((shape) => shape.map((point) => laidPoint(point, at)));
  const all = shapes.flat();
  const low = [Math.min(...all.map((p) => p[0])), Math.min(...all.map((p) => p[1]))] as const;
  const high = [Math.max(...all.map((p) => p[0])), Math.max(...all.map((p) => p[1]))] as const;
  const half = gap / 2;
  const columns = Math.ceil((high[0] - low[0] + gap + 2) / cell);
  const rows = Math.ceil((high[1] - low[1] + gap + 2) / cell);
  const runs: (readonly [number, number, number])[] = [];
  for (let row = 0; row < rows; row++) {
    const bottom = row * cell - half + low[1] - half - 1;
    const top = (row + 1) * cell - half + low[1] + half + 1;
    for (const shape of shapes) {
      const reach = reachBetween(shape, bottom, top);
      if (!reach) continue;
      const from = Math.max(0, Math.floor((reach[0] - low[0] - 1) / cell));
      const to = Math.min(columns - 1, Math.floor((reach[1] - low[0] + gap + 1) / cell));
      runs.push([row, from, to]);
    }
  }
  return { turnDeg, low, columns, rows, runs };
}

/** Least and greatest x of a convex polygon between two heights; null where it reaches neither. */
function reachBetween(
  shape: readonly GridPoint[],
  bottom: number,
  top: number,
): [number, number] | null {
  let [least, most] = [Infinity, -Infinity];
  const meet = (x: number): void => {
    if (x < least) least = x;
    if (x > most) most = x;
  };
  let from = shape[shape.length - 1] as GridPoint;
  for (const to of shape) {
    if (to[1] >= bottom && to[1] <= top) meet(to[0]);
    for (const level of [bottom, top])
      if (from[1] < level !== to[1] < level)
        meet(from[0] + ((to[0] - from[0]) * (level - from[1])) / (to[1] - from[1]));
    from = to;
  }
  return least <= most ? [least, most] : null;
}

/** The first cell, by rows from below, at which all runs are free, from `start` on; −1 for none. */
function firstFree(
  grid: Uint8Array,
  columns: number,
  rows: number,
  one: Rasterised,
  start: number,
): number {
  for (let y = Math.floor(start / columns); y + one.rows <= rows; y++) {
    let x = y === Math.floor(start / columns) ? start % columns : 0;
    while (x + one.columns <= columns) {
      const jump = blockedUntil(grid, columns, one, x, y);
      if (jump === 0) return y * columns + x;
      x += jump;
    }
  }
  return -1;
}

/** 0 where the part is free to lie at x, y; else how far on it must at least go. */
function blockedUntil(
  grid: Uint8Array,
  columns: number,
  { runs }: Rasterised,
  x: number,
  y: number,
): number {
  for (const [row, from, to] of runs) {
    const base = (y + row) * columns + x;
    for (let i = base + to; i >= base + from; i--) if (grid[i]) return i - base - from + 1;
  }
  return 0;
}
