// Nets with a name: the triangular grid laid on every face of a regular solid. In grid steps the
// corners of a face are (0, 0), (b, c) and (−c, b + c): from corner to corner b steps ahead, then c
// steps on after a turn of 60° to the left, seen from outside. H. S. M. Coxeter's {3,q+}b,c;
// class I has c = 0 or b = 0, class II b = c, class III is chiral and (c, b) mirrors (b, c).
// T = b² + bc + c² places lie on each face.

import type { Vec3 } from '../math/vector.ts';
import { type Division, placeByDivision } from './division.ts';
import type { Net } from './net.ts';
import { type Solid, type SolidName, solidOf } from './solid.ts';

/** What names a net. */
export interface NetSpec {
  readonly solid: SolidName;
  /** Steps ahead and steps after the turn, whole, not both 0. */
  readonly b: number;
  readonly c: number;
  readonly division: Division;
}

/** Most places on a face; keeps grid keys exact and a slip of the finger from filling memory. */
const MOST_PLACES_PER_FACE = 4096;

/** Places on each face of the solid: b² + bc + c². */
export const placesPerFace = (b: number, c: number): number => b * b + b * c + c * c;

/**
 * The net of a name, on the unit sphere, a corner of the solid at the zenith. Throws RangeError
 * where b or c is no whole number from 0, both are 0, b² + bc + c² exceeds 4096, or a division by
 * arcs is asked for a net that is not of class I (b or c 0): those are defined along a face's edge.
 */
export function namedNet(spec: NetSpec): Net {
  assertSpec(spec);
  const grid = new Grid(spec);
  const cells = cellsOfFace(spec.b, spec.c);
  const places: number[][] = [];
  const onEdges = new Set<string>();
  for (const face of solidOf(spec.solid).faces)
    for (const { corners, onEdge } of cells) {
      const place = corners.map((weights) => grid.hub(face, weights));
      if (onEdge) {
        const key = [...place].sort((p, q) => p - q).join();
        if (onEdges.has(key)) continue;
        onEdges.add(key);
      }
      places.push(place);
    }
  return { hubs: Float64Array.from(grid.hubs), places };
}

function assertSpec({ b, c, division }: NetSpec): void {
  for (const [name, value] of [
    ['b', b],
    ['c', c],
  ] as const)
    if (!(Number.isInteger(value) && value >= 0))
      throw new RangeError(`${name} is ${value}, expected a whole number from 0`);
  const t = placesPerFace(b, c);
  if (t < 1 || t > MOST_PLACES_PER_FACE)
    throw new RangeError(
      `(${b}, ${c}) has ${t} places on a face, expected 1 to ${MOST_PLACES_PER_FACE}`,
    );
  if (division !== 'equal chords' && b !== 0 && c !== 0)
    throw new RangeError(
      `(${b}, ${c}) by ${division}: only (b, 0) is divided so, (b, c) by equal chords`,
    );
}

/** Whole weights of a grid point on the corners of its face, together T; negative beyond an edge. */
type Weights = readonly [number, number, number];

/** A small triangle of the grid, anticlockwise. */
interface Cell {
  readonly corners: readonly Weights[];
  /** Its middle lies on an edge of the face, so that two faces lay claim to it. */
  readonly onEdge: boolean;
}

/** All small triangles whose middle lies in the face or on its edge. */
function cellsOfFace(b: number, c: number): Cell[] {
  const t = placesPerFace(b, c);
  const at = (x: number, y: number): Weights => {
    const second = (b + c) * x + c * y;
    const third = b * y - c * x;
    return [t - second - third, second, third];
  };
  const cells: Cell[] = [];
  for (let y = -1; y <= b + c; y++)
    for (let x = -c - 1; x <= b; x++) {
      const up = [at(x, y), at(x + 1, y), at(x, y + 1)];
      const down = [at(x + 1, y), at(x + 1, y + 1), at(x, y + 1)];
      for (const corners of [up, down]) {
        const middle = [0, 1, 2].map((m) => corners.reduce((sum, w) => sum + (w[m] as number), 0));
        const least = Math.min(...middle);
        if (least >= 0) cells.push({ corners, onEdge: least === 0 });
      }
    }
  return cells;
}

/** Hubs made so far, each known by the corners of the solid it hangs on and its weights there. */
class Grid {
  readonly hubs: number[] = [];
  private readonly spec: NetSpec;
  private readonly solid: Solid;
  private readonly apex: Map<number, number>;
  private readonly known = new Map<number, number>();

  constructor(spec: NetSpec) {
    this.spec = spec;
    this.solid = solidOf(spec.solid);
    this.apex = apexes(this.solid);
  }

  /** Index of the hub at a grid point of a face, made where it is new. */
  hub(face: readonly number[], weights: Weights): number {
    const at = this.unfold(face, weights);
    const t = placesPerFace(this.spec.b, this.spec.c);
    const step = this.solid.corners.length * (t + 1);
    const key = at.reduce((sum, [corner, w]) => sum * step + (w ? corner * (t + 1) + w : 0), 0);
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const index = this.hubs.length / 3;
    this.known.set(key, index);
    this.hubs.push(...this.position(at));
    return index;
  }

  /** Moves a point beyond an edge into the face across it, until no weight is negative; corners
   * with weight come first, in order of their index. */
  private unfold(face: readonly number[], inFace: Weights): [number, number][] {
    let corners = face;
    let weights: readonly number[] = inFace;
    for (let m = weights.findIndex((w) => w < 0); m >= 0; m = weights.findIndex((w) => w < 0)) {
      const [p, q] = [(m + 1) % 3, (m + 2) % 3];
      const beyond = weights[m] as number;
      const across = this.apex.get(edgeKey(corners[q] as number, corners[p] as number));
      corners = [across as number, corners[q] as number, corners[p] as number];
      weights = [-beyond, (weights[q] as number) + beyond, (weights[p] as number) + beyond];
    }
    return corners
      .map((corner, m): [number, number] => [corner, weights[m] as number])
      .sort(([a, v], [b, w]) => (v === 0 ? 1 : 0) - (w === 0 ? 1 : 0) || a - b);
  }

  private position(at: readonly [number, number][]): Vec3 {
    const face = at.map(([corner]) => this.solid.corners[corner]) as [Vec3, Vec3, Vec3];
    const weights = at.map(([, w]) => w) as [number, number, number];
    return placeByDivision[this.spec.division](face, weights);
  }
}

const edgeKey = (from: number, to: number): number => from * 16 + to;

/** Directed edge → the third corner of the face to its left. */
function apexes(solid: Solid): Map<number, number> {
  const found = new Map<number, number>();
  for (const face of solid.faces)
    for (let m = 0; m < 3; m++)
      found.set(
        edgeKey(face[m] as number, face[(m + 1) % 3] as number),
        face[(m + 2) % 3] as number,
      );
  return found;
}
