// Which panel could be cut down to one that is short: the smaller laid on the larger with one side on
// one of its sides, so that this flange with its holes is kept, and room left at all the others. Both
// lie with the same face up: turned over, a panel's flanges stand the wrong way.
//
// The larger's side runs from its corner along +x; what is kept lies above it. Only placements with
// a side on a side are looked at: where the smaller fits at all, it can nearly always be slid to one.

import { turned } from '../../math/cyclic.ts';
import { cornersOf, type PanelPoint } from './make-panel.ts';

/** One way to cut a panel down. */
export interface Trim {
  /** Side of the panel that is cut whose flange is kept, and the side of the new panel it becomes. */
  readonly keptSide: number;
  readonly becomes: number;
  /** From the start of the kept side to the start of the new one, metres. */
  readonly from: number;
  /** Least room between the new panel and the other sides of the old one, metres. */
  readonly margin: number;
  /** Corners of the new panel, from side `becomes` on, in the axes of the kept side, metres. */
  readonly corners: readonly (readonly [number, number])[];
}

/** Every way to cut a panel with sides `large` down to one with sides `small`, the most room first; at
 * least `margin` is left at all sides but the kept one. Sides as measured along one line, metres,
 * anticlockwise seen from outside. None where either is no panel. */
export function trims(
  large: readonly number[],
  small: readonly number[],
  margin: number,
): readonly Trim[] {
  const found: Trim[] = [];
  large.forEach((_, keptSide) => {
    const outer = cornersFrom(large, keptSide);
    if (!outer) return;
    small.forEach((__, becomes) => {
      const inner = cornersFrom(small, becomes);
      const slide = inner && bestSlide(outer, inner);
      if (inner && slide && slide.margin >= margin)
        found.push({
          keptSide,
          becomes,
          ...slide,
          corners: inner.map(([x, y]) => [x + slide.from, y] as const),
        });
    });
  });
  return found.sort((a, b) => b.margin - a.margin);
}

type Point = PanelPoint;

/** Corners of a panel whose side `first` lies along +x from 0, 0; null for no panel. */
const cornersFrom = (sides: readonly number[], first: number): readonly Point[] | null =>
  cornersOf(turned(sides, first));

/** Where along the kept side the inner panel has the most room at the other sides; null where it
 * does not fit on the side. */
function bestSlide(
  outer: readonly Point[],
  inner: readonly Point[],
): { readonly from: number; readonly margin: number } | null {
  const least = (outer[1] as Point)[0] - (inner[1] as Point)[0];
  if (least < 0) return null;
  // Room at each other side is a linear function of the slide: margin = a + b · from.
  const lines = outer
    .slice(1)
    .map((corner, i) => roomAt(corner, outer[(i + 2) % outer.length] as Point, inner));
  const marginAt = (from: number): number => Math.min(...lines.map(([a, b]) => a + b * from));
  const crossings = lines.flatMap(([a, b], i) =>
    lines.slice(i + 1).flatMap(([c, d]) => (b === d ? [] : [(c - a) / (b - d)])),
  );
  const tries = [0, least, ...crossings.filter((from) => from > 0 && from < least)];
  const from = tries.reduce((best, one) => (marginAt(one) > marginAt(best) ? one : best));
  return { from, margin: marginAt(from) };
}

/** Least distance of the inner panel's corners from the line of a side, inside positive, as a + b · slide. */
function roomAt([x, y]: Point, [u, v]: Point, inner: readonly Point[]): readonly [number, number] {
  const length = Math.hypot(u - x, v - y);
  const normal: Point = [-(v - y) / length, (u - x) / length];
  const rooms = inner.map(([p, q]) => (p - x) * normal[0] + (q - y) * normal[1]);
  return [Math.min(...rooms), normal[0]];
}
