// What an independent reader (npm jsqr 1.4.0, Apache-2.0) reads in the QR codes of a drawing, painted at
// twelve points a millimetre: the resolution of an old phone a hand's breadth away.

import jsqr from 'jsqr';
import {
  type Drawing,
  type GroupItem,
  type Item,
  inked,
  type PathItem,
} from '../../src/papers/drawing.ts';

type Reader = (
  points: Uint8ClampedArray,
  width: number,
  height: number,
) => { readonly data: string } | null;
/** Its types say that the module is the namespace. */
const read = ((jsqr as unknown as { default?: Reader }).default ?? jsqr) as Reader;

/** The codes of a drawing. */
export const codesOf = (items: readonly Item[]): GroupItem[] =>
  items.flatMap((item) =>
    item.type !== 'group' ? [] : item.data?.part === 'code' ? [item] : codesOf(item.items),
  );

/** The text of a code; null where it can't be read. */
export function readCode(code: GroupItem, perMillimetre = 12): string | null {
  const bars = code.items as readonly PathItem[];
  const [x0, y0, x1] = edges(bars[0] as PathItem);
  const size = Math.round((x1 - x0) * perMillimetre);
  const points = new Uint8ClampedArray(4 * size * size).fill(255);
  for (const bar of bars.filter((one) => one.fill?.tint === inked.tint)) {
    const [a, b, c, d] = edges(bar);
    const at = (v: number, from: number): number => Math.round((v - from) * perMillimetre);
    for (let y = at(b, y0); y < at(d, y0); y++)
      for (let x = at(a, x0); x < at(c, x0); x++)
        points.fill(0, 4 * (y * size + x), 4 * (y * size + x) + 3);
  }
  return read(points, size, size)?.data ?? null;
}

/** What all codes of a drawing say. */
export const readCodes = (drawing: Drawing, perMillimetre = 12): (string | null)[] =>
  codesOf(drawing.items).map((code) => readCode(code, perMillimetre));

/** Left, top, right, bottom. */
export function edges({ points }: PathItem): [number, number, number, number] {
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}
