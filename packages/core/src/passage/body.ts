// Rigid bodies. For motions: convex pieces that hold the body, each the hull of its points (a cylinder in
// the prism round it, a dish in wedges), so that what passes here passes in truth. For proofs that it
// can't pass: a ball and flat plates that the body holds. The body's origin is the middle of its box.
// Metres.

import { cross, norm, pointAt, scale, subtract, type Vec3 } from '../math/vector.ts';
import { ballWithin, middleOf, type Plate, plateOn, platesOf } from './plates.ts';
import { type Pose, turned } from './pose.ts';

/** A shape by itself; the axes are the thing's own, its origin the middle of its box. */
export type SimpleBodyShape =
  | { readonly form: 'box'; readonly size: readonly [number, number, number] }
  | { readonly form: 'cylinder'; readonly diameter: number; readonly length: number }
  | {
      readonly form: 'dish';
      readonly diameter: number;
      readonly depth: number;
      readonly thickness: number;
    }
  | { readonly form: 'hull'; readonly points: readonly Vec3[] };

/** A shape, or some that hold together, each moved to `at`. A box along x, y and z; a cylinder along z; a
 * dish open towards +z, its depth from the rim's plane to the bottom, its thickness downwards; the convex
 * hull of points. Metres. */
export type BodyShape =
  | SimpleBodyShape
  | {
      readonly form: 'parts';
      readonly parts: readonly { readonly shape: SimpleBodyShape; readonly at: Vec3 }[];
    };

/** What a body holds for sure. */
export interface HeldByBody {
  /** A point of it, and the radius of a ball about that. */
  readonly heart: Vec3;
  readonly ball: number;
  readonly plates: readonly Plate[];
  /** Points of it, stride 3. */
  readonly points: Float64Array;
}

/** A body. */
export interface Body {
  /** Hulls that hold it, stride 3; the sphere round each. */
  readonly pieces: readonly Float64Array[];
  readonly spheres: readonly { readonly middle: Vec3; readonly radius: number }[];
  readonly held: HeldByBody;
  /** Furthest of its points from its origin, m. */
  readonly reach: number;
  /** Extents along its own axes, m. */
  readonly size: Vec3;
}

/** Sides of the prisms that hold a cylinder, and that it holds: 0.9 % wider and narrower at corners. */
const ROUND = 24;
/** Wedges round a dish. */
const WEDGES = 12;

interface Made {
  readonly pieces: readonly Float64Array[];
  readonly held: HeldByBody;
}

/** The body of a shape. RangeError for a size that is not over 0, a point that is no number, or fewer
 * than four points. */
export function bodyOf(shape: BodyShape): Body {
  const made = madeOf(shape);
  const all = made.pieces.flatMap((piece) => [...piece]);
  if (all.some((x) => !Number.isFinite(x))) throw new RangeError('a body has a point at no number');
  const span = [0, 1, 2].map((axis) => {
    const along = all.filter((_, i) => i % 3 === axis);
    return [Math.min(...along), Math.max(...along)] as const;
  });
  const size = span.map(([low, high]) => high - low) as unknown as Vec3;
  const off = span.map(([low, high]) => -(low + high) / 2) as unknown as Vec3;
  const { pieces, held } = movedBy(made, off);
  const spheres = pieces.map((piece) => {
    const middle = middleOf(piece);
    return { middle, radius: furthestFrom(piece, middle) };
  });
  const reach = Math.max(...pieces.map((piece) => furthestFrom(piece, [0, 0, 0])));
  return { pieces, spheres, held, reach, size };
}

function furthestFrom(points: Float64Array, middle: Vec3): number {
  let most = 0;
  for (let i = 0; 3 * i < points.length; i++)
    most = Math.max(most, norm(subtract(pointAt(points, i), middle)));
  return most;
}

const shifted = (points: Float64Array, off: Vec3): Float64Array =>
  points.map((x, i) => x + (off[i % 3] as number));

const plus = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

