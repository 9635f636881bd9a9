// One flat piece of a net, grown panel by panel: each new panel is laid against a side of one that is
// there, as long as it lies on none of them and the piece still fits its room in some direction. What
// joins the panels is a tree, so a piece always folds up. Whole micrometres, seen from outside.

import { toRadians } from '../math/angle.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import type { Shell } from '../shell/shell.ts';
import { type FlatPanel, flatPanel, laidAgainst } from './flat-panel.ts';
import { boundsOf, convexOverlap, type GridPoint, MICRON, onGrid } from './grid.ts';

/** A panel of a piece where it lies. */
export interface LaidPlace {
  readonly place: PlaceId;
  /** Corner i is where its side i starts, anticlockwise. */
  readonly corners: readonly GridPoint[];
  /** The side of another panel of the piece that it was laid against; null for the first. */
  readonly against: SideId | null;
}

/** What pieces are grown from. */
export interface NetGround {
  readonly shell: Shell;
  /** Place → its panel laid flat, micrometres at scale. */
  readonly panels: readonly FlatPanel[];
  /** Width and height that a piece may have, micrometres, either way round. */
  readonly room: readonly [number, number];
}

/** A piece while it grows. */
export interface Growing {
  readonly laid: LaidPlace[];
  readonly boxes: (readonly [number, number, number, number])[];
  /** Direction (in steps of `TURN`) → least and greatest reach along it. */
  readonly least: Float64Array;
  readonly most: Float64Array;
}

/** Steps in which a piece is turned to see whether it fits, degrees. */
const TURN = 5;
const directions = Array.from({ length: 180 / TURN }, (_, i) => {
  const angle = toRadians(i * TURN);
  return [Math.cos(angle), Math.sin(angle)] as const;
});

/** The ground of a shell at 1 : `scale`; room in millimetres. */
export const netGround = (
  shell: Shell,
  scale: number,
  room: readonly [number, number],
): NetGround => ({
  shell,
  panels: Array.from({ length: shell.placeStart.length - 1 }, (_, p) =>
    flatPanel(shell, p as PlaceId, (1e3 * MICRON) / scale),
  ),
  room: [room[0] * MICRON, room[1] * MICRON],
});

/** A piece of one panel; null where it alone is too large for the room. */
export function firstPlace(ground: NetGround, place: PlaceId): Growing | null {
  const piece: Growing = {
    laid: [],
    boxes: [],
    least: new Float64Array(directions.length).fill(Infinity),
    most: new Float64Array(directions.length).fill(-Infinity),
  };
  const corners = (ground.panels[place] as FlatPanel).map(([x, y]) => onGrid(x, y));
  return accept(ground, piece, { place, corners, against: null }) ? piece : null;
}

/** Lays the panel beyond `side` (of a panel of the piece) against it; false, and nothing done, where it
 * would lie on another or the piece would no longer fit. */
export function growAcross(ground: NetGround, piece: Growing, side: SideId): boolean {
  const { shell, panels } = ground;
  const mate = shell.mate[side] as number;
  const place = shell.sidePlace[mate] as PlaceId;
  const own = shell.sidePlace[side] as number;
  const { corners: near } = piece.laid.find((one) => one.place === own) as LaidPlace;
  const s = side - (shell.placeStart[own] as number);
  const [from, to] = [near[s], near[(s + 1) % near.length]] as [GridPoint, GridPoint];
  const first = shell.placeStart[place] as number;
  const corners = laidAgainst(panels[place] as FlatPanel, mate - first, to, from);
  const box = boundsOf(corners);
  for (let i = 0; i < piece.laid.length; i++) {
    const other = piece.boxes[i] as readonly number[];
    if (box[2] <= (other[0] as number) || (other[2] as number) <= box[0]) continue;
    if (box[3] <= (other[1] as number) || (other[3] as number) <= box[1]) continue;
    if (convexOverlap(corners, (piece.laid[i] as LaidPlace).corners)) return false;
  }
  return accept(ground, piece, { place, corners, against: side });
}

function accept({ room }: NetGround, piece: Growing, one: LaidPlace): boolean {
  const least = Float64Array.from(piece.least);
  const most = Float64Array.from(piece.most);
  directions.forEach(([c, s], i) => {
    for (const [x, y] of one.corners) {
      const along = c * x + s * y;
      if (along < (least[i] as number)) least[i] = along;
      if (along > (most[i] as number)) most[i] = along;
    }
  });
  if (fittingTurns(least, most, room).length === 0) return false;
  piece.least.set(least);
  piece.most.set(most);
  piece.laid.push(one);
  piece.boxes.push(boundsOf(one.corners));
  return true;
}

/** Degrees, 0 to 175, by which a piece may be turned clockwise so that it fits the room. */
export function fittingTurns(
  least: Float64Array,
  most: Float64Array,
  [width, height]: readonly [number, number],
): number[] {
  const n = least.length;
  const size = (i: number) => (most[i % n] as number) - (least[i % n] as number);
  return Array.from({ length: n }, (_, i) => i)
    .filter((i) => size(i) <= width && size(i + n / 2) <= height)
    .map((i) => i * TURN);
}
