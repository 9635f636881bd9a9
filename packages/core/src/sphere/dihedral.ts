// The angle between two panels along their seam, measured inside the shell; radians.

import { cross, dot, normalize, subtract, type Vec3 } from '../math/vector.ts';

/**
 * Inside angle between two flat panels that meet along `from` → `to`: `left` is any other point of
 * the panel to the left of that way seen from outside, `right` any other point of the one to its
 * right. π where they lie flat, less where the seam stands out, more (up to 2π) where it is folded
 * in. NaN where a panel has no width.
 */
export function dihedral(from: Vec3, to: Vec3, left: Vec3, right: Vec3): number {
  const along = normalize(subtract(to, from));
  const leftNormal = normalize(cross(along, subtract(left, from)));
  const rightNormal = normalize(cross(along, subtract(right, from)));
  const sine = dot(along, cross(rightNormal, leftNormal));
  const angle = Math.atan2(sine, dot(leftNormal, rightNormal));
  return angle < 0 ? angle + 2 * Math.PI : angle;
}
