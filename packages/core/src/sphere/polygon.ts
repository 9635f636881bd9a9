// A flat panel whose corners lie on a sphere: its sides and the sphere's radius fix everything.
// Lengths in metres (any one unit works), angles in radians, sides in turning order.
//
//              P  pole of the panel's circle      Right triangle P, middle of side, corner:
//             /|\                                 sin α = ρ / R, at P the plane half angle θ,
//          α / | \ α                              at the corner the base angle
//           /  |θ \                               β = atan2(cos θ, sin θ cos α).
//   corner /β__|___\ corner                       Where P lies beyond the longest side, its θ
//            side                                 is over 90° and its β comes out negative.
//
// Corner i is β of side i−1 plus β of side i; the solid angle is the sum of the excesses
// 2 (θ + β − π/2) of the double triangles. Napier's rules, as in any textbook of spherical
// trigonometry.

import { axialAngle } from './chord.ts';
import { cyclicPolygon, type NoPolygon } from './cyclic.ts';

/** A polygon with its corners on a sphere. Corner i is where side i starts, after side i − 1. */
export interface SpherePolygon {
  readonly ok: true;
  /** Angle at each corner between the great-circle arcs above the sides. */
  readonly corners: readonly number[];
  /** Angle at each corner between the sides themselves, in the panel's plane. */
  readonly planeCorners: readonly number[];
  /** Solid angle seen from the sphere's centre, steradians. */
  readonly solidAngle: number;
  /** Radius of the circle through the corners. */
  readonly circumradius: number;
  /** Area of the flat panel. */
  readonly area: number;
  /** Angle between each side and the radius at its ends: 90° less half the central angle. */
  readonly axialAngles: readonly number[];
  /** Half the angle of each side seen from the circle's centre, in the plane; together π. */
  readonly halfAngles: readonly number[];
  /** Index of the longest side, the first of equals. */
  readonly longest: number;
  /** True where the circle's centre lies inside or on the polygon. */
  readonly centreInside: boolean;
}

/**
 * The polygon with these sides and its corners on a sphere of radius R, or why there is none: a
 * side is no length, the longest is not shorter than the others together, or the polygon's circle
 * is wider than the sphere. A circle as wide as the sphere is allowed: its corners are then 180°,
 * or 0° at the ends of a longest side with the centre beyond it.
 */
export function polygonOnSphere(
  sides: readonly number[],
  radius: number,
): SpherePolygon | NoPolygon {
  if (!(radius > 0 && radius < Infinity))
    return { ok: false, why: { reason: 'no radius', found: radius } };
  const plane = cyclicPolygon(sides);
  if (!plane.ok) return plane;
  const { circumradius, halfAngles, longest, centreInside } = plane;
  const by = circumradius - radius;
  if (by > 0) return { ok: false, why: { reason: 'larger than the sphere', side: longest, by } };
  const cosLeg = cosOfLeg(circumradius, radius);
  const bases = halfAngles.map((theta) => baseAngle(theta, cosLeg));
  return {
    ok: true,
    corners: pairSums(bases),
    planeCorners: pairSums(halfAngles.map((theta) => Math.PI / 2 - theta)),
    solidAngle: sum(halfAngles.map((theta) => excess(theta, circumradius / radius, cosLeg))),
    circumradius,
    area: (circumradius ** 2 / 2) * sum(halfAngles.map((theta) => Math.sin(2 * theta))),
    axialAngles: sides.map((side) => axialAngle(side, radius)),
    halfAngles,
    longest,
    centreInside,
  };
}

/** Cosine of the leg arc α, sin α = ρ / R, keeping its digits near ρ = R. */
export const cosOfLeg = (circumradius: number, radius: number): number =>
  Math.sqrt((radius - circumradius) * (radius + circumradius)) / radius;

const baseAngle = (theta: number, cosLeg: number): number =>
  Math.atan2(Math.cos(theta), Math.sin(theta) * cosLeg);

/** 2 (θ + β − π/2), by the tangent of the difference so that small panels keep their digits. */
function excess(theta: number, sinLeg: number, cosLeg: number): number {
  const s = Math.sin(theta);
  const c = Math.cos(theta);
  const versedLeg = (sinLeg * sinLeg) / (1 + cosLeg);
  return 2 * Math.atan2(s * c * versedLeg, c * c + cosLeg * s * s);
}

const pairSums = (values: readonly number[]): number[] =>
  values.map((value, i) => (values[(i + values.length - 1) % values.length] as number) + value);

const sum = (values: readonly number[]): number => values.reduce((total, v) => total + v, 0);
