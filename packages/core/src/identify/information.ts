// What a reading or a look is expected to tell before it is taken, in bits. C. E. Shannon, "A
// Mathematical Theory of Communication" (1948): the mutual information of what is so and what one finds.
// Odds are taken in proportion; what is all but impossible adds nothing.

/** What a reading will be: a normal variable, metres and m² (or any one unit and its square). */
export interface Predicted {
  readonly mean: number;
  readonly variance: number;
}

/** Points on either side of a mean, and deviations that they reach, of the quadrature. */
const POINTS = 30;
const REACH = 6;

/** Entropy of a distribution, bits. */
export const entropy = (odds: readonly number[]): number => {
  const all = sum(odds);
  return odds.reduce((bits, p) => (p > 0 ? bits - (p / all) * Math.log2(p / all) : bits), 0);
};

/** Of which case holds, what a reading tells that is normal in each, bits: the expected logarithm of
 * its density in the true case over that in all, by the trapezoidal rule. Right to 1e-4 bits. */
export function readingBits(odds: readonly number[], cases: readonly Predicted[]): number {
  const all = sum(odds);
  let bits = 0;
  cases.forEach((own, i) => {
    const share = (odds[i] as number) / all;
    if (!(share > 0)) return;
    const sd = Math.sqrt(own.variance);
    let weights = 0;
    let mean = 0;
    for (let p = -POINTS; p <= POINTS; p++) {
      const z = (REACH * p) / POINTS;
      const weight = Math.exp((-z * z) / 2);
      weights += weight;
      mean += weight * Math.log2(oddsAt(odds, cases, own.mean + z * sd)[i] as number);
    }
    bits += share * (mean / weights - Math.log2(share));
  });
  return Math.max(0, bits);
}

/** The probability of each case once a reading came out as `x`; they add up to 1. */
export function oddsAt(odds: readonly number[], cases: readonly Predicted[], x: number): number[] {
  const logs = cases.map(({ mean, variance }, i) =>
    (odds[i] as number) > 0
      ? Math.log(odds[i] as number) - (x - mean) ** 2 / (2 * variance) - Math.log(variance) / 2
      : Number.NEGATIVE_INFINITY,
  );
  const most = Math.max(...logs);
  return inProportion(logs.map((log) => Math.exp(log - most)));
}

/** Of which case holds, what a look tells, bits. `sights`: case → how often one sees each thing. */
export function sightBits(odds: readonly number[], sights: readonly (readonly number[])[]): number {
  const own = inProportion(odds);
  const shares = sights.map(inProportion);
  const seen = (shares[0] ?? []).map((_, i) =>
    sum(own.map((p, c) => p * ((shares[c] as readonly number[])[i] as number))),
  );
  return Math.max(0, entropy(seen) - sum(own.map((p, c) => p * entropy(shares[c] as number[]))));
}

/** What is gained of a normal quantity as far as it matters, bits, when its variance falls from
 * `before` to `after`: what it tells of itself blurred by `tolerance`, a standard deviation. What is
 * known far within the tolerance gains nothing more. */
export const sharpeningBits = (before: number, after: number, tolerance: number): number =>
  Math.max(0, Math.log2((before + tolerance ** 2) / (after + tolerance ** 2)) / 2);

/** Weights scaled to add up to 1. */
export function inProportion(weights: readonly number[]): number[] {
  const all = sum(weights);
  return weights.map((weight) => weight / all);
}

/** The sum of a list. */
export const sum = (list: readonly number[]): number => list.reduce((all, x) => all + x, 0);
