// What stands in the way: the placed panels as solids, from the skin inwards to the depth of their
// flanges, and the ground. Each panel is the hull of its hubs and of the same drawn towards the sphere's
// centre: along the planes in which the flanges of neighbours meet. Under every side of the base ring
// something stands down to the ground. Shell's frame, metres.

import { add, dot, norm, pointAt, scale, subtract, type Vec3 } from '../math/vector.ts';
import { endHubAt, placeCentre, placeNormal } from '../shell/geometry.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import { baseRing, rims } from '../shell/rims.ts';
import { hubAt, hubsOf, placeCount, type Shell, sidesOf } from '../shell/shell.ts';

/** A solid with the sphere that holds it. */
export interface WallSolid {
  readonly points: Float64Array;
  readonly middle: Vec3;
  readonly radius: number;
}

/** A wall with its openings. */
export interface Barrier {
  readonly solids: readonly WallSolid[];
  /** Ground under everything, height in the shell's frame. */
  readonly floor: number;
  /** Radius of a sphere about the origin that holds the whole shell, placed or not. */
  readonly radius: number;
  /** Triangles that close the wall: the skins of the missing places, and of holes without places. */
  readonly gaps: readonly Gap[];
  /** Triangles that close the wall half-way down the flanges: what comes out goes through them. */
  readonly closing: readonly Triangle[];
  /** Closed lines of the wall round the gaps: along the skin, along the flanges' edge (on the ground along
   * the base ring), and down each flange and up again. */
  readonly loops: readonly (readonly Vec3[])[];
}

/** Three corners. */
export type Triangle = readonly [Vec3, Vec3, Vec3];

/** A triangle of a missing place. */
export interface Gap {
  /** Its place; null where the shell has a hole there. */
  readonly place: number | null;
  readonly corners: Triangle;
  readonly normal: Vec3;
}

/** What stands under the base ring goes so far into the ground, m. */
const INTO_GROUND = 0.1;

/** Where along a side a flange is looked at, parts of its length. */
const RIBS = [0, 0.25, 0.5, 0.75];

/** The solid of given points. */
export function wallSolid(points: readonly Vec3[]): WallSolid {
  const middle = [0, 1, 2].map(
    (i) => points.reduce((sum, p) => sum + p[i], 0) / points.length,
  ) as unknown as Vec3;
  return {
    points: Float64Array.from(points.flat()),
    middle,
    radius: Math.max(...points.map((p) => norm(subtract(p, middle)))),
  };
}

/** The wall of a stage: `placed` panels stand, the other places are open. `depth`: from the skin inwards
 * to the flanges' edge, m. RangeError unless it is over 0 and less than half the radius. */
export function barrierOf(shell: Shell, placed: readonly number[], depth: number): Barrier {
  if (!(depth > 0 && depth < shell.radius / 2))
    throw new RangeError(`depth is ${depth} m, expected over 0 and under ${shell.radius / 2} m`);
  const isPlaced = new Uint8Array(placeCount(shell));
  for (const p of placed) isPlaced[p] = 1;
  const [base, ...holes] = rims(shell);
  const solids: WallSolid[] = [];
  const gaps: Gap[] = [];
  for (let p = 0; p < placeCount(shell); p++) {
    const skin = hubsOf(shell, p as PlaceId).map((hub) => pointAt(shell.hubs, hub));
    if (isPlaced[p] === 1) {
      const shrink = drawnIn(shell, p, depth);
      solids.push(wallSolid([...skin, ...skin.map((at) => scale(at, shrink))]));
    } else {
      const normal = placeNormal(shell, p as PlaceId);
      for (let i = 1; i + 1 < skin.length; i++)
        gaps.push({ place: p, corners: [skin[0], skin[i], skin[i + 1]], normal });
    }
  }
  for (const { hubs } of holes) gaps.push(...holeGaps(hubs.map((hub) => pointAt(shell.hubs, hub))));
  const floor = base?.z.min ?? Math.min(...shell.hubs.filter((_, i) => i % 3 === 2));
  for (const side of base?.sides ?? []) solids.push(under(shell, side, depth, floor));
  return {
    solids,
    floor,
    radius: shell.radius,
    gaps,
    closing: closingOf(shell, isPlaced, gaps, 1 - depth / shell.radius / 2),
    loops: loopsOf(
      shell,
      isPlaced,
      depth,
      base?.sides ?? [],
      holes.flatMap(({ sides }) => sides),
    ),
  };
}

