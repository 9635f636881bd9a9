// The whole shell as one solid for a printer: its outer faces, the same drawn in towards the centre, and
// walls between them at every rim. Millimetres at scale, origin at the sphere's centre, z up.
//
//      ______           The inner hubs are the outer ones times k = 1 − wall / h, h being the least
//     /  __  \          distance of a panel's plane from the centre: no wall is thinner than asked
//    /  /  \  \         for. Where the base ring is flat each inner hub stays at the level of its
//   |__|    |__|        outer one, so that the print stands on as flat a foot as the shell does.

import { dot, scale as times, type Vec3 } from '../math/vector.ts';
import { hubPoint, meanSideLength, placeCentre, placeNormal } from '../shell/geometry.ts';
import type { HubId, PlaceId, SideId } from '../shell/ids.ts';
import { baseRing } from '../shell/rims.ts';
import { hubCount, nextSide, type Shell, sideCount, sidesOf } from '../shell/shell.ts';
import { FLAT_BASE } from '../shell/tolerances.ts';
import type { Mesh } from './mesh.ts';

/** How the solid is made. */
export interface ShellMeshOptions {
  /** 1 : scale. */
  readonly scale: number;
  /** Least thickness of the wall, millimetres. */
  readonly wall: number;
  /** Places that are left out on purpose, by index. */
  readonly leftOut?: readonly number[];
}

/** Where the shell touches itself in one hub alone, the two parts are drawn this far apart, millimetres:
 * a printer can't make a joint of no width. */
const PINCH = 0.05;

/** The solid of a shell. Throws RangeError where the wall is no thickness or as thick as the shell is
 * deep. Closed and manifold for every shell; holds for shells whose panels all face outwards. */
export function shellMesh(shell: Shell, options: ShellMeshOptions): Mesh {
  const { scale, wall } = options;
  const out = new Set(options.leftOut ?? []);
  const kept = Array.from(shell.kind.keys()).filter((p) => !out.has(p)) as PlaceId[];
  const mm = 1000 / scale;
  const inner = innerShare(shell, kept, mm, wall);
  const mateIn = (side: SideId): SideId | null => {
    const mate = shell.mate[side] as number;
    return mate < 0 || out.has(shell.sidePlace[mate] as number) ? null : (mate as SideId);
  };
  const { vertex, count } = cornersToVertices(shell, kept, mateIn);
  const points = new Float64Array(6 * count);
  const shared = pinched(shell, kept, vertex);
  const foot = footHubs(shell);
  for (const place of kept)
    for (const side of sidesOf(shell, place)) {
      const v = vertex[side] as number;
      const hub = shell.sideHub[side] as HubId;
      let at = times(hubPoint(shell, hub), mm);
      if (shared.has(hub)) at = drawnIn(at, times(placeCentre(shell, place), mm));
      points.set(at, 3 * v);
      points.set(innerPoint(at, inner, foot.has(hub)), 3 * (count + v));
    }
  const triangles: number[] = [];
  for (const place of kept) {
    const sides = sidesOf(shell, place);
    const [a] = sides.map((side) => vertex[side] as number) as [number];
    for (let i = 1; i + 1 < sides.length; i++) {
      const [b, c] = [vertex[sides[i] as SideId], vertex[sides[i + 1] as SideId]] as [
        number,
        number,
      ];
      triangles.push(a, b, c, count + a, count + c, count + b);
    }
    for (const side of sides) {
      if (mateIn(side) !== null) continue;
      const [p, q] = [vertex[side], vertex[nextSide(shell, side)]] as [number, number];
      triangles.push(q, p, count + p, q, count + p, count + q);
    }
  }
  return { points, triangles: Int32Array.from(triangles) };
}

/** The inner hubs over the outer ones. */
function innerShare(shell: Shell, kept: readonly PlaceId[], mm: number, wall: number): number {
  const deep = kept.reduce(
    (least, p) => Math.min(least, dot(placeNormal(shell, p), placeCentre(shell, p)) * mm),
    Infinity,
  );
  if (!(wall > 0 && wall < deep))
    throw new RangeError(`a wall of ${wall} mm, expected more than 0 and less than ${deep} mm`);
  return 1 - wall / deep;
}

/** Corner (by its side) → its vertex: corners that seams join around a hub share one. */
function cornersToVertices(
  shell: Shell,
  kept: readonly PlaceId[],
  mateIn: (side: SideId) => SideId | null,
): { vertex: Int32Array; count: number } {
  const vertex = new Int32Array(sideCount(shell)).fill(-1);
  let count = 0;
  for (const place of kept)
    for (const start of sidesOf(shell, place)) {
      if (vertex[start] !== -1) continue;
      const stack: SideId[] = [start];
      vertex[start] = count;
      for (let side = stack.pop(); side !== undefined; side = stack.pop()) {
        const across = mateIn(side);
        const back = mateIn(previous(shell, side));
        for (const next of [across === null ? null : nextSide(shell, across), back])
          if (next !== null && vertex[next] === -1) {
            vertex[next] = count;
            stack.push(next);
          }
      }
      count++;
    }
  return { vertex, count };
}

function previous(shell: Shell, side: SideId): SideId {
  let at = side;
  for (let next = nextSide(shell, at); next !== side; next = nextSide(shell, at)) at = next;
  return at;
}

/** Hubs where more than one run of corners ends. */
function pinched(shell: Shell, kept: readonly PlaceId[], vertex: Int32Array): Set<number> {
  const first = new Int32Array(hubCount(shell)).fill(-1);
  const found = new Set<number>();
  for (const place of kept)
    for (const side of sidesOf(shell, place)) {
      const hub = shell.sideHub[side] as number;
      if (first[hub] === -1) first[hub] = vertex[side] as number;
      else if (first[hub] !== vertex[side]) found.add(hub);
    }
  return found;
}

function drawnIn(at: Vec3, towards: Vec3): Vec3 {
  const way: Vec3 = [towards[0] - at[0], towards[1] - at[1], towards[2] - at[2]];
  const by = PINCH / Math.hypot(...way);
  return [at[0] + by * way[0], at[1] + by * way[1], at[2] + by * way[2]];
}

/** Hubs of the base ring where it is flat; else none. */
function footHubs(shell: Shell): Set<number> {
  const base = baseRing(shell);
  if (!base || base.z.max - base.z.min > FLAT_BASE * meanSideLength(shell)) return new Set();
  return new Set(base.hubs);
}

/** Drawn in towards the centre, or, at the foot, level to where the inner sphere is. */
function innerPoint(at: Vec3, share: number, foot: boolean): Vec3 {
  const straight = times(at, share);
  if (!foot) return straight;
  const room = share ** 2 * dot(at, at) - at[2] ** 2;
  const across = Math.hypot(at[0], at[1]);
  if (room <= 0 || across === 0) return straight;
  const by = Math.sqrt(room) / across;
  return [at[0] * by, at[1] * by, at[2]];
}
