// A ball that a plane cuts, as kinds of a pile: those of the panels above it whole, those of what it
// leaves of the panels that it crosses. The plane stands at a height above the centre, along any
// direction; lengths in metres.

import { seededRandom } from '../../src/math/random.ts';
import { add, distance, dot, normalize, pointAt, scale, type Vec3 } from '../../src/math/vector.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import type { Kind } from '../../src/pile/kind.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { hubsOf, placeCount, type Shell } from '../../src/shell/shell.ts';
import { kindWith } from './piles.ts';

/** What lies on the field, each side read once. */
export interface Field {
  readonly kinds: readonly Kind[];
  /** Cut kinds (ids) → the side in the plane. */
  readonly cut: ReadonlyMap<string, number>;
  /** Mean distance of the base corners from the axis, and the shortest side of a cut panel. */
  readonly baseRadius: number;
  readonly shortest: number;
}

/** Unit direction through a hub, the middle of a seam, or that of a place. */
export function wayUp(shell: Shell, through: 'hub' | 'seam' | 'place', place = 0): Vec3 {
  const hubs = hubsOf(shell, place as PlaceId).map((hub) => pointAt(shell.hubs, hub));
  const taken = hubs.slice(0, { hub: 1, seam: 2, place: hubs.length }[through]);
  return normalize(taken.reduce(add, [0, 0, 0] as Vec3));
}

/** The kinds on the field. Whole kinds are named as they are numbered in the net, `c1` … the cut. */
export function onTheGround(
  { shell, kinds: net }: NetShell,
  up: Vec3,
  height: number,
  sd: number,
  seed: number,
): Field {
  const random = seededRandom(seed);
  const read = (id: string, sides: readonly number[]): Kind =>
    kindWith(
      id,
      sides.map((x) => x + sd * random.normal()),
      sd,
    );
  const whole = new Set<number>();
  const pieces = new Map<string, readonly number[]>();
  const base: Vec3[] = [];
  for (let p = 0; p < placeCount(shell); p++) {
    const points = hubsOf(shell, p as PlaceId).map((hub) => pointAt(shell.hubs, hub));
    const above = points.map((point) => dot(point, up) - height);
    if (above.every((h) => h > 0)) whole.add(shell.kind[p] as number);
    else if (above.some((h) => h > 0)) {
      const piece = pieceOf(points, above);
      const sides = piece.map((a, i) => distance(a, piece[(i + 1) % piece.length] as Vec3));
      pieces.set(sides.map((x) => x.toFixed(6)).join(), sides);
      base.push(...piece.slice(0, 2));
    }
  }
  const cut = new Map<string, number>();
  const cutKinds = [...pieces.values()].map((sides, i) => {
    const by = random.below(sides.length);
    cut.set(`c${i + 1}`, by);
    return read(`c${i + 1}`, [
      ...sides.slice(sides.length - by),
      ...sides.slice(0, -by || undefined),
    ]);
  });
  return {
    kinds: [...[...whole].map((k) => read(`${k}`, net[k]?.sides ?? [])), ...cutKinds],
    cut,
    baseRadius:
      base.reduce((sum, point) => sum + distance(point, scale(up, dot(point, up))), 0) /
      base.length,
    shortest: Math.min(...[...pieces.values()].flat()),
  };
}

/** What is above the plane, from the base side on. */
function pieceOf(points: readonly Vec3[], above: readonly number[]): Vec3[] {
  const n = points.length;
  const down = above.findIndex((h, i) => h > 0 && (above[(i + 1) % n] as number) <= 0);
  const between = (i: number, j: number): Vec3 => {
    const t = (above[i] as number) / ((above[i] as number) - (above[j] as number));
    return add(scale(points[i] as Vec3, 1 - t), scale(points[j] as Vec3, t));
  };
  const corners = [between(down, (down + 1) % n)];
  for (let step = 1; step < n; step++) {
    const [i, j] = [(down + step) % n, (down + step + 1) % n];
    if ((above[i] as number) <= 0 && (above[j] as number) > 0) corners.push(between(i, j));
    if ((above[j] as number) > 0) corners.push(points[j] as Vec3);
  }
  return corners;
}
