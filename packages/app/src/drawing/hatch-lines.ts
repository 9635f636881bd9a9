// A hatch as the lines and dots themselves, as path data. On the screen a pattern is quicker; on paper
// browsers write a pattern out tile by tile, and the file grows to megabytes.

import { type HatchName, hatchMarks as marksWithin, type Point } from '@shellraise/core';

/** What is drawn in a panel: lines to stroke, and dots to fill, or to stroke where they are rings. */
export interface HatchMarks {
  readonly lines: string;
  readonly dots: string;
  readonly rings: boolean;
  /** Length drawn and left out in turn, millimetres; null for whole lines. */
  readonly dash: readonly [number, number] | null;
}

/** The marks of a hatch within an outline, millimetres. */
export function hatchMarks(name: HatchName, outline: readonly Point[]): HatchMarks {
  const { lines, dots, rings, dash } = marksWithin(name, outline);
  return {
    lines: lines.map(([a, b]) => `M${written(a)}L${written(b)}`).join(''),
    dots: dots.map(({ at, r }) => circle(at, r)).join(''),
    rings,
    dash,
  };
}

const written = ([x, y]: Point): string => `${x.toFixed(2)} ${y.toFixed(2)}`;

const circle = ([x, y]: Point, r: number): string =>
  `M${written([x - r, y])}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
