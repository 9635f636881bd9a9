// Tail probabilities. Source of the formulas: M. Abramowitz, I. A. Stegun, Handbook of
// Mathematical Functions (1964), 6.5.29 (series), 6.5.31 (continued fraction), 26.4 (chi-square).

/** Natural logarithm of Γ(x), x > 0: C. Lanczos' approximation with g = 7, nine terms (values from
 * the public GNU Scientific Library), right to 1e-14. */
export function logGamma(x: number): number {
  const terms = [
    676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406,
    12.507343278686905, -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
  ];
  let sum = 0.9999999999998099;
  terms.forEach((term, i) => {
    sum += term / (x + i);
  });
  const t = x + 6.5;
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}

/** Probability that a chi-square variable with `dof` degrees of freedom exceeds `x`; 1 for dof 0. */
export function chiSquareTail(x: number, dof: number): number {
  if (dof <= 0 || x <= 0) return 1;
  const [a, y] = [dof / 2, x / 2];
  const front = Math.exp(a * Math.log(y) - y - logGamma(a));
  return y < a + 1 ? 1 - front * lowerSeries(a, y) : front * upperFraction(a, y);
}

/** Σ yⁿ / (a (a + 1) … (a + n)). */
function lowerSeries(a: number, y: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < 1000 && term > sum * 1e-16; n++) {
    term *= y / (a + n);
    sum += term;
  }
  return sum;
}

/** The continued fraction of the upper incomplete gamma function, by Lentz's method. */
function upperFraction(a: number, y: number): number {
  let b = y + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let value = d;
  for (let i = 1; i < 1000; i++) {
    const step = i * (a - i);
    b += 2;
    d = 1 / (step * d + b);
    c = b + step / c;
    value *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return value;
}
