// The shell from the datum side, as an elevation with its height and width: what it will look like
// and how big it is, beside the flat plan. Right on paper is +y, up is +z; only what faces the
// viewer is drawn, darker where it turns away.

import { pointAt, type Vec3 } from '../math/vector.ts';
import { placeNormal } from '../shell/geometry.ts';
import type { PlaceId } from '../shell/ids.ts';
import { hubsOf, placeCount, type Shell } from '../shell/shell.ts';
import { type Box, type Item, line, type Point, polygon, text } from './drawing.ts';
import { type LengthsShown, largeFirst, largeSecond } from './length-text.ts';
import { fittingSize } from './text-width.ts';

/** The elevation within a box under its title, its dimensions below and beside it; nothing where the box is too
 * small to show any (under 30 mm either way) or nothing stands. */
export function elevationItems(
  shell: Shell,
  leftOut: ReadonlySet<number>,
  box: Box,
  shown: LengthsShown,
  title = 'From the datum side',
): Item[] {
  const places = Array.from({ length: placeCount(shell) }, (_, p) => p as PlaceId).filter(
    (p) => !leftOut.has(p),
  );
  if (places.length === 0 || box.width < 30 || box.height < 30) return [];
  const hubs = [...new Set(places.flatMap((p) => hubsOf(shell, p)))].map((h) =>
    pointAt(shell.hubs, h),
  );
  const [left, right] = extent(hubs, 1);
  const [low, high] = extent(hubs, 2);
  const room = { width: box.width - 14, height: box.height - 17 };
  const k = Math.min(room.width / (right - left), room.height / (high - low));
  const at = (p: Vec3): Point => [
    box.x + 12 + (room.width - (right - left) * k) / 2 + (p[1] - left) * k,
    box.y + 7 + (high - p[2]) * k,
  ];
  const facing = places
    .map((p) => ({ p, toward: placeNormal(shell, p)[0] }))
    .filter(({ toward }) => toward > 1e-6)
    .sort((a, b) => a.toward - b.toward || a.p - b.p);
  const faces = facing.map(({ p, toward }) => {
    const outline = hubsOf(shell, p).map((h) => at(pointAt(shell.hubs, h)));
    return polygon(outline, { weight: 'thin' }, { tint: shade(toward), hatch: null });
  });
  const corner = { left: at([0, left, low]), right: at([0, right, high]) };
  return [
    text([box.x, box.y + 2], title, 3.2, { bold: true }),
    ...faces,
    ...widthItems(corner.left[0], corner.right[0], corner.left[1] + 4.5, right - left, shown),
    ...heightItems(box.x + 6, corner.right[1], corner.left[1], high - low, shown),
  ];
}

const dimension = { weight: 'hair' } as const;

function widthItems(
  x1: number,
  x2: number,
  y: number,
  metres: number,
  shown: LengthsShown,
): Item[] {
  const words = both(metres, shown);
  const size = fittingSize(words, 2.6, 1.8, x2 - x1 + 8) ?? 1.8;
  return [
    line([x1, y], [x2, y], dimension),
    ...[x1, x2].flatMap((x) => [line([x, y - 3], [x, y + 1], dimension), slash([x, y])]),
    text([(x1 + x2) / 2, y + 2.6], words, size, { anchor: 'middle' }),
  ];
}

function heightItems(
  x: number,
  top: number,
  foot: number,
  metres: number,
  shown: LengthsShown,
): Item[] {
  const words = both(metres, shown);
  const size = fittingSize(words, 2.6, 1.8, foot - top + 8) ?? 1.8;
  const middle = (top + foot) / 2;
  return [
    line([x, top], [x, foot], dimension),
    ...[top, foot].flatMap((y) => [line([x - 1, y], [x + 3, y], dimension), slash([x, y])]),
    text([x - 2.6, middle], words, size, { anchor: 'middle', rotate: -90 }),
  ];
}

/** The short stroke that ends a dimension line. */
const slash = ([x, y]: Point): Item =>
  line([x - 0.9, y + 0.9], [x + 0.9, y - 0.9], { weight: 'light' });

const both = (metres: number, shown: LengthsShown): string =>
  `${largeFirst(metres, shown)} (${largeSecond(metres, shown)})`;

/** Paper white where a panel faces the viewer, pale grey where it turns away. */
function shade(toward: number): string {
  const level = Math.round(0xdc + (0xff - 0xdc) * Math.min(1, toward));
  return `#${level.toString(16).repeat(3)}`;
}

function extent(points: readonly Vec3[], axis: 1 | 2): [number, number] {
  const values = points.map((p) => p[axis]);
  return [Math.min(...values), Math.max(...values)];
}
