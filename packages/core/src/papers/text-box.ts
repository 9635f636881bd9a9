// The rectangle that a line of text may cover, turned with it, and whether two such overlap. By the
// widths that the writers keep to, so that what is apart here is apart on paper. Millimetres.

import type { Point, TextItem } from './drawing.ts';
import { capHeight, textWidth } from './text-width.ts';

/** Corners of the text's rectangle, in turning order. Capitals and digits only: letters that reach
 * below the line stick out by a fifth of the size. */
export function textCorners(item: TextItem): Point[] {
  const width = textWidth(item.text, item.size, item.bold ?? false);
  const left = { start: 0, middle: -width / 2, end: -width }[item.anchor ?? 'start'];
  const half = (capHeight * item.size) / 2;
  const turn = ((item.rotate ?? 0) * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const corners: Point[] = [
    [left, -half],
    [left + width, -half],
    [left + width, half],
    [left, half],
  ];
  return corners.map(([x, y]) => [item.at[0] + c * x - s * y, item.at[1] + s * x + c * y]);
}

/** Whether two convex outlines with an area share more than `slack` millimetres in every direction
 * of their edges (separating axes). */
export function outlinesOverlap(a: readonly Point[], b: readonly Point[], slack = 0): boolean {
  return [...normalsOf(a), ...normalsOf(b)].every(([nx, ny]) => {
    const along = (points: readonly Point[]): number[] => points.map(([x, y]) => nx * x + ny * y);
    const [p, q] = [along(a), along(b)];
    const shared =
      Math.min(Math.max(...p), Math.max(...q)) - Math.max(Math.min(...p), Math.min(...q));
    return shared > slack;
  });
}

function normalsOf(points: readonly Point[]): Point[] {
  return points.flatMap((p, i) => {
    const q = points[(i + 1) % points.length] as Point;
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    return length === 0 ? [] : [[(q[1] - p[1]) / length, (p[0] - q[0]) / length] as Point];
  });
}
