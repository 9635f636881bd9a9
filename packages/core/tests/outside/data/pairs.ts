// Comparison of computed with published values, within a stated tolerance.

import { record } from './checked.ts';

/** A computed and a published value. */
export interface Pair {
  readonly what: string;
  readonly actual: number;
  readonly expected: number;
}

/** The pairs that are not within the tolerance. With `shift` the published values are moved first:
 * moved by ten tolerances none may be left, or the check could not fail. */
export function misfits(pairs: readonly Pair[], tolerance: number, shift = 0): Pair[] {
  if (shift === 0) recordPairs(pairs, tolerance);
  return pairs.filter(
    ({ actual, expected }) => !(Math.abs(actual - expected - shift) <= tolerance),
  );
}

/** Up to a dozen pairs each for itself, more of them by the worst. */
function recordPairs(pairs: readonly Pair[], allowed: number): void {
  const off = pairs.map(({ actual, expected }) => Math.abs(actual - expected));
  const most = off.indexOf(Math.max(...off));
  pairs.forEach(({ what, actual, expected }, i) => {
    if (pairs.length <= 12 || i === most)
      record({
        what,
        got: actual,
        expected,
        error: off[i],
        allowed,
        measure: 'absolute',
        count: pairs.length <= 12 ? 1 : pairs.length,
      });
  });
}
