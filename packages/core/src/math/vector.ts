// Vectors of three numbers, plain and immutable. Right-handed axes; lengths in the caller's unit.

/** A point or direction in space. */
export type Vec3 = readonly [number, number, number];

/** a + b. */
export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

/** a − b. */
export const subtract = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/** s · a. */
export const scale = (a: Vec3, s: number): Vec3 => [a[0] * s, a[1] * s, a[2] * s];

/** Scalar product. */
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Vector product a × b, right-handed. */
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Euclidean length. */
export const norm = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);

/** Distance between two points. */
export const distance = (a: Vec3, b: Vec3): number =>
  Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** The unit vector along a; the zero vector gives NaN. */
export const normalize = (a: Vec3): Vec3 => scale(a, 1 / norm(a));

/** a turned by `angle` radians about the unit vector `axis`, by the right-hand rule (Rodrigues). */
export function rotateAbout(a: Vec3, axis: Vec3, angle: number): Vec3 {
  const c = Math.cos(angle);
  const along = scale(axis, dot(axis, a) * (1 - c));
  return add(add(scale(a, c), scale(cross(axis, a), Math.sin(angle))), along);
}

/** The i-th point of a flat array with stride 3. */
export const pointAt = (flat: ArrayLike<number>, i: number): Vec3 => [
  flat[3 * i] as number,
  flat[3 * i + 1] as number,
  flat[3 * i + 2] as number,
];
