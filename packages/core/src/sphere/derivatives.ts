// How the corners and the solid angle of a panel change with its sides and with the sphere's
// radius: exact derivatives of the formulas in polygon.ts. Radians, steradians and metres.
// From sin θᵢ = aᵢ / 2ρ and Σ θᵢ = π follows dρ/daⱼ = 1 / (2 cos θⱼ Σ tan θ); everything is
// multiplied by the longest side's cosine, so that a side along a diameter (a right triangle's
// hypotenuse) divides nothing by zero.

import { cosOfLeg, type SpherePolygon } from './polygon.ts';

/** Derivatives of the corners and the solid angle of a polygon with n sides. */
export interface CornerDerivatives {
  /** Corner i by side j at [i n + j], radians per metre. */
  readonly cornersBySides: Float64Array;
  /** Corner by radius, radians per metre. */
  readonly cornersByRadius: Float64Array;
  /** Solid angle by side, steradians per metre. */
  readonly solidAngleBySides: Float64Array;
  /** Solid angle by radius, steradians per metre; −2 Ω / R in the flat limit. */
  readonly solidAngleByRadius: number;
}

/**
 * Derivatives of `polygon`, made by polygonOnSphere with the same radius. Not finite where the
 * polygon's circle is as wide as the sphere: the corners then have no derivative.
 */
export function cornerDerivatives(polygon: SpherePolygon, radius: number): CornerDerivatives {
  const { circumradius: rho, halfAngles } = polygon;
  const n = halfAngles.length;
  const cosLeg = cosOfLeg(rho, radius);
  const cornersBySides = new Float64Array(n * n);
  const solidAngleBySides = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    const { byHalfAngles, byCircumradius } = planeDerivatives(polygon, j);
    const cosLegRate = (-rho / radius / cosLeg) * (byCircumradius / radius);
    const rates = baseRates(halfAngles, byHalfAngles, cosLeg, cosLegRate);
    for (let i = 0; i < n; i++) cornersBySides[i * n + j] = pairAt(rates.bases, i);
    solidAngleBySides[j] = rates.solidAngle;
  }
  const cosLegRate = (rho / radius) ** 2 / radius / cosLeg;
  const byRadius = baseRates(halfAngles, new Float64Array(n), cosLeg, cosLegRate);
  return {
    cornersBySides,
    cornersByRadius: byRadius.bases.map((_, i) => pairAt(byRadius.bases, i)),
    solidAngleBySides,
    solidAngleByRadius: byRadius.solidAngle,
  };
}

/** How half angles and circumradius change with side j: dθᵢ/daⱼ for all i, radians per metre, and
 * dρ/daⱼ. */
export function planeDerivatives(
  polygon: SpherePolygon,
  j: number,
): { byHalfAngles: Float64Array; byCircumradius: number } {
  const { circumradius: rho, halfAngles, longest } = polygon;
  const cosLongest = Math.cos(halfAngles[longest] as number);
  let total = Math.sin(halfAngles[longest] as number);
  halfAngles.forEach((theta, i) => {
    if (i !== longest) total += cosLongest * Math.tan(theta);
  });
  const share = j === longest ? 1 : cosLongest / Math.cos(halfAngles[j] as number);
  const byCircumradius = share / (2 * total);
  const byHalfAngles = new Float64Array(halfAngles.length);
  halfAngles.forEach((theta, i) => {
    if (i === longest) return;
    const own = i === j ? 1 / (2 * rho) : 0;
    const rate = (own - (Math.sin(theta) * byCircumradius) / rho) / Math.cos(theta);
    byHalfAngles[i] = rate;
    byHalfAngles[longest] = (byHalfAngles[longest] as number) - rate;
  });
  return { byHalfAngles, byCircumradius };
}

/** Rates of every base angle β = atan2(cos θ, sin θ cos α) and of the solid angle 2 Σ (β + θ) −
 * const, the latter with the flat part taken out by hand. */
function baseRates(
  halfAngles: readonly number[],
  halfAngleRates: Float64Array,
  cosLeg: number,
  cosLegRate: number,
): { bases: Float64Array; solidAngle: number } {
  const bases = new Float64Array(halfAngles.length);
  let solidAngle = 0;
  halfAngles.forEach((theta, i) => {
    const s = Math.sin(theta);
    const c = Math.cos(theta);
    const size = c * c + (cosLeg * s) ** 2;
    const rate = halfAngleRates[i] as number;
    bases[i] = -(cosLeg * rate + s * c * cosLegRate) / size;
    const excessRate = (1 - cosLeg) * (1 - s * s * (1 + cosLeg)) * rate - s * c * cosLegRate;
    solidAngle += (2 * excessRate) / size;
  });
  return { bases, solidAngle };
}

const pairAt = (values: Float64Array, i: number): number =>
  (values[(i + values.length - 1) % values.length] as number) + (values[i] as number);
