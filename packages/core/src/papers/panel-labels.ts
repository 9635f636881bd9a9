// A label for every panel of a standing shell: its number huge, its kind and hand, how it stands in its
// place with an arrow up, and a QR code that the Record reads. As stuck on the outside, arrow up.

import { cross, dot, normalize, pointAt, scale, subtract, type Vec3 } from '../math/vector.ts';
import type { Kind } from '../pile/kind.ts';
import { placeCentre, placeNormal } from '../shell/geometry.ts';
import type { PlaceId } from '../shell/ids.ts';
import { hubsOf, placeCount, type Shell } from '../shell/shell.ts';
import { codeItem, codeModules } from './code-item.ts';
import {
  type Box,
  type Drawing,
  type Item,
  inked,
  line,
  type Point,
  polygon,
  type TextItem,
} from './drawing.ts';
import { handWords } from './kind-words.ts';
import { type LabelDrawn, labelSheets, lineIn, wordsIn } from './label-sheets.ts';
import type { LabelStock } from './label-stock.ts';

/** What is read at arm's length is 18 pt at least, millimetres. */
export const ARM_LENGTH_TYPE = 6.35;

/** Options of `panelLabelSheets`. */
export interface PanelLabelOptions {
  /** Places left out on purpose, by index. */
  readonly leftOut?: readonly number[];
  /** Place → tag of the panel that is to go there: its code then says the tag, else the number. */
  readonly tags?: ReadonlyMap<number, string>;
  /** Labels of the first sheet that are used already. */
  readonly skip?: number;
}

/** A label for every place, courses upwards. RangeError where they don't fit the label sheet. */
export function panelLabelSheets(
  shell: Shell,
  numbers: readonly string[],
  kinds: readonly Kind[],
  project: string,
  stock: LabelStock,
  options: PanelLabelOptions = {},
): Drawing[] {
  const leftOut = new Set(options.leftOut ?? []);
  const labels = Array.from({ length: placeCount(shell) }, (_, p) => p)
    .filter((p) => !leftOut.has(p))
    .sort((a, b) => byNumber(numbers[a] as string, numbers[b] as string))
    .map((p): LabelDrawn => {
      const number = numbers[p] as string;
      const kind = kinds[shell.kind[p] as number] as Kind;
      const tag = options.tags?.get(p) ?? null;
      const outline = standingOutline(shell, p as PlaceId);
      return { name: number, draw: (box) => drawn(box, number, kind, tag, project, outline) };
    });
  return labelSheets(labels, stock, `${project}: panel labels`, options.skip ?? 0);
}

/** Orders names by the numbers in them, `3-07` before `3-10`. */
export function byNumber(a: string, b: string): number {
  const [p, q] = [a, b].map((name) => name.replace(/\d+/g, (digits) => digits.padStart(8, '0')));
  return (p as string) < (q as string) ? -1 : p === q ? 0 : 1;
}

/** A place's corners as seen from outside with up on the sheet up (y down), in metres about its middle;
 * a level place with the datum up. */
export function standingOutline(shell: Shell, place: PlaceId): Point[] {
  const normal = placeNormal(shell, place);
  const aim: Vec3 = Math.abs(normal[2]) > 0.9999 ? [1, 0, 0] : [0, 0, 1];
  const up = normalize(subtract(aim, scale(normal, dot(aim, normal))));
  const right = cross(up, normal);
  const centre = placeCentre(shell, place);
  return hubsOf(shell, place).map((hub) => {
    const from = subtract(pointAt(shell.hubs, hub), centre);
    return [dot(from, right), -dot(from, up)] as const;
  });
}

function drawn(
  box: Box,
  number: string,
  kind: Kind,
  tag: string | null,
  project: string,
  outline: readonly Point[],
): Item[] | null {
  const modules = codeModules(tag ?? number);
  const codeSide = Math.min(box.height, box.width * 0.36, 30);
  const right = box.x + box.width - codeSide;
  const code =
    modules && codeItem(modules, { x: right, y: box.y, width: codeSide, height: codeSide });
  const wide = box.width - codeSide - 2;
  const head = lineIn(
    number,
    { x: box.x, y: box.y, width: wide, height: box.height * 0.44 },
    ARM_LENGTH_TYPE,
  );
  if (code === null || head === null) return null;
  const below = box.y + box.height * 0.48;
  const room = box.y + box.height - below;
  const side = Math.min(room, wide * 0.4);
  const x = box.x + side + 2;
  const words = { x, y: below, width: wide - side - 2, height: room };
  const big = Math.min(8, Math.max(3.6, box.height * 0.14));
  const lines: TextItem[] = [];
  let used = 0;
  for (const [said, size, least, more] of [
    [`Kind ${kind.id}`, big, 2.4, { bold: true }],
    [kind.hand === null ? '' : handWords(kind), big * 0.7, 2, { bold: true }],
    [tag === null ? project : `${project}, tag ${tag}`, big * 0.55, 1.7, { ink: 'grey' }],
  ] as const) {
    const part = { ...words, y: below + used, height: room - used };
    const drawn = wordsIn(said, part, size, least, more);
    if (drawn === null) return null;
    lines.push(...drawn.items);
    used += drawn.height;
  }
  return [
    code,
    { ...head, at: [box.x, head.at[1]], anchor: 'start' },
    ...standing({ x: box.x, y: below, width: side, height: room }, outline),
    ...lines,
  ];
}

/** The panel as it stands, with an arrow up. */
function standing(box: Box, outline: readonly Point[]): Item[] {
  const [xs, ys] = [outline.map((p) => p[0]), outline.map((p) => p[1])];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [wide, high] = [Math.max(...xs) - left, Math.max(...ys) - top];
  const k = Math.min(box.width / wide, box.height / high);
  const dx = box.x + (box.width - wide * k) / 2;
  const dy = box.y + (box.height - high * k) / 2;
  const corners = outline.map(([x, y]): Point => [dx + (x - left) * k, dy + (y - top) * k]);
  const cx = corners.reduce((sum, p) => sum + p[0], 0) / corners.length;
  const cy = corners.reduce((sum, p) => sum + p[1], 0) / corners.length;
  const a = Math.min(wide, high) * k * 0.2;
  return [
    polygon(corners, { weight: 'light' }),
    line([cx, cy + a], [cx, cy - a * 0.3], { weight: 'heavy' }),
    polygon(
      [
        [cx, cy - a],
        [cx - a * 0.55, cy - a * 0.1],
        [cx + a * 0.55, cy - a * 0.1],
      ],
      null,
      inked,
    ),
  ];
}
