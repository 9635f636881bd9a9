// The angle between a panel's face and the plane through one of its sides and the sphere's centre,
// measured inside: where two panels meet, theirs add up to the dihedral. Radians, metres.
//
//        circle's centre  d  middle of side      d = ρ cos θ, negative where the centre lies beyond
//   face  ───────┬───────────┐                   the side; h = √(R² − ρ²). The angle is
//              h │         ╱                     atan2(h, d): 90° where the sphere is flat.
//                │      ╱  plane through side and sphere's centre

import { planeDerivatives } from './derivatives.ts';
import { cosOfLeg, type SpherePolygon } from './polygon.ts';

/** Angles of all sides and how they change. */
export interface FlangeAngles {
  /** Side → angle. */
  readonly angles: readonly number[];
  /** Angle i by side j at [i n + j], radians per metre. */
  readonly bySides: Float64Array;
  /** Angle by radius, radians per metre. */
  readonly byRadius: readonly number[];
}

/** Flange angles of `polygon`, made by polygonOnSphere with the same radius. Derivatives are not
 * finite where its circle is as wide as the sphere. */
export function flangeAngles(polygon: SpherePolygon, radius: number): FlangeAngles {
  const { circumradius: rho, halfAngles } = polygon;
  const n = halfAngles.length;
  const height = cosOfLeg(rho, radius) * radius;
  const offsets = halfAngles.map((theta) => rho * Math.cos(theta));
  const bySides = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const { byHalfAngles, byCircumradius } = planeDerivatives(polygon, j);
    const heightRate = (-rho / height) * byCircumradius;
    halfAngles.forEach((theta, i) => {
      const offset = offsets[i] as number;
      const offsetRate =
        Math.cos(theta) * byCircumradius - rho * Math.sin(theta) * (byHalfAngles[i] as number);
      bySides[i * n + j] =
        (offset * heightRate - height * offsetRate) / (height ** 2 + offset ** 2);
    });
  }
  return {
    angles: offsets.map((offset) => Math.atan2(height, offset)),
    bySides,
    byRadius: offsets.map((offset) => (offset * radius) / height / (height ** 2 + offset ** 2)),
  };
}
