// How far hub-to-hub lengths lie beyond the measured ones, where nobody said: one length that is
// missing from every side alike. Sides of one length all grow with it in proportion, and so does the
// radius: then the net says nothing of it, and a length taken across a hub is needed.
//
// The prior of the sides x is Gaussian about the readings m, each side's own error with variance v
// and one shared error with variance σ². Given x, the shared error has the mean Σ w (x − m) and the
// variance 1 / (1/σ² + Σ 1/v), where w = (1/v) / (1/σ² + Σ 1/v); the net leaves x uncertain by its
// covariance C, which adds wᵀ C w. Exact for the linear model of the last step.

import type { Belief } from './belief.ts';
import { sharedShares } from './facts.ts';
import type { SideBelief } from './side-belief.ts';

/** A length shared by all sides, metres, with its standard deviation. */
export interface SharedLength {
  readonly value: number;
  readonly sd: number;
}

/** The net tells nothing of the allowance where its deviation stays above this share of the prior's. */
const UNTOLD = 0.6;

/** What the fitted sides say of the length that all readings lack; null where none is unknown.
 * `sides`: all kind-sides as fitted, metres; `fitted`: the belief of what is left to know of them. */
export function sharedLength(
  readings: SideBelief,
  sides: readonly number[],
  fitted: Belief,
): SharedLength | null {
  const shares = sharedShares(readings);
  if (!shares) return null;
  let value = 0;
  let left = 0;
  shares.weights.forEach((a, s) => {
    value += a * ((sides[s] as number) - (shares.measured[s] as number));
    shares.weights.forEach((b, t) => {
      left += a * b * (fitted.covariance[s * fitted.size + t] as number);
    });
  });
  return { value, sd: Math.sqrt(shares.variance + Math.max(0, left)) };
}

/** Whether a net tells the allowance apart from the radius. `priorSd`, metres, as it was before. */
export const isTold = (found: SharedLength, priorSd: number): boolean =>
  found.sd <= UNTOLD * priorSd;
