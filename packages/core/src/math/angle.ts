// Angles in radians. The inverse functions clamp, so that rounding just past ±1 is no NaN.

/** Full turn, radians. */
export const TAU = 2 * Math.PI;

/** arccos with its argument clamped to [−1, 1]; NaN stays NaN. */
export const acos = (x: number): number => Math.acos(Math.min(1, Math.max(-1, x)));

/** arcsin with its argument clamped to [−1, 1]; NaN stays NaN. */
export const asin = (x: number): number => Math.asin(Math.min(1, Math.max(-1, x)));

/** Radians to degrees. */
export const toDegrees = (radians: number): number => (radians * 180) / Math.PI;

/** Degrees to radians. */
export const toRadians = (degrees: number): number => (degrees * Math.PI) / 180;
