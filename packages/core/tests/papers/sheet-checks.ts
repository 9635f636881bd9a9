// What every sheet must keep: words that neither overlap nor leave the sheet, and drawing that
// stays on the paper. Widths of words by the faces that the PDFs carry.

import { type Drawing, flatItems, type Point, type TextItem } from '../../src/papers/drawing.ts';
import { outlinesOverlap, textCorners } from '../../src/papers/text-box.ts';

const textsOf = (drawing: Drawing): TextItem[] =>
  flatItems(drawing.items).filter((item) => item.type === 'text');

/** Pairs of words that overlap, as `one / other`. */
export function overlaps(drawing: Drawing): string[] {
  const boxes = textsOf(drawing).map((item) => {
    const corners = textCorners(item);
    const [xs, ys] = [corners.map((p) => p[0]), corners.map((p) => p[1])];
    return {
      words: item.text,
      corners,
      left: Math.min(...xs),
      right: Math.max(...xs),
      top: Math.min(...ys),
      bottom: Math.max(...ys),
    };
  });
  const found: string[] = [];
  boxes.forEach((a, i) => {
    for (const b of boxes.slice(i + 1)) {
      if (a.left > b.right || b.left > a.right || a.top > b.bottom || b.top > a.bottom) continue;
      if (outlinesOverlap(a.corners, b.corners, 0.05)) found.push(`${a.words} / ${b.words}`);
    }
  });
  return found;
}

/** Words and shapes that leave the sheet, as a list of what they are. */
export function outside(drawing: Drawing): string[] {
  const off = ([x, y]: Point): boolean =>
    !(x >= 0 && y >= 0 && x <= drawing.width && y <= drawing.height);
  return flatItems(drawing.items).flatMap((item) => {
    if (item.type === 'text') return textCorners(item).some(off) ? [item.text] : [];
    if (item.type === 'path') return item.points.some(off) ? ['path'] : [];
    const [x, y] = item.centre;
    const r = item.radius;
    return off([x - r, y - r]) || off([x + r, y + r]) ? ['circle'] : [];
  });
}

/** The smallest type on the sheet, millimetres. */
export const smallestType = (drawing: Drawing): number =>
  Math.min(...textsOf(drawing).map((item) => item.size));
