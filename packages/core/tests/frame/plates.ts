// Flat meshes of triangles for tests: a rectangle in the plane x, y, its inner nodes moved about.

import type { Facet, Membrane } from '../../src/frame/elements/element.ts';
import { type Random, seededRandom } from '../../src/math/random.ts';

/** Points and triangles of a rectangle. */
export interface Mesh {
  readonly nodes: Float64Array;
  readonly triangles: readonly (readonly [number, number, number])[];
  /** Node at column i (along x) and row j. */
  readonly at: (i: number, j: number) => number;
  readonly columns: number;
  readonly rows: number;
}

/** A rectangle of columns × rows cells, each cut in two; inner nodes moved by up to `shake` of a
 * cell. */
export function rectangle(
  wide: number,
  high: number,
  columns: number,
  rows: number,
  shake = 0,
  random: Random = seededRandom(1),
): Mesh {
  const at = (i: number, j: number): number => j * (columns + 1) + i;
  const nodes = new Float64Array(3 * (columns + 1) * (rows + 1));
  const moved = (inner: boolean, size: number): number =>
    inner ? shake * size * (2 * random.uniform() - 1) : 0;
  for (let j = 0; j <= rows; j++)
    for (let i = 0; i <= columns; i++) {
      const inner = i > 0 && j > 0 && i < columns && j < rows;
      nodes[3 * at(i, j)] = (wide * i) / columns + moved(inner, wide / columns);
      nodes[3 * at(i, j) + 1] = (high * j) / rows + moved(inner, high / rows);
    }
  const triangles: [number, number, number][] = [];
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++) {
      const [a, b, c, d] = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
      if ((i + j) % 2 === 0) triangles.push([a, b, c], [a, c, d]);
      else triangles.push([a, b, d], [b, c, d]);
    }
  return { nodes, triangles, at, columns, rows };
}

/** Nodes on the rim of a rectangle. */
export function rimOf({ at, columns, rows }: Mesh): number[] {
  const rim: number[] = [];
  for (let j = 0; j <= rows; j++)
    for (let i = 0; i <= columns; i++)
      if (i === 0 || j === 0 || i === columns || j === rows) rim.push(at(i, j));
  return rim;
}

/** Elements of one kind on all triangles. */
export const covered = <Kind extends 'membrane' | 'facet'>(
  { triangles }: Mesh,
  kind: Kind,
  thickness: number,
  young: number,
  poisson: number,
): (Kind extends 'membrane' ? Membrane : Facet)[] =>
  triangles.map((nodes) => ({ kind, nodes, thickness, young, poisson })) as never;
