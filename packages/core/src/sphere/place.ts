// Lays a panel against a seam: two of its corners are given on the sphere, the others follow.
// Origin at the sphere's centre; the panel lies to the left of the way from the first given
// corner to the second, seen from outside, so that its corners run anticlockwise.
//
//        e = along the seam, m = outward at its middle M, l = m × e = left along the sphere.
//        The panel's circle has its centre at distance ρ cos θ₀ from the seam's middle, so its
//        axis is p = (d m + ρ cos θ₀ l) / |M|, d = √(R² − ρ²); the corners run round p from there.

import {
  add,
  cross,
  distance,
  norm,
  normalize,
  scale,
  subtract,
  type Vec3,
} from '../math/vector.ts';
import type { NoPolygon } from './cyclic.ts';
import { cosOfLeg, polygonOnSphere } from './polygon.ts';

/** All corners of a polygon laid against a seam, or why it can't be. */
export type PlacedPolygon = { readonly ok: true; readonly corners: readonly Vec3[] } | NoPolygon;

/**
 * All corners of a panel whose side 0 runs from `from` to `to`, two points on the sphere of radius
 * `radius` about the origin: these two first, then the others, all on the sphere. Side 0 takes the
 * length that the two points have, `sides[0]` is not read; all other sides are kept exactly. No
 * polygon where the two points face each other across a diameter: the panel's plane is then free.
 */
export function placeCorners(
  from: Vec3,
  to: Vec3,
  sides: readonly number[],
  radius: number,
): PlacedPolygon {
  const seam = distance(from, to);
  const polygon = polygonOnSphere([seam, ...sides.slice(1)], radius);
  if (!polygon.ok) return polygon;
  const middle = scale(add(from, to), 0.5);
  const height = norm(middle);
  if (height === 0) return { ok: false, why: { reason: 'larger than the sphere', side: 0, by: 0 } };
  const { circumradius: rho, halfAngles } = polygon;
  const along = scale(subtract(to, from), 1 / seam);
  const left = normalize(cross(middle, along));
  const apothem = rho * Math.cos(halfAngles[0] as number);
  const depth = cosOfLeg(rho, radius) * radius;
  const axis = normalize(add(scale(middle, depth / height), scale(left, apothem)));
  const inward = cross(axis, along);
  const centre = scale(axis, depth);
  const corners: Vec3[] = [from, to];
  let angle = halfAngles[0] as number;
  for (let i = 1; i < sides.length - 1; i++) {
    angle += 2 * (halfAngles[i] as number);
    const arm = add(scale(along, rho * Math.sin(angle)), scale(inward, -rho * Math.cos(angle)));
    corners.push(add(centre, arm));
  }
  return { ok: true, corners };
}

/**
 * The third corner of a triangle to the left of the way `from` → `to`: on the sphere about the
 * origin that these two lie on, `onward` from `to` and `back` from `from`, metres. Null where there
 * is none. The fast form of {@link placeCorners} for triangles; small panels on a large sphere keep
 * their digits.
 */
export function placeNextCorner(from: Vec3, to: Vec3, onward: number, back: number): Vec3 | null {
  const middle = scale(add(from, to), 0.5);
  const height = norm(middle);
  const seam = distance(from, to);
  const along = scale(subtract(to, from), 1 / seam);
  const forth = ((back - onward) * (back + onward)) / (2 * seam);
  const drop = (onward * onward + back * back - seam * seam) / (4 * height);
  const square = (seam / 2 - forth) * (seam / 2 + forth) + drop * (2 * height - drop);
  if (!(square > 0)) return null;
  const left = normalize(cross(middle, along));
  const base = add(scale(middle, 1 - drop / height), scale(along, forth));
  return add(base, scale(left, Math.sqrt(square)));
}
