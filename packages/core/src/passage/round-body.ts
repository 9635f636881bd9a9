// A body of few corners that holds a body of many: what lies below its planes in many ways about the three
// axes. What passes of it passes in truth; nothing is proved of the body itself.

import { cross, dot, scale, type Vec3 } from '../math/vector.ts';
import type { SimpleBodyShape } from './body.ts';
import type { StlBody } from './stl.ts';

/** Corners that a hull may have as it is. */
const FEW = 40;

/** Ways round each axis. */
const ROUND = 16;

/** A shape for passing, and whether it only holds the body. */
export interface HeldShape {
  readonly shape: SimpleBodyShape;
  readonly roughly: boolean;
}

/** The shape of a closed body: its own hull where it is convex and has few corners, else planes round it,
 * at most 2 % of its size further out. */
export function shapeOfStl({ corners, isConvex }: StlBody): HeldShape {
  if (isConvex && corners.length <= FEW)
    return { shape: { form: 'hull', points: corners }, roughly: false };
  const ways = waysRound();
  const reach = ways.map((way) => furthest(corners, way));
  return { shape: { form: 'hull', points: cornersOf(ways, reach) }, roughly: true };
}

/** Furthest of the corners along a way. */
function furthest(corners: readonly Vec3[], way: Vec3): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const p of corners) most = Math.max(most, dot(p, way));
  return most;
}

function waysRound(): Vec3[] {
  const ways = new Map<string, Vec3>();
  const put = (way: Vec3): void => {
    const key = way.map((x) => (Math.round(x * 1e6) + 0).toString()).join();
    if (!ways.has(key)) ways.set(key, way);
  };
  for (let i = 0; i < ROUND; i++) {
    const [c, s] = [Math.cos((2 * Math.PI * i) / ROUND), Math.sin((2 * Math.PI * i) / ROUND)];
    put([c, s, 0]);
    put([0, c, s]);
    put([s, 0, c]);
  }
  for (let i = 0; i < 8; i++)
    put(scale([i & 1 ? 1 : -1, i & 2 ? 1 : -1, i & 4 ? 1 : -1], 1 / Math.sqrt(3)));
  return [...ways.values()];
}

/** Corners of what lies below all planes: points of three of them that are over none. */
function cornersOf(ways: readonly Vec3[], reach: readonly number[]): Vec3[] {
  const size = Math.max(...reach.map(Math.abs));
  const found: Vec3[] = [];
  for (let i = 0; i < ways.length; i++)
    for (let j = i + 1; j < ways.length; j++)
      for (let k = j + 1; k < ways.length; k++) {
        const p = meeting([ways[i], ways[j], ways[k]], [reach[i], reach[j], reach[k]]);
        if (p === null) continue;
        if (ways.some((way, n) => dot(way, p) > (reach[n] as number) + 1e-9 * size)) continue;
        if (!found.some((q) => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) < 1e-6 * size))
          found.push(p);
      }
  return found;
}

function meeting(
  [a, b, c]: readonly [Vec3, Vec3, Vec3],
  [x, y, z]: readonly [number, number, number],
): Vec3 | null {
  const [bc, ca, ab] = [cross(b, c), cross(c, a), cross(a, b)];
  const size = dot(a, bc);
  if (Math.abs(size) < 1e-6) return null;
  return [0, 1, 2].map((i) => (x * bc[i] + y * ca[i] + z * ab[i]) / size) as unknown as Vec3;
}
