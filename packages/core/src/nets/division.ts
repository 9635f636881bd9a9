// Where the grid points of a divided face go on the sphere. A grid point has whole weights
// i, j, k on the face's corners A, B, C; i + j + k = n. The three rules are methods 1 to 3 of
// J. D. Clinton, Advanced Structural Geometry Studies Part I, NASA CR-1734 (1971); definitions from
// memory (the table bodies could not be read), numbers checked by independent computation.

import { acos } from '../math/angle.ts';
import { add, cross, dot, normalize, scale, type Vec3 } from '../math/vector.ts';

/**
 * How a face is divided. `equal chords`: its plane in equal steps, thrown onto the sphere from the
 * centre. `equal arcs`: its edges in equal arcs, joined by straight lines, and where three lines
 * miss each other the centroid of the window they leave. `equal arcs by great circles`: the edge
 * points joined by great circles, and the middle of the window on the sphere.
 */
export type Division = 'equal chords' | 'equal arcs' | 'equal arcs by great circles';

/** Every division, in the order in which an answer names them. */
export const divisions: readonly Division[] = [
  'equal chords',
  'equal arcs',
  'equal arcs by great circles',
];

/** Corners of a face, unit vectors, and whole weights on them. */
type Rule = (face: readonly [Vec3, Vec3, Vec3], weights: readonly [number, number, number]) => Vec3;

/** The rule that puts a grid point on the unit sphere. */
export const placeByDivision: Record<Division, Rule> = {
  'equal chords': (face, weights) => combine(face, weights),
  'equal arcs': (face, weights) => combine(face, windowWeights(face, weights)),
  'equal arcs by great circles': (face, weights) => greatCirclePoint(face, weights),
};

const combine = (face: readonly [Vec3, Vec3, Vec3], w: readonly [number, number, number]): Vec3 =>
  normalize(add(add(scale(face[0], w[0]), scale(face[1], w[1])), scale(face[2], w[2])));

/** Share of an edge's chord that m of n equal arcs cut off, a(m) = sin(mθ/n) / (sin(mθ/n) +
 * sin(θ − mθ/n)); the window of the lines a(i), a(j), a(k) has its centroid at these weights. */
function windowWeights(
  face: readonly [Vec3, Vec3, Vec3],
  weights: readonly [number, number, number],
): [number, number, number] {
  const theta = acos(dot(face[0], face[1]));
  const n = weights[0] + weights[1] + weights[2];
  const [a, b, c] = weights.map((m) => {
    const near = Math.sin((m * theta) / n);
    return near / (near + Math.sin(theta - (m * theta) / n));
  }) as [number, number, number];
  return [(2 * a + 1 - b - c) / 3, (2 * b + 1 - a - c) / 3, (2 * c + 1 - a - b) / 3];
}

function greatCirclePoint(
  face: readonly [Vec3, Vec3, Vec3],
  weights: readonly [number, number, number],
): Vec3 {
  if (weights.some((m) => m === 0)) return combine(face, windowWeights(face, weights));
  const n = weights[0] + weights[1] + weights[2];
  const normals = [0, 1, 2].map((m) => {
    const [apex, left, right] = [0, 1, 2].map((k) => face[(m + k) % 3]) as [Vec3, Vec3, Vec3];
    const share = (weights[m] as number) / n;
    return cross(alongArc(left, apex, share), alongArc(right, apex, share));
  }) as [Vec3, Vec3, Vec3];
  const inside = combine(face, [1, 1, 1]);
  const window = [0, 1, 2].map((m) => {
    const meet = normalize(cross(normals[m] as Vec3, normals[(m + 1) % 3] as Vec3));
    return dot(meet, inside) < 0 ? scale(meet, -1) : meet;
  }) as [Vec3, Vec3, Vec3];
  return combine(window, [1, 1, 1]);
}

/** The point of the great circle from a to b at a share of the arc between them. */
function alongArc(a: Vec3, b: Vec3, share: number): Vec3 {
  const arc = acos(dot(a, b));
  return normalize(add(scale(a, Math.sin((1 - share) * arc)), scale(b, Math.sin(share * arc))));
}