const movedBy = ({ pieces, held }: Made, off: Vec3): Made => ({
  pieces: pieces.map((piece) => shifted(piece, off)),
  held: {
    heart: plus(held.heart, off),
    ball: held.ball,
    plates: held.plates.map((plate) => ({ ...plate, middle: plus(plate.middle, off) })),
    points: shifted(held.points, off),
  },
});

function madeOf(shape: BodyShape): Made {
  switch (shape.form) {
    case 'box': {
      const points = boxPoints(shape.size);
      return { pieces: [points], held: heldIn(points, Math.min(...shape.size) / 2) };
    }
    case 'cylinder': {
      const radius = over('diameter', shape.diameter) / 2;
      const ball = Math.min(radius, over('length', shape.length) / 2);
      return {
        pieces: [roundPoints(radius / Math.cos(Math.PI / ROUND), shape.length)],
        held: heldIn(roundPoints(radius, shape.length), ball),
      };
    }
    case 'dish':
      return dishMade(shape.diameter, shape.depth, shape.thickness);
    case 'hull': {
      if (shape.points.length < 4)
        throw new RangeError(`a hull has ${shape.points.length} points, expected 4 or more`);
      const points = Float64Array.from(shape.points.flat());
      return { pieces: [points], held: heldIn(points, ballWithin(points, middleOf(points))) };
    }
    case 'parts':
      return together(shape.parts.map(({ shape: part, at }) => movedBy(madeOf(part), at)));
  }
}

const heldIn = (points: Float64Array, ball: number): HeldByBody => ({
  heart: middleOf(points),
  ball,
  plates: platesOf(points),
  points,
});

/** Parts that hold together: the heart is that of the part with the largest ball. */
function together(parts: readonly Made[]): Made {
  if (parts.length === 0) throw new RangeError('a body has no parts, expected at least one');
  const thickest = parts.reduce((best, part) => (part.held.ball > best.held.ball ? part : best));
  return {
    pieces: parts.flatMap(({ pieces }) => pieces),
    held: {
      heart: thickest.held.heart,
      ball: thickest.held.ball,
      plates: parts.flatMap(({ held }) => held.plates),
      points: Float64Array.from(parts.flatMap(({ held }) => [...held.points])),
    },
  };
}

function over(name: string, value: number): number {
  if (value > 0 && value < Infinity) return value;
  throw new RangeError(`${name} is ${value} m, expected a length over 0`);
}

function boxPoints(size: readonly [number, number, number]): Float64Array {
  const [x, y, z] = size.map((side) => over('size', side) / 2) as [number, number, number];
  const points: number[] = [];
  for (const i of [-x, x]) for (const j of [-y, y]) for (const k of [-z, z]) points.push(i, j, k);
  return Float64Array.from(points);
}

function roundPoints(radius: number, length: number): Float64Array {
  const points: number[] = [];
  for (let i = 0; i < ROUND; i++) {
    const angle = (2 * Math.PI * i) / ROUND;
    for (const z of [-length / 2, length / 2])
      points.push(radius * Math.cos(angle), radius * Math.sin(angle), z);
  }
  return Float64Array.from(points);
}

/** A paraboloid, bottom down, cut into wedges and these at half their length: each the hull of its front
 * face's corners, which lies over that face, and of the same lowered by the thickness and by as much as
 * the back face may hang below its corners: its curvature times the squared radius of the circle that
 * holds a piece, 0.35 of the rim's. */
function dishMade(diameter: number, depth: number, thickness: number): Made {
  const own = over('diameter', diameter) / 2;
  const rim = own / Math.cos(Math.PI / WEDGES);
  over('depth', depth);
  const height = (r: number): number => depth * (r / own) ** 2;
  const lower = over('thickness', thickness) + height(0.35 * rim);
  const pieces: Float64Array[] = [];
  for (let w = 0; w < WEDGES; w++)
    for (const [near, far] of [
      [0, rim / 2],
      [rim / 2, rim],
    ] as const) {
      const points: number[] = [];
      for (const r of near === 0 ? [0, far] : [near, far])
        for (const k of r === 0 ? [0] : [w, w + 1]) {
          const angle = (2 * Math.PI * k) / WEDGES;
          for (const down of [0, lower])
            points.push(r * Math.cos(angle), r * Math.sin(angle), height(r) - down);
        }
      pieces.push(Float64Array.from(points));
    }
  return { pieces, held: heldByDish(own, depth, thickness) };
}

