// An outline cut into convex parts: itself where it has no inward corner, else triangles, one ear after
// the other (ear clipping, G. H. Meisters, 1975, from memory).

import type { ViewPoint } from './passing.ts';

/** The parts of a simple outline, each anticlockwise as it is. RangeError where it crosses itself or
 * runs clockwise, so that no ear is left. */
export function convexParts(outline: readonly ViewPoint[]): (readonly ViewPoint[])[] {
  const isConvex = outline.every((_, i) => turnAt(outline, i) >= 0);
  if (isConvex) return [outline];
  const fault = `outline: found ${outline.length} points that cross or run clockwise, expected an anticlockwise outline`;
  let rest = outline;
  const parts: (readonly ViewPoint[])[] = [];
  while (rest.length > 3) {
    const ring = rest;
    const ear = ring.findIndex((_, i) => isEar(ring, i));
    if (ear < 0) throw new RangeError(fault);
    parts.push([at(ring, ear - 1), at(ring, ear), at(ring, ear + 1)]);
    rest = ring.filter((_, i) => i !== ear);
  }
  if (areaOf(rest) < 0) throw new RangeError(fault);
  return [...parts, rest].filter((part) => areaOf(part) > 0);
}

const at = (ring: readonly ViewPoint[], i: number): ViewPoint =>
  ring[(i + ring.length) % ring.length] as ViewPoint;

/** Twice the area at a corner: more than 0 where it turns left. */
function turnAt(ring: readonly ViewPoint[], i: number): number {
  return areaOf([at(ring, i - 1), at(ring, i), at(ring, i + 1)]);
}

/** Twice the area, anticlockwise positive. */
export const areaOf = (ring: readonly ViewPoint[]): number =>
  ring.reduce((sum, [u, v], i) => {
    const [x, y] = at(ring, i + 1);
    return sum + u * y - x * v;
  }, 0);

/** Whether a corner can be cut off: it turns left or goes straight on, and no other lies in it or on the
 * cut. */
function isEar(ring: readonly ViewPoint[], i: number): boolean {
  const ear = [at(ring, i - 1), at(ring, i), at(ring, i + 1)];
  const area = areaOf(ear);
  if (area <= 0) return area === 0;
  return !ring.some(
    (point) => !ear.includes(point) && ear.every((a, k) => areaOf([a, at(ear, k + 1), point]) >= 0),
  );
}
