// The true shape of a place's panel, laid flat, and the same laid against a side of another. Seen from
// outside, x right, y up.

import { cross, dot, normalize, scale, subtract, type Vec3 } from '../math/vector.ts';
import { hubPoint, placeNormal } from '../shell/geometry.ts';
import type { PlaceId } from '../shell/ids.ts';
import { hubsOf, type Shell } from '../shell/shell.ts';
import { type GridPoint, onGrid } from './grid.ts';

/** A panel laid flat: corner i is where its side i starts, anticlockwise; unit as asked for. */
export type FlatPanel = readonly (readonly [number, number])[];

/** A panel laid flat, and where the sphere's centre lies behind it; unit as asked for. */
export interface FramedPanel {
  readonly corners: FlatPanel;
  /** The point of its plane nearest to the centre. */
  readonly foot: readonly [number, number];
  /** From there to the centre; above 0 where the panel faces outwards. */
  readonly height: number;
}

/** The panel of a place in its own plane, `unit` to the metre: its first corner at 0, 0 and its first
 * side along +x. A polygon that is not quite flat is seen square on its mean plane. */
export const flatPanel = (shell: Shell, place: PlaceId, unit = 1): FlatPanel =>
  framedPanel(shell, place, unit).corners;

/** As `flatPanel`, with the sphere's centre. */
export function framedPanel(shell: Shell, place: PlaceId, unit = 1): FramedPanel {
  const points = hubsOf(shell, place).map((hub) => hubPoint(shell, hub));
  const [from, to] = points as unknown as [Vec3, Vec3];
  const normal = placeNormal(shell, place);
  const along = subtract(to, from);
  const right = normalize(subtract(along, scale(normal, dot(along, normal))));
  const up = cross(normal, right);
  const laid = (point: Vec3): readonly [number, number] => {
    const way = subtract(point, from);
    return [unit * dot(way, right), unit * dot(way, up)];
  };
  const height = points.reduce((sum, point) => sum + dot(point, normal), 0) / points.length;
  return { corners: points.map(laid), foot: laid([0, 0, 0]), height: unit * height };
}

/** The panel, in micrometres, moved so that its side `side` runs from `from` to `to`; those two corners
 * are taken as they stand, the others are put on the grid. */
export function laidAgainst(
  panel: FlatPanel,
  side: number,
  from: GridPoint,
  to: GridPoint,
): GridPoint[] {
  const n = panel.length;
  const [p, q] = [panel[side], panel[(side + 1) % n]] as [GridPoint, GridPoint];
  const [ux, uy] = [q[0] - p[0], q[1] - p[1]];
  const [vx, vy] = [to[0] - from[0], to[1] - from[1]];
  const size = Math.hypot(ux, uy) * Math.hypot(vx, vy);
  const [c, s] = [(ux * vx + uy * vy) / size, (ux * vy - uy * vx) / size];
  return panel.map(([x, y], i) => {
    if (i === side) return from;
    if (i === (side + 1) % n) return to;
    const [dx, dy] = [x - p[0], y - p[1]];
    return onGrid(from[0] + c * dx - s * dy, from[1] + s * dx + c * dy);
  });
}