/** What a dish holds: where a plane touches its front it lies within the thickness up to √(t / a) around,
 * `a` the curvature: on a paraboloid z = a r² the front is a d² over any such plane, d measured level. */
function heldByDish(own: number, depth: number, thickness: number): HeldByBody {
  const a = depth / own ** 2;
  const far = Math.sqrt(thickness / a);
  const plates: Plate[] = [];
  const points: number[] = [];
  for (const r of [0, own / 2, (7 * own) / 8])
    for (let k = 0; k < (r === 0 ? 1 : WEDGES); k++) {
      const angle = (2 * Math.PI * k) / WEDGES;
      const touch: Vec3 = [r * Math.cos(angle), r * Math.sin(angle), a * r * r];
      const reach = Math.min(far, r === 0 ? own : Math.max(own - r, 0));
      const u: Vec3 = [Math.cos(angle), Math.sin(angle), 2 * a * r];
      const v: Vec3 = [-Math.sin(angle), Math.cos(angle), 0];
      const corners = Array.from({ length: 12 }, (_, i) => {
        const [c, s] = [Math.cos((i * Math.PI) / 6), Math.sin((i * Math.PI) / 6)];
        return plus(touch, plus(scale(u, reach * c), scale(v, reach * s)));
      });
      plates.push(plateOn(touch, cross(u, v), corners));
      points.push(...touch);
    }
  for (let k = 0; k < WEDGES; k++) {
    const angle = (2 * Math.PI * k) / WEDGES;
    points.push(own * Math.cos(angle), own * Math.sin(angle), depth);
    points.push(own * Math.cos(angle), own * Math.sin(angle), depth - thickness);
  }
  points.push(0, 0, -thickness);
  return {
    heart: [0, 0, 0],
    ball: 0,
    plates,
    points: Float64Array.from(points),
  };
}

/** The pieces of a body where it is. */
export const placedAt = (body: Body, pose: Pose): Float64Array[] => {
  const matrix = matrixOf(pose);
  return body.pieces.map((piece) => movedInto(new Float64Array(piece.length), piece, matrix, pose));
};

/** The axes of a turned body, as columns. */
type Matrix = readonly [Vec3, Vec3, Vec3];

/** The axes of a body in a pose. */
export const matrixOf = ({ turn }: Pick<Pose, 'turn'>): Matrix => [
  turned(turn, [1, 0, 0]),
  turned(turn, [0, 1, 0]),
  turned(turn, [0, 0, 1]),
];

function movedInto(
  moved: Float64Array,
  piece: Float64Array,
  [a, b, c]: Matrix,
  { at }: Pose,
): Float64Array {
  for (let i = 0; i < piece.length; i += 3) {
    const [x, y, z] = [piece[i], piece[i + 1], piece[i + 2]];
    moved[i] = a[0] * x + b[0] * y + c[0] * z + at[0];
    moved[i + 1] = a[1] * x + b[1] * y + c[1] * z + at[1];
    moved[i + 2] = a[2] * x + b[2] * y + c[2] * z + at[2];
  }
  return moved;
}

/** How far a body's lowest and highest points are from its origin in a turn, m, from outside. */
export function heightsIn(body: Body, turn: Pose['turn']): readonly [low: number, high: number] {
  let [low, high] = [Infinity, -Infinity];
  for (const piece of body.pieces) {
    const [own, top] = spanIn(piece, turn);
    low = Math.min(low, own);
    high = Math.max(high, top);
  }
  return [low, high];
}

/** How far the lowest and highest of some points are above the origin in a turn, m. */
export function spanIn(points: Float64Array, turn: Pose['turn']): readonly [number, number] {
  const [x, y, z] = matrixOf({ turn }).map((axis) => axis[2]) as [number, number, number];
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < points.length; i += 3) {
    const height = x * points[i] + y * points[i + 1] + z * points[i + 2];
    if (height < low) low = height;
    if (height > high) high = height;
  }
  return [low, high];
}
