// A panel at full size: its true outline, what stands off each side, and what a tape checks it by. Metres and
// radians, seen from outside; x along its first side from the first corner, y into the panel. Panels that
// a level floor cuts have a side on the floor in place of what lies below it.
//
//   ┌╲____________╱┐  blank: the face and, folded out beyond each side, its flange. A flange lies in the
//   │ ╲  face    ╱ │  plane through its side and the sphere's centre; its ends lean in along the lines to
//                     the centre, so that the folded flanges of two sides meet there and don't cross.

import { acos } from '../math/angle.ts';
import { hubPoint, placeNormal } from '../shell/geometry.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import { hubsOf, kindSide, type Shell, sidesOf } from '../shell/shell.ts';
import { framedPanel } from './flat-panel.ts';
import { cornerAngle } from './snap-fit.ts';

/** A point of a panel, metres. */
export type FullPoint = readonly [number, number];

/** One side of a panel at full size. */
export interface FullSide {
  /** Hub to hub, or between the corners that the floor leaves, metres. */
  readonly length: number;
  /** Along the line that sides were measured on, metres; null: unknown, or cut by the floor. */
  readonly measured: number | null;
  /** True where the floor cuts the panel. */
  readonly onFloor: boolean;
  /** Between the face and the flange, inside, radians; on the floor between the face and the floor. */
  readonly flangeAngle: number;
  /** How far a sawn edge leans in from square, radians. */
  readonly bevel: number;
  /** Holes along it; null where nobody counted, or where the floor cuts it. */
  readonly holes: number | null;
  /** Outer edge of the flange in the blank, from above the start of the side to above its end. */
  readonly flange: readonly [FullPoint, FullPoint];
  /** Ends of the hole line, in the middle of the flange. */
  readonly holeLine: readonly [FullPoint, FullPoint];
  /** Middles of the holes, evenly spaced, half a space from the ends of the measured line: common
   * practice, no source. */
  readonly holeAt: readonly FullPoint[];
}

/** A panel at full size. */
export interface FullPanel {
  readonly corners: readonly FullPoint[];
  /** Inside angles, radians. */
  readonly angles: readonly number[];
  readonly sides: readonly FullSide[];
  /** Corners (from 0) and the straight way between them, or from a corner square to a side, metres. */
  readonly checks: readonly {
    readonly from: number;
    readonly to: number;
    readonly square: boolean;
    readonly length: number;
  }[];
  /** Of the face, square metres. */
  readonly area: number;
}

/** What is known of how panels are made. */
export interface FullOptions {
  /** Depth of a flange, metres; 0: none. */
  readonly flange: number;
  /** Hub-to-hub length less the measured side, metres; null: unknown. */
  readonly allowance: number | null;
  /** Kind (index) → its sides → holes along each. */
  readonly holes?: (kind: number) => readonly (number | null)[];
}

/** The panel of a place; `floor`: height of a level floor that cuts it, metres in the shell's axes.
 * Null where the floor leaves nothing of it. */
