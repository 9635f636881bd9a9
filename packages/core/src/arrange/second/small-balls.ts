// Small whole shells out of panels that are left: closed on themselves, of one kind of triangle each. Of an
// equilateral kind the solids of 4, 8 and 20 such faces; of one with two like sides two pyramids base to
// base. Their seams bend otherwise than those of the shell that the panels were made for, so each says by
// how much a pair of flanges is off.
//
// Angles of the solids: H. S. M. Coxeter, Regular Polytopes, table I, from memory.

import { acos } from '../../math/angle.ts';
import type { Kind } from '../../pile/kind.ts';
import { flangeAngles } from '../../sphere/flange.ts';
import { polygonOnSphere } from '../../sphere/polygon.ts';
import { EQUAL_SIDE, EQUAL_SIDE_Z } from '../tolerances.ts';

/** A small whole shell. */
export interface SmallBall {
  /** Kind (id) that it is made of. */
  readonly kind: string;
  readonly panels: number;
  /** `regular`: of 4, 8 or 20 equilateral panels; `pyramids`: two of half as many, base to base. */
  readonly shape: 'regular' | 'pyramids';
  /** Standing on a face (regular), or on one tip (pyramids), metres. */
  readonly height: number;
  /** Largest distance between two hubs, metres. */
  readonly across: number;
  /** Panels that must be got besides what is left. */
  readonly lacks: number;
  /** Largest amount by which a seam bends otherwise than the flanges of its two panels are made for,
   * radians. */
  readonly flangesOff: number;
}

/** What may be asked of small whole shells. */
export interface SmallBallOptions {
  /** Panels that one would get for it, at most; 2 unless told. */
  readonly mostLacking?: number;
  /** Amount by which flanges may be off at a seam, radians; 0.6 (34°) unless told. */
  readonly mostOff?: number;
}

/** Flanges that are further off than this can't be bent to it: our own judgement, no source. */
const MOST_OFF = 0.6;

/** The small whole shells of the kinds that are left (kind → good panels), those that lack nothing
 * first, then the largest. `radius`: of the shell that the panels are made for; sides as fitted. */
export function smallBalls(
  kinds: readonly Kind[],
  left: readonly number[],
  radius: number,
  { mostLacking = 2, mostOff = MOST_OFF }: SmallBallOptions = {},
): SmallBall[] {
  return kinds
    .flatMap((kind, k) => {
      if (kind.sides.length !== 3) return [];
      const own = isEquilateral(kind) ? regularBalls(kind) : doublePyramids(kind);
      const made = flangesOf(kind, radius);
      return own.flatMap(({ seams, ...ball }): SmallBall[] => {
        const lacks = Math.max(0, ball.panels - (left[k] as number));
        if (lacks > mostLacking || made === null) return [];
        const flangesOff = Math.max(
          ...seams.map(({ side, angle }) => Math.abs(angle - 2 * (made[side] as number))),
        );
        return flangesOff <= mostOff ? [{ ...ball, kind: kind.id, lacks, flangesOff }] : [];
      });
    })
    .sort((a, b) => a.lacks - b.lacks || b.height - a.height);
}

/** A ball with the angle between panels at each sort of seam. */
interface Ball extends Omit<SmallBall, 'kind' | 'lacks' | 'flangesOff'> {
  /** Side of the kind on either side of the seam, and the angle inside between the panels. */
  readonly seams: readonly { readonly side: number; readonly angle: number }[];
}

function regularBalls({ sides }: Kind): Ball[] {
  const side = sides.reduce((sum, own) => sum + own, 0) / 3;
  const golden = (1 + Math.sqrt(5)) / 2;
  const solids: readonly (readonly [
    panels: number,
    height: number,
    across: number,
    angle: number,
  ])[] = [
    [4, Math.sqrt(2 / 3), 1, Math.acos(1 / 3)],
    [8, Math.sqrt(2 / 3), Math.sqrt(2), Math.acos(-1 / 3)],
    [
      20,
      golden ** 2 / Math.sqrt(3),
      Math.sqrt(golden * Math.sqrt(5)),
      Math.acos(-Math.sqrt(5) / 3),
    ],
  ];
  return solids.map(([panels, height, across, angle]) => ({
    panels,
    shape: 'regular' as const,
    height: height * side,
    across: across * side,
    seams: [0, 1, 2].map((own) => ({ side: own, angle })),
  }));
}

/** Two pyramids of 3 to 6 panels with their bases together, where the panels' tips fit around a point. */
function doublePyramids(kind: Kind): Ball[] {
  const base = oddSide(kind);
  if (base === null) return [];
  const length = kind.sides[base] as number;
  const leg = ((kind.sides[(base + 1) % 3] as number) + (kind.sides[(base + 2) % 3] as number)) / 2;
  return [3, 4, 5, 6].flatMap((n): Ball[] => {
    const ring = length / (2 * Math.sin(Math.PI / n));
    if (ring >= leg * FLATTEST) return [];
    const tip = Math.sqrt(leg ** 2 - ring ** 2);
    const inner = length / (2 * Math.tan(Math.PI / n));
    const slope = Math.atan2(tip, inner);
    // Outward normals of two faces next to each other: sin of the slope level, cosine up.
    const between = Math.sin(slope) ** 2 * Math.cos((2 * Math.PI) / n) + Math.cos(slope) ** 2;
    const legSeam = Math.PI - acos(between);
    return [
      {
        panels: 2 * n,
        shape: 'pyramids',
        height: 2 * tip,
        across: Math.max(2 * tip, n === 3 ? length : n === 5 ? length * GOLDEN : 2 * ring),
        seams: [
          { side: base, angle: 2 * slope },
          { side: (base + 1) % 3, angle: legSeam },
          { side: (base + 2) % 3, angle: legSeam },
        ],
      },
    ];
  });
}

const GOLDEN = (1 + Math.sqrt(5)) / 2;
/** A pyramid whose base ring is as wide as this part of its legs is as good as flat. */
const FLATTEST = 0.98;

const isEquilateral = (kind: Kind): boolean =>
  isLike(kind, 0, 1) && isLike(kind, 1, 2) && isLike(kind, 2, 0);

/** The side that is unlike the two others, which are alike; null for none. */
function oddSide(kind: Kind): number | null {
  const base = [0, 1, 2].find((i) => isLike(kind, (i + 1) % 3, (i + 2) % 3));
  return base ?? null;
}

function isLike({ sides, sideSds }: Kind, i: number, j: number): boolean {
  const [a, b] = [sides[i] as number, sides[j] as number];
  const sd = Math.hypot(sideSds[i] as number, sideSds[j] as number);
  return Math.abs(a - b) <= EQUAL_SIDE_Z * sd + EQUAL_SIDE * Math.max(a, b);
}

/** Side → flange angle in the shell that the panel was made for; null for no panel on that sphere. */
function flangesOf({ sides }: Kind, radius: number): readonly number[] | null {
  const polygon = polygonOnSphere(sides, radius);
  return polygon.ok ? flangeAngles(polygon, radius).angles : null;
}
