// Gathers the points and triangles of a solid.

import type { Vec3 } from '../math/vector.ts';
import type { Mesh } from './mesh.ts';

/** What gathers a solid. */
export interface SolidBuilder {
  /** Adds a point and gives its index. */
  readonly point: (at: Vec3) => number;
  /** Adds a triangle, anticlockwise seen from outside. */
  readonly triangle: (a: number, b: number, c: number) => void;
  /** What has been gathered. */
  readonly mesh: () => Mesh;
}

/** A builder with nothing in it. */
export function solidBuilder(): SolidBuilder {
  const points: number[] = [];
  const triangles: number[] = [];
  return {
    point: (at) => points.push(...at) / 3 - 1,
    triangle: (a, b, c) => void triangles.push(a, b, c),
    mesh: () => ({ points: Float64Array.from(points), triangles: Int32Array.from(triangles) }),
  };
}
