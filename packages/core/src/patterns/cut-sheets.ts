// Parts laid on sheets to be cut, as layers of lines and words: `engrave` first, then `score`, then `cut`,
// holes before outlines, so that nothing moves before it is done. Millimetres, x right, y up from the
// sheet's lower left corner.

import { textWidth } from '../papers/text-width.ts';
import type { CutPart, CutPoint } from './cut-parts.ts';
import { MICRON, onGrid } from './grid.ts';
import { laidPoint, nest } from './nest.ts';

/** What is done along a line. */
export type CutLayer = 'engrave' | 'score' | 'cut';

/** The layers in the order they are worked. */
export const cutLayers: readonly CutLayer[] = ['engrave', 'score', 'cut'];

/** A closed line on a sheet. */
export interface CutLine {
  readonly layer: CutLayer;
  readonly points: readonly CutPoint[];
}

/** A word, about its middle. */
export interface CutWord {
  readonly layer: 'engrave';
  readonly at: CutPoint;
  readonly text: string;
  /** Height of the type (em), millimetres. */
  readonly size: number;
  /** Degrees anticlockwise. */
  readonly turnDeg: number;
}

/** One sheet. */
export interface CutSheet {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly CutLine[];
  readonly words: readonly CutWord[];
}

/** Sheets with all parts on them. */
export interface CutSheets {
  readonly sheets: readonly CutSheet[];
  /** Area of the parts over that of the sheets, 0 to 1. */
  readonly yield: number;
}

/** What parts are laid on, millimetres. */
export interface CutSheetOptions {
  readonly width: number;
  readonly height: number;
  /** Least distance between two parts. */
  readonly gap: number;
  /** Outlines are scored to be snapped in place of cut: thin plastic warps in the heat of a cut. */
  readonly snap?: boolean;
}

/** The sheets; null where some part fits on none. */
export function cutSheets(
  parts: readonly CutPart[],
  { width, height, gap, snap = false }: CutSheetOptions,
): CutSheets | null {
  const grid = ([x, y]: CutPoint) => onGrid(x * MICRON, y * MICRON);
  const nested = nest(
    parts.map(({ cover, outline }) => ({
      shapes: cover.map((shape) => shape.map(grid)),
      turns: [0, 60, 90, 120, 180, 240, 270, 300].map((turn) => turn - leaning(outline)),
      alike: cover.flat().flatMap(grid).join(),
    })),
    { width: width * MICRON, height: height * MICRON, gap: gap * MICRON },
  );
  if (nested === null) return null;
  const lines: CutLine[][] = Array.from({ length: nested.sheets }, () => []);
  const words: CutWord[][] = lines.map(() => []);
  const last: CutLine[][] = lines.map(() => []);
  parts.forEach((part, i) => {
    const laid = nested.laid[i] as (typeof nested.laid)[number];
    const at = ([x, y]: CutPoint): CutPoint => {
      const [u, v] = laidPoint([x * MICRON, y * MICRON], laid);
      return [u / MICRON, v / MICRON];
    };
    for (const hole of part.holes) lines[laid.sheet]?.push({ layer: 'cut', points: hole.map(at) });
    last[laid.sheet]?.push({ layer: snap ? 'score' : 'cut', points: part.outline.map(at) });
    words[laid.sheet]?.push(...wordsOf(part, at));
  });
  return {
    sheets: lines.map((own, s) => ({
      width,
      height,
      lines: [...own, ...(last[s] as CutLine[])],
      words: words[s] as CutWord[],
    })),
    yield: nested.yield,
  };
}

/** Degrees by which a part's first side leans. */
const leaning = ([p, q]: readonly CutPoint[]): number =>
  (Math.atan2((q as CutPoint)[1] - (p as CutPoint)[1], (q as CutPoint)[0] - (p as CutPoint)[0]) *
    180) /
  Math.PI;

function wordsOf({ outline, label, along }: CutPart, at: (p: CutPoint) => CutPoint): CutWord[] {
  const n = outline.length;
  const middle: CutPoint = [
    outline.reduce((sum, p) => sum + p[0], 0) / n,
    outline.reduce((sum, p) => sum + p[1], 0) / n,
  ];
  const reach = Math.min(...outline.map((p) => Math.hypot(p[0] - middle[0], p[1] - middle[1])));
  const size = Math.min(6, (0.7 * reach) / textWidth(label, 1));
  const words: CutWord[] = [{ layer: 'engrave', at: at(middle), text: label, size, turnDeg: 0 }];
  along.forEach((text, i) => {
    if (text === '') return;
    const [p, q] = [outline[i], outline[(i + 1) % n]] as [CutPoint, CutPoint];
    const side = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const small = Math.min(2.5, side / 10);
    const inward = (1.2 * small) / side;
    const on: CutPoint = [
      (p[0] + q[0]) / 2 - (q[1] - p[1]) * inward,
      (p[1] + q[1]) / 2 + (q[0] - p[0]) * inward,
    ];
    const [a, b] = [at(p), at(q)];
    const turnDeg = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
    words.push({ layer: 'engrave', at: at(on), text, size: small, turnDeg });
  });
  return words;
}