export function fullPanel(
  shell: Shell,
  place: PlaceId,
  options: FullOptions,
  floor = -Infinity,
): FullPanel | null {
  const { corners: all, foot, height } = framedPanel(shell, place);
  const heights = hubsOf(shell, place).map((hub) => hubPoint(shell, hub)[2]);
  const sides = sidesOf(shell, place);
  const holes = options.holes?.(shell.kind[place] as number) ?? [];
  const kept = aboveFloor(all, heights, floor);
  if (kept.length < 3) return null;
  const start = Math.max(
    0,
    kept.findIndex(({ side }) => side !== null),
  );
  const round = [...kept.slice(start), ...kept.slice(0, start)];
  const [p, q] = [round[0]?.at, round[1]?.at] as [FullPoint, FullPoint];
  const move = alongX(p, q);
  const corners = round.map(({ at }) => move(at));
  const [fx, fy] = move(foot);
  const slope = acos(-placeNormal(shell, place)[2]);
  const angles = corners.map((_, i) => cornerAngle(corners, i));
  return {
    corners,
    angles,
    area: areaOf(corners),
    checks: checksOf(corners),
    sides: round.map(({ side, whole }, i): FullSide => {
      const [a, b] = [corners[i], corners[(i + 1) % corners.length]] as [FullPoint, FullPoint];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
      const from = ux * (fy - a[1]) - uy * (fx - a[0]);
      const flangeAngle = side === null ? Math.PI - slope : Math.atan2(height, from);
      const count =
        side === null || !whole ? null : (holes[kindSide(shell, sides[side] as SideId)] ?? null);
      const inset = Math.max(0, options.allowance ?? 0) / 2;
      const deep = side === null ? 0 : options.flange;
      const reach = Math.hypot(from, height);
      // In the flange's plane the centre is `reach` away square to the side: its ends lean towards it.
      const ends = [a, b].map((end): FullPoint => {
        const along = (fx - end[0]) * ux + (fy - end[1]) * uy;
        const lean = (deep * along) / reach;
        return [end[0] + ux * lean + uy * deep, end[1] + uy * lean - ux * deep];
      }) as [FullPoint, FullPoint];
      const on = (metres: number): FullPoint => [
        a[0] + ux * metres + (uy * deep) / 2,
        a[1] + uy * metres - (ux * deep) / 2,
      ];
      const space = (length - 2 * inset) / (count ?? 1);
      return {
        length,
        measured:
          options.allowance === null || !whole || side === null ? null : length - options.allowance,
        onFloor: side === null,
        flangeAngle,
        bevel: Math.PI / 2 - flangeAngle,
        holes: count,
        flange: ends,
        holeLine: [on(inset), on(length - inset)],
        holeAt: Array.from({ length: count ?? 0 }, (_, n) => on(inset + (n + 0.5) * space)),
      };
    }),
  };
}

interface Kept {
  readonly at: FullPoint;
  /** The panel's side that starts here; null: the side on the floor. */
  readonly side: number | null;
  /** Whether all of that side is left. */
  readonly whole: boolean;
}

/** The corners above the floor, and those where sides meet it. */
function aboveFloor(
  corners: readonly FullPoint[],
  heights: readonly number[],
  floor: number,
): Kept[] {
  const n = corners.length;
  return corners.flatMap((p, i): Kept[] => {
    const j = (i + 1) % n;
    const [q, from, to] = [
      corners[j] as FullPoint,
      (heights[i] as number) - floor,
      (heights[j] as number) - floor,
    ];
    const meet = (): FullPoint => {
      const share = from / (from - to);
      return [p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])];
    };
    if (from >= 0 && to >= 0) return [{ at: p, side: i, whole: true }];
    if (from > 0)
      return [
        { at: p, side: i, whole: false },
        { at: meet(), side: null, whole: false },
      ];
    // A corner on the floor itself begins the side that lies there.
    if (from === 0) return [{ at: p, side: null, whole: false }];
    return to > 0 ? [{ at: meet(), side: i, whole: false }] : [];
  });
}

/** The move that brings p to 0, 0 and q on to +x. */
function alongX([px, py]: FullPoint, [qx, qy]: FullPoint): (point: FullPoint) => FullPoint {
  const length = Math.hypot(qx - px, qy - py);
  const [c, s] = [(qx - px) / length, (qy - py) / length];
  return ([x, y]) => [(x - px) * c + (y - py) * s, -(x - px) * s + (y - py) * c];
}

const areaOf = (corners: readonly FullPoint[]): number =>
  corners.reduce((sum, [x, y], i) => {
    const [u, v] = corners[(i + 1) % corners.length] as FullPoint;
    return sum + (x * v - u * y) / 2;
  }, 0);

/** Of a triangle its heights, of anything else its diagonals. */
function checksOf(corners: readonly FullPoint[]): FullPanel['checks'] {
  const n = corners.length;
  const far = (i: number, j: number): number => {
    const [p, q] = [corners[i], corners[j]] as [FullPoint, FullPoint];
    return Math.hypot(q[0] - p[0], q[1] - p[1]);
  };
  if (n === 3)
    return [2, 0, 1].map((from) => {
      const to = (from + 1) % 3;
      return { from, to, square: true, length: (2 * areaOf(corners)) / far(to, (to + 1) % 3) };
    });
  return corners.flatMap((_, i) =>
    corners.flatMap((__, j) =>
      j > i + 1 && !(i === 0 && j === n - 1)
        ? [{ from: i, to: j, square: false, length: far(i, j) }]
        : [],
    ),
  );
}
