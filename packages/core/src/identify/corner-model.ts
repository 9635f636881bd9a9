// The corners of all kinds as linear functions of what is not known exactly: the length of every
// side of every kind and the curvature of the sphere.
//
// Unknowns, one vector: entry s is the length of kind-side s less its reference length (metres),
// the last entry is κ / κ₀ − 1, where κ = 1 / R². Kind-sides are numbered through all kinds: kind
// k owns first[k] … first[k + 1] − 1, and each also names the corner where it starts.
// Neglected: second order in the side errors, (1 mm / 0.5 m)² ≈ 4e-6 rad a corner, and in κ; both
// vanish when the model is made again at the fitted sides and radius.

import { cornerDerivatives } from '../sphere/derivatives.ts';
import { polygonOnSphere } from '../sphere/polygon.ts';

/** Linear model of all corners about reference sides and a reference curvature. */
export interface CornerModel {
  /** First kind-side of each kind; one longer than the number of kinds. */
  readonly first: Int32Array;
  /** Kind-side → kind. */
  readonly kindOf: Int32Array;
  /** Kind-side → the one before it in the same kind, anticlockwise. */
  readonly before: Int32Array;
  /** Kind-side → the one after it. */
  readonly after: Int32Array;
  /** Reference lengths, metres. */
  readonly lengths: Float64Array;
  /** Reference curvature κ₀, 1/m². */
  readonly kappa: number;
  /** Corner angles at the reference, radians. */
  readonly angles: Float64Array;
  /** Corner i of a kind with n sides by its sides: slopes[slopeStart[i] … + n), radians per metre. */
  readonly slopes: Float64Array;
  readonly slopeStart: Int32Array;
  /** Corner by κ / κ₀, radians. */
  readonly kappaSlopes: Float64Array;
}

/** A panel's circle may be this wide against the sphere: at a great circle the corners have no
 * derivative, and just below they change too fast for a linear model. Panels of true shells stay
 * under 0.95, the tetrahedron's. */
const WIDEST = 0.9999;

/** The model about these sides (kind → side lengths, metres) and κ₀ (1/m²), or null where a panel
 * has no place on that sphere or is all but cut in half by it. */
export function cornerModel(
  sides: readonly (readonly number[])[],
  kappa: number,
): CornerModel | null {
  const model = emptyModel(sides, kappa);
  const radius = 1 / Math.sqrt(kappa);
  for (let k = 0; k < sides.length; k++) {
    const own = sides[k] as readonly number[];
    const polygon = polygonOnSphere(own, radius);
    if (!polygon.ok || polygon.circumradius > WIDEST * radius) return null;
    const rates = cornerDerivatives(polygon, radius);
    const first = model.first[k] as number;
    own.forEach((_, i) => {
      model.angles[first + i] = polygon.corners[i] as number;
      // κ d/dκ = −(R / 2) d/dR
      model.kappaSlopes[first + i] = (-radius / 2) * (rates.cornersByRadius[i] as number);
      const at = model.slopeStart[first + i] as number;
      own.forEach((__, j) => {
        model.slopes[at + j] = rates.cornersBySides[i * own.length + j] as number;
      });
    });
  }
  return model;
}

/** Where each kind's sides start when the sides of all kinds are numbered through; one longer than
 * the number of kinds. */
export function firstSides(sides: readonly (readonly number[])[]): Int32Array {
  const first = new Int32Array(sides.length + 1);
  sides.forEach((own, k) => {
    first[k + 1] = (first[k] as number) + own.length;
  });
  return first;
}

function emptyModel(sides: readonly (readonly number[])[], kappa: number): CornerModel {
  const first = firstSides(sides);
  const count = first[sides.length] as number;
  const kindOf = new Int32Array(count);
  const before = new Int32Array(count);
  const after = new Int32Array(count);
  const slopeStart = new Int32Array(count);
  let slopes = 0;
  sides.forEach((own, k) => {
    const start = first[k] as number;
    own.forEach((_, i) => {
      kindOf[start + i] = k;
      after[start + i] = start + ((i + 1) % own.length);
      before[start + i] = start + ((i + own.length - 1) % own.length);
      slopeStart[start + i] = slopes;
      slopes += own.length;
    });
  });
  return {
    first,
    kindOf,
    before,
    after,
    lengths: Float64Array.from(sides.flat()),
    kappa,
    angles: new Float64Array(count),
    slopes: new Float64Array(slopes),
    slopeStart,
    kappaSlopes: new Float64Array(count),
  };
}
