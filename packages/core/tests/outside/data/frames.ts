// Turning one set of points onto another by two points that are known in both.

import {
  add,
  cross,
  dot,
  normalize,
  scale,
  subtract,
  type Vec3,
} from '../../../src/math/vector.ts';

/** Three unit axes, right-handed. */
export type Frame = readonly [Vec3, Vec3, Vec3];

/** First axis to a, second towards b. */
export function frameOf(a: Vec3, b: Vec3): Frame {
  const first = normalize(a);
  const second = normalize(subtract(b, scale(first, dot(first, b))));
  return [first, second, cross(first, second)];
}

/** The rotation that brings one frame onto another. */
export const turnBetween =
  (from: Frame, to: Frame) =>
  (point: Vec3): Vec3 =>
    to.map((axis, m) => scale(axis, dot(from[m] as Vec3, point))).reduce(add);
