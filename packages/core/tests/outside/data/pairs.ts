// Comparison of computed with published values, within a stated tolerance.

/** A computed and a published value. */
export interface Pair {
  readonly what: string;
  readonly actual: number;
  readonly expected: number;
}

/** The pairs that are not within the tolerance. With `shift` the published values are moved first:
 * moved by ten tolerances none may be left, or the check could not fail. */
export const misfits = (pairs: readonly Pair[], tolerance: number, shift = 0): Pair[] =>
  pairs.filter(({ actual, expected }) => !(Math.abs(actual - expected - shift) <= tolerance));
