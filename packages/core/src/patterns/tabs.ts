// Tabs of a net: every seam that is cut gets one, on whichever of its two sides there is room for it,
// clear of every panel and every other tab of its piece. A seam where neither side has room (a slit
// that hardly opens) is closed with tape from behind, and said to be. Whole micrometres.
//
//        ____________        The ends slope by one or two heights, so that a tab also fits into
//       /            \       a wedge of 45° or 27° between two sides.
//      ———— side ———————

import type { SideId } from '../shell/ids.ts';
import type { Shell } from '../shell/shell.ts';
import { boundsOf, convexOverlap, type GridPoint, onGrid } from './grid.ts';
import type { Growing } from './grow.ts';

/** A tab: it goes under the panel on the other face of its seam. */
export interface NetTab {
  /** The side that it hangs on. */
  readonly side: SideId;
  /** Anticlockwise; the first two are the ends of the side, from its end to its start. */
  readonly corners: readonly GridPoint[];
  /** How far it reaches, micrometres. */
  readonly height: number;
}

/** The tabs of a net. */
export interface NetTabs {
  /** Piece → its tabs. */
  readonly tabs: readonly (readonly NetTab[])[];
  /** Cut seams (their lower side) without a tab: to be taped. */
  readonly taped: readonly SideId[];
}

interface Candidate extends NetTab {
  readonly piece: number;
  readonly box: readonly [number, number, number, number];
}

/** Slopes of the two ends and part of the full height, in the order they are tried. */
const shapes = [
  [1, 1, 1],
  [2, 1, 1],
  [1, 2, 1],
  [2, 2, 1],
  [2, 2, 0.6],
] as const;
/** A tab keeps at least this part of its side as its far edge. */
const FAR_EDGE = 0.2;

/** Tabs of `height` micrometres for all cut seams of the pieces. Seams with the fewest ways come first;
 * where several are open the first shape is taken. Not shown to leave the fewest to tape. */
export function netTabs(shell: Shell, pieces: readonly Growing[], height: number): NetTabs {
  const where = new Map<number, readonly [number, readonly GridPoint[]]>();
  const folded = new Set<number>();
  pieces.forEach(({ laid }, i) => {
    for (const { place, corners, against } of laid) {
      where.set(place, [i, corners]);
      if (against !== null) folded.add(against).add(shell.mate[against] as number);
    }
  });
  const ways: (readonly [SideId, readonly Candidate[]])[] = [];
  for (let m = 0; m < shell.seams.length; m += 2) {
    const sides = [shell.seams[m], shell.seams[m + 1]] as [number, number];
    if (folded.has(sides[0])) continue;
    if (!sides.every((s) => where.has(shell.sidePlace[s] as number))) continue;
    const found = shapes.flatMap((shape) =>
      sides.flatMap((s) => candidate(shell, pieces, where, s, height, shape)),
    );
    ways.push([sides[0] as SideId, found]);
  }
  const tabs: Candidate[][] = pieces.map(() => []);
  const taped: SideId[] = [];
  for (const [side, list] of [...ways].sort((a, b) => a[1].length - b[1].length || a[0] - b[0])) {
    const free = list.find(
      (one) => !(tabs[one.piece] as Candidate[]).some((other) => overlap(one, other)),
    );
    if (free) (tabs[free.piece] as Candidate[]).push(free);
    else taped.push(side);
  }
  return {
    tabs: tabs.map((list) => list.map(({ side, corners, height }) => ({ side, corners, height }))),
    taped: taped.sort((a, b) => a - b),
  };
}

const overlap = (a: Candidate, b: Candidate): boolean =>
  a.box[0] < b.box[2] &&
  b.box[0] < a.box[2] &&
  a.box[1] < b.box[3] &&
  b.box[1] < a.box[3] &&
  convexOverlap(a.corners, b.corners);

function candidate(
  shell: Shell,
  pieces: readonly Growing[],
  where: ReadonlyMap<number, readonly [number, readonly GridPoint[]]>,
  side: number,
  full: number,
  [startSlope, endSlope, part]: readonly [number, number, number],
): Candidate[] {
  const place = shell.sidePlace[side] as number;
  const [piece, own] = where.get(place) as readonly [number, readonly GridPoint[]];
  const i = side - (shell.placeStart[place] as number);
  const [from, to] = [own[i], own[(i + 1) % own.length]] as [GridPoint, GridPoint];
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const slopes = startSlope + endSlope;
  const height = Math.min(full * part, (length * (1 - FAR_EDGE)) / slopes);
  if (height < full * 0.4) return [];
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const [near, far] = [startSlope * height, length - endSlope * height];
  const corners = [
    to,
    from,
    onGrid(from[0] + ux * near + uy * height, from[1] + uy * near - ux * height),
    onGrid(from[0] + ux * far + uy * height, from[1] + uy * far - ux * height),
  ];
  const one: Candidate = { side: side as SideId, corners, height, piece, box: boundsOf(corners) };
  const { laid, boxes } = pieces[piece] as Growing;
  const hit = laid.some((other, n) => {
    const box = boxes[n] as Candidate['box'];
    return (
      one.box[0] < box[2] &&
      box[0] < one.box[2] &&
      one.box[1] < box[3] &&
      box[1] < one.box[3] &&
      convexOverlap(corners, other.corners)
    );
  });
  return hit ? [] : [one];
}
