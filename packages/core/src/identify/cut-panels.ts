// What the ground leaves of a panel: some of its corners, the sides between them, a piece of the side
// on either hand, and one new side, the cut. A cut panel thus fits a whole one where its full sides are
// as long as that one's and its cut is as long as the two pieces leave it in the plane. Metres.

import type { Kind } from '../pile/kind.ts';
import { cyclicPolygon } from '../sphere/cyclic.ts';
import { FINEST_SD } from './side-belief.ts';

/** How a panel may have been cut from a whole one. Sides and corners count from 0; corner i is where
 * side i starts. */
export interface CutFit {
  /** Kind (index) that it was cut from. */
  readonly from: number;
  /** The first corner of that kind that is left, and the last. */
  readonly first: number;
  readonly last: number;
  /** The side of the cut panel that is the cut. */
  readonly cutSide: number;
  /** What is left of the side that ends in the first corner, and of the one that starts at the last. */
  readonly before: number;
  readonly after: number;
}

/** Lengths agree within this many deviations of their difference. */
const AGREE = 3.5;
/** At least so much of a side must have been cut off, in parts of it. */
const LEAST_OFF = 0.02;

type Sided = Pick<Kind, 'sides' | 'sideSds'>;

const lengthOf = ({ sides }: Sided, i: number): number => sides[i % sides.length] as number;
const sdOf = ({ sideSds }: Sided, i: number): number =>
  Math.max(sideSds[i % sideSds.length] as number, FINEST_SD);

/** All ways in which `cut` may have been cut from `whole`, the kind with index `from`. */
export function cutFits(cut: Sided, whole: Sided, from: number): CutFit[] {
  const left = cut.sides.length - 2;
  if (left < 1 || left >= whole.sides.length) return [];
  const corners = cornersOf(whole.sides);
  if (!corners) return [];
  return cut.sides.flatMap((_, cutSide) =>
    whole.sides.flatMap((_, first): CutFit[] => {
      const last = (first + left - 1) % whole.sides.length;
      const fit = {
        from,
        first,
        last,
        cutSide,
        before: lengthOf(cut, cutSide + 1),
        after: lengthOf(cut, cutSide + 1 + left),
      };
      return isFit(cut, whole, corners, fit) ? [fit] : [];
    }),
  );
}

function isFit(
  cut: Sided,
  whole: Sided,
  corners: readonly Point[],
  { first, last, cutSide, before, after }: CutFit,
): boolean {
  const n = whole.sides.length;
  const left = cut.sides.length - 2;
  if (before > (1 - LEAST_OFF) * lengthOf(whole, first + n - 1)) return false;
  if (after > (1 - LEAST_OFF) * lengthOf(whole, last)) return false;
  for (let i = 0; i + 1 < left; i++) {
    const [own, its] = [cutSide + 2 + i, first + i];
    const off = lengthOf(cut, own) - lengthOf(whole, its);
    if (Math.abs(off) > AGREE * Math.hypot(sdOf(cut, own), sdOf(whole, its))) return false;
  }
  const a = along(corners, first, first + n - 1, before);
  const b = along(corners, last, last + 1, after);
  const off = Math.hypot(a[0] - b[0], a[1] - b[1]) - lengthOf(cut, cutSide);
  const sd = Math.hypot(
    ...cut.sides.map((_, i) => sdOf(cut, i)),
    ...whole.sides.map((_, i) => 0.5 * sdOf(whole, i)),
  );
  return Math.abs(off) <= AGREE * sd;
}

type Point = readonly [number, number];

/** The point `by` metres from one corner towards another. */
function along(corners: readonly Point[], from: number, to: number, by: number): Point {
  const [a, b] = [corners[from] as Point, corners[to % corners.length] as Point];
  const share = by / Math.hypot(b[0] - a[0], b[1] - a[1]);
  return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
}

/** The corners of a flat panel; null where the sides make none. */
function cornersOf(sides: readonly number[]): Point[] | null {
  const polygon = cyclicPolygon(sides);
  if (!polygon.ok) return null;
  const { circumradius: r, halfAngles } = polygon;
  let angle = 0;
  return sides.map((_, i) => {
    const at: Point = [r * Math.cos(angle), r * Math.sin(angle)];
    angle += 2 * (halfAngles[i] as number);
    return at;
  });
}
