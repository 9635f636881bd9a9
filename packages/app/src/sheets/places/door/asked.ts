// What an opening is asked for: a door, a round hatch, or a thing's section, as it is typed. Metres; a
// section's corners across and up from the floor, anticlockwise and about their middle.

import { areaOf, convexParts, type LengthUnit, readLength, type ViewPoint } from '@shellraise/core';
import type { OpeningAsked } from '../../../engine/openings.ts';
import type { Typed } from '../../../ui/use-typed.ts';

/** What may be asked for. */
export type AskedAs = OpeningAsked['as'];

/** Corners of a section at most; lengths of one up to this, metres. */
const SECTION = { corners: 24, most: 50 } as const;

/** A hatch's diameter, metres. */
export const HATCH = { least: 0.1, most: 20 } as const;

/** A section as people type it: `across, up; across, up; …`; a bare number is in `unit`. */
export function readSection(text: string, unit: LengthUnit): Typed<readonly ViewPoint[]> {
  const parts = text
    .split(';')
    .map((part) => part.trim())
    .filter((part) => part !== '');
  const points = parts.map((part): ViewPoint | null => {
    const [across, up, more] = part.split(',').map((one) => lengthOf(one, unit));
    return across != null && up != null && more === undefined ? [across, up] : null;
  });
  const known = points.filter((point) => point !== null);
  if (known.length !== parts.length || known.length < 3 || known.length > SECTION.corners)
    return { ok: false };
  const { middle } = spans(known);
  const about = known.map(([u, v]): ViewPoint => [u - middle, v]);
  const outline = areaOf(about) < 0 ? about.reverse() : about;
  return isOutline(outline) ? { ok: true, value: outline } : { ok: false };
}

function lengthOf(text: string, unit: LengthUnit): number | null {
  const plain = text.trim();
  const sign = /^[-−]/.test(plain) ? -1 : 1;
  const read = readLength(plain.replace(/^[-−+]/, ''), { unit });
  return read.ok && read.value <= SECTION.most ? sign * read.value : null;
}

/** Whether corners enclose an area, stand on or over the floor and do not cross each other's sides. */
function isOutline(outline: readonly ViewPoint[]): boolean {
  if (!(areaOf(outline) > 1e-6) || outline.some(([, up]) => up < 0)) return false;
  try {
    return convexParts(outline).length > 0;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

/** Width, height and the middle across of corners. */
export function spans(points: readonly ViewPoint[]): {
  readonly width: number;
  readonly height: number;
  readonly middle: number;
} {
  const across = points.map(([u]) => u);
  const up = points.map(([, v]) => v);
  const [left, right] = [Math.min(...across), Math.max(...across)];
  return {
    width: right - left,
    height: Math.max(...up) - Math.min(...up),
    middle: (left + right) / 2,
  };
}