/** How much of its distance from the centre a panel's inner edge keeps. */
function drawnIn(shell: Shell, place: number, depth: number): number {
  const normal = placeNormal(shell, place as PlaceId);
  const off = Math.abs(dot(placeCentre(shell, place as PlaceId), normal));
  return Math.max(0, 1 - depth / off);
}

/** What stands under a side of the base ring, from it into the ground, as deep as a flange. */
function under(shell: Shell, side: SideId, depth: number, floor: number): WallSolid {
  const ends = [hubAt(shell, side), endHubAt(shell, side)].map((hub) => pointAt(shell.hubs, hub));
  const inner = ends.map(([x, y, z]): Vec3 => {
    const level = Math.hypot(x, y);
    const kept = level > depth ? 1 - depth / level : 0;
    return [kept * x, kept * y, z];
  });
  const top = [...ends, ...inner];
  return wallSolid([...top, ...top.map(([x, y]): Vec3 => [x, y, floor - INTO_GROUND])]);
}

/** A hole without places closed by triangles round its middle; its hubs run clockwise seen from outside
 * the hole's own skin. */
function holeGaps(hubs: readonly Vec3[]): Gap[] {
  const { middle } = wallSolid(hubs);
  const normal = scale(middle, 1 / Math.max(norm(middle), 1e-9));
  return hubs.map((at, i) => ({
    place: null,
    corners: [middle, hubs[(i + 1) % hubs.length] as Vec3, at],
    normal,
  }));
}

/** The gaps drawn towards the centre, and what is then left open along the base ring. */
function closingOf(
  shell: Shell,
  isPlaced: Uint8Array,
  gaps: readonly Gap[],
  kept: number,
): Triangle[] {
  const drawn = gaps.map(
    ({ corners: [a, b, c] }): Triangle => [scale(a, kept), scale(b, kept), scale(c, kept)],
  );
  const open = (baseRing(shell)?.sides ?? []).filter((side) => !isPlaced[shell.sidePlace[side]]);
  return [
    ...drawn,
    ...open.flatMap((side): Triangle[] => {
      const [a, b] = [hubAt(shell, side), endHubAt(shell, side)].map((hub) =>
        pointAt(shell.hubs, hub),
      ) as [Vec3, Vec3];
      const level = ([x, y, z]: Vec3): Vec3 => [kept * x, kept * y, z];
      const [up, along] = [scale(a, kept), scale(b, kept)];
      return [
        [up, level(a), level(b)],
        [up, level(b), along],
      ];
    }),
  ];
}

/** Lines round the gaps: each side of a missing place or hole that meets a placed panel or the base,
 * strung together at hubs; where gaps touch at a hub any of them goes on. */
function loopsOf(
  shell: Shell,
  isPlaced: Uint8Array,
  depth: number,
  base: readonly SideId[],
  holes: readonly SideId[],
): Vec3[][] {
  const [isBase, isHole] = [new Set<number>(base), new Set<number>(holes)];
  /** Start hub → end hubs, and how far the panel beyond is drawn in. */
  const from = new Map<number, { readonly to: number; readonly shrink: number }[]>();
  const put = (start: number, to: number, panel: number): void => {
    const list = from.get(start) ?? [];
    list.push({ to, shrink: drawnIn(shell, panel, depth) });
    from.set(start, list);
  };
  for (let p = 0; p < placeCount(shell); p++)
    for (const side of sidesOf(shell, p as PlaceId)) {
      const [a, b] = [hubAt(shell, side), endHubAt(shell, side)];
      const mate = shell.mate[side];
      if (isPlaced[p] === 1) {
        if (isHole.has(side)) put(b, a, p);
      } else if (mate >= 0 ? isPlaced[shell.sidePlace[mate]] === 1 : isBase.has(side))
        put(a, b, mate >= 0 ? shell.sidePlace[mate] : p);
    }
  const [loops, ribs]: [Vec3[][], Vec3[][]] = [[], []];
  for (const [start, list] of from)
    while (list.length > 0) {
      const [skin, inner]: [Vec3[], Vec3[]] = [[], []];
      let at = start;
      do {
        const next = from.get(at)?.pop();
        if (next === undefined) break;
        const [a, b] = [pointAt(shell.hubs, at), pointAt(shell.hubs, next.to)];
        skin.push(a);
        inner.push(scale(a, next.shrink), scale(b, next.shrink));
        for (const part of RIBS) {
          const p = add(a, scale(subtract(b, a), part));
          ribs.push([p, scale(p, next.shrink)]);
        }
        at = next.to;
      } while (at !== start);
      if (at === start) loops.push(skin, inner);
    }
  return [...loops, ...ribs];
}
