// The turns that bring a regular solid onto itself: 60, 24 or 12 rotations, no reflections.

import { add, cross, dot, normalize, scale, subtract, type Vec3 } from '../math/vector.ts';
import { type SolidName, solidOf } from './solid.ts';

/** A turn of space about the origin. */
export type Rotation = (point: Vec3) => Vec3;

/** All rotations of a solid as it stands in nets (a corner at the zenith), the identity first. */
export function rotationsOf(name: SolidName): Rotation[] {
  const { corners, faces } = solidOf(name);
  const frame = (a: number, b: number): Frame => frameOf(corners[a] as Vec3, corners[b] as Vec3);
  const [a, b] = faces[0] as readonly [number, number, number];
  const home = frame(a, b);
  return faces.flatMap(([p, q, r]) =>
    [frame(p, q), frame(q, r), frame(r, p)].map((there) => rotationFrom(home, there)),
  );
}

type Frame = readonly [Vec3, Vec3, Vec3];

function frameOf(a: Vec3, b: Vec3): Frame {
  const second = normalize(subtract(b, scale(a, dot(a, b))));
  return [a, second, cross(a, second)];
}

const rotationFrom =
  (from: Frame, to: Frame): Rotation =>
  (point) =>
    add(
      add(scale(to[0], dot(from[0], point)), scale(to[1], dot(from[1], point))),
      scale(to[2], dot(from[2], point)),
    );
