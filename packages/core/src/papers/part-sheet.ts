// What the drawings of single parts share: the caution and the notes above the title block, and points
// between others. Millimetres on paper.

import { group, type Item, type Point, text } from './drawing.ts';
import type { Page } from './page.ts';
import { wrapText } from './text-width.ts';

const SIZE = 2.9;
const STEP = 4.2;

/** The caution and the notes, whole above `foot`; `top`: where they leave off upwards. */
export function footNotes(
  { frame }: Page,
  foot: number,
  caution: string,
  notes: readonly string[],
): { readonly top: number; readonly item: Item } {
  const width = frame.width - 10;
  const warned = wrapText(`Caution. ${caution}`, SIZE, width, true);
  const lines = [...warned, ...notes.flatMap((words) => wrapText(words, SIZE, width))];
  const top = foot - lines.length * STEP - 4;
  const items = lines.map(
    (words, n): Item =>
      text([frame.x + 5, top + 3 + n * STEP], words, SIZE, { bold: n < warned.length }),
  );
  return { top, item: group(items, { part: 'notes' }) };
}

/** The mean of some points. */
export const middleOf = (points: readonly Point[]): Point => [
  points.reduce((sum, [x]) => sum + x, 0) / points.length,
  points.reduce((sum, [, y]) => sum + y, 0) / points.length,
];

/** A point so many millimetres from one towards another, or away from it. */
export function towards([x, y]: Point, [u, v]: Point, by: number): Point {
  const far = Math.hypot(u - x, v - y);
  return far === 0 ? [x, y] : [x + ((u - x) * by) / far, y + ((v - y) * by) / far];
}
