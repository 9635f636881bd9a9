// Triangle meshes as plain arrays, and what a printer asks of them: closed, every edge between exactly
// two triangles that run it in opposite ways. Millimetres; triangles anticlockwise seen from outside.

import { cross, dot, norm, pointAt, subtract, type Vec3 } from '../math/vector.ts';

/** A triangle mesh. */
export interface Mesh {
  /** Stride 3, millimetres. */
  readonly points: Float64Array;
  /** Stride 3: indices of points. */
  readonly triangles: Int32Array;
}

/** What makes a mesh unfit for printing. */
export interface MeshFaults {
  /** Edges that not exactly two triangles share, in opposite ways. */
  readonly edges: number;
  /** Points whose triangles form more than one fan. */
  readonly points: number;
  /** Triangles without area. */
  readonly flat: number;
}

/** Number of triangles. */
export const triangleCount = ({ triangles }: Mesh): number => triangles.length / 3;

/** The corners of a triangle. */
export const cornersAt = ({ points, triangles }: Mesh, t: number): [Vec3, Vec3, Vec3] => [
  pointAt(points, triangles[3 * t] as number),
  pointAt(points, triangles[3 * t + 1] as number),
  pointAt(points, triangles[3 * t + 2] as number),
];

/** Enclosed volume, cubic millimetres, by the divergence theorem; negative inside out. */
export function meshVolume(mesh: Mesh): number {
  let sum = 0;
  for (let t = 0; t < triangleCount(mesh); t++) {
    const [a, b, c] = cornersAt(mesh, t);
    sum += dot(a, cross(b, c));
  }
  return sum / 6;
}

/** Area of all triangles, square millimetres. */
export function meshArea(mesh: Mesh): number {
  let sum = 0;
  for (let t = 0; t < triangleCount(mesh); t++) {
    const [a, b, c] = cornersAt(mesh, t);
    sum += norm(cross(subtract(b, a), subtract(c, a)));
  }
  return sum / 2;
}

/** Least and greatest coordinates, millimetres. */
export function meshBox({ points }: Mesh): { readonly least: Vec3; readonly most: Vec3 } {
  const least = [Infinity, Infinity, Infinity];
  const most = [-Infinity, -Infinity, -Infinity];
  points.forEach((x, i) => {
    least[i % 3] = Math.min(least[i % 3] as number, x);
    most[i % 3] = Math.max(most[i % 3] as number, x);
  });
  return { least: least as unknown as Vec3, most: most as unknown as Vec3 };
}

/** What is wrong with a mesh; all zero where it is closed, oriented and manifold. */
export function meshFaults(mesh: Mesh): MeshFaults {
  const { points, triangles } = mesh;
  const n = points.length / 3;
  const ways = new Map<number, number>();
  for (let i = 0; i < triangles.length; i++) {
    const next = i % 3 === 2 ? i - 2 : i + 1;
    const key = (triangles[i] as number) * n + (triangles[next] as number);
    ways.set(key, (ways.get(key) ?? 0) + 1);
  }
  let edges = 0;
  for (const [key, count] of ways)
    if (count !== 1 || ways.get((key % n) * n + Math.floor(key / n)) !== 1) edges++;
  let flat = 0;
  for (let t = 0; t < triangleCount(mesh); t++) {
    const [a, b, c] = cornersAt(mesh, t);
    if (!(norm(cross(subtract(b, a), subtract(c, a))) > 0)) flat++;
  }
  return { edges, points: splitPoints(mesh), flat };
}

/** Points around which the triangles are not one closed fan. */
function splitPoints({ points, triangles }: Mesh): number {
  const after = Array.from({ length: points.length / 3 }, () => new Map<number, number>());
  for (let i = 0; i < triangles.length; i++) {
    const t = i - (i % 3);
    const [b, c] = [triangles[t + ((i + 1) % 3)], triangles[t + ((i + 2) % 3)]];
    after[triangles[i] as number]?.set(b as number, c as number);
  }
  return after.filter((fan) => {
    const start = fan.keys().next().value;
    if (start === undefined) return false;
    let [at, steps] = [fan.get(start), 1];
    while (at !== undefined && at !== start && steps <= fan.size) {
      at = fan.get(at);
      steps++;
    }
    return at !== start || steps !== fan.size;
  }).length;
}

/** The mesh moved. */
export const movedMesh = ({ points, triangles }: Mesh, by: Vec3): Mesh => ({
  points: points.map((x, i) => x + (by[i % 3] as number)),
  triangles,
});
