// A triangle in space laid into its own plane: axis x along its first side, y in the plane, z along
// its normal. What the elements on triangles share.

import { cross, dot, norm, normalize, scale, subtract, type Vec3 } from '../../math/vector.ts';

/** A triangle in its own plane. */
export interface FlatTriangle {
  /** Unit vectors of its axes. */
  readonly axes: readonly [Vec3, Vec3, Vec3];
  /** Corners in its plane, metres; the first at the origin. */
  readonly x: readonly [number, number, number];
  readonly y: readonly [number, number, number];
  /** Square metres. */
  readonly area: number;
  /** Gradients of the three area coordinates, per metre. */
  readonly dx: readonly [number, number, number];
  readonly dy: readonly [number, number, number];
}

/** The triangle between three points. Throws RangeError where they lie on one line. */
export function flatTriangle(
  nodes: readonly [number, number, number],
  points: readonly [Vec3, Vec3, Vec3],
): FlatTriangle {
  const first = subtract(points[1], points[0]);
  const second = subtract(points[2], points[0]);
  const normal = cross(first, second);
  const twice = norm(normal);
  if (!(twice > 1e-12 * norm(first) * norm(second)))
    throw new RangeError(`nodes ${nodes.join(', ')} of a triangle lie on one line`);
  const ex = normalize(first);
  const ez = scale(normal, 1 / twice);
  const ey = cross(ez, ex);
  const x = [0, norm(first), dot(second, ex)] as const;
  const y = [0, 0, dot(second, ey)] as const;
  return {
    axes: [ex, ey, ez],
    x,
    y,
    area: twice / 2,
    dx: [(y[1] - y[2]) / twice, (y[2] - y[0]) / twice, (y[0] - y[1]) / twice],
    dy: [(x[2] - x[1]) / twice, (x[0] - x[2]) / twice, (x[1] - x[0]) / twice],
  };
}

/** Plane stress: stresses (along x, along y, shear) by strains, pascals, 3 × 3 by rows. */
export function planeStress(young: number, poisson: number): Float64Array {
  const factor = young / (1 - poisson * poisson);
  return Float64Array.of(
    factor,
    factor * poisson,
    0,
    factor * poisson,
    factor,
    0,
    0,
    0,
    (factor * (1 - poisson)) / 2,
  );
}

/** Rows of the membrane strains (εx, εy, γ) by the movements of the corners in space: 3 × 9. */
export function membraneRows({ axes: [ex, ey], dx, dy }: FlatTriangle): Float64Array {
  const rows = new Float64Array(27);
  for (let corner = 0; corner < 3; corner++)
    for (let k = 0; k < 3; k++) {
      const at = 3 * corner + k;
      rows[at] = dx[corner] * ex[k];
      rows[9 + at] = dy[corner] * ey[k];
      rows[18 + at] = dy[corner] * ex[k] + dx[corner] * ey[k];
    }
  return rows;
}

/** What stresses in the plane (σx, σy, τ, pascals, times the thickness: newtons per metre) do to the
 * stiffness of the corners' movements: 9 × 9, by rows. */
export function triangleGeometric(
  { area, dx, dy }: FlatTriangle,
  [nx, ny, nxy]: readonly [number, number, number],
): Float64Array {
  const block = new Float64Array(81);
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++) {
      const value =
        area * (nx * dx[i] * dx[j] + ny * dy[i] * dy[j] + nxy * (dx[i] * dy[j] + dy[i] * dx[j]));
      for (let k = 0; k < 3; k++) block[(3 * i + k) * 9 + 3 * j + k] = value;
    }
  return block;
}
