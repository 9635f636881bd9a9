// What is believed of the unknowns of a CornerModel: a joint Gaussian, sharpened by every star
// that closes and every seam that joins two kinds (one step of a Kalman filter each).
//
// An equation is sparse: Σ coefficient · unknown = value, exactly. Its innovation is how far the
// present mean is off; innovation² / variance is the misfit that the equation costs.

/** Joint Gaussian of the unknowns; changed in place by {@link conditionInto}. */
export interface Belief {
  readonly size: number;
  readonly mean: Float64Array;
  /** size × size, symmetric, row by row. */
  readonly covariance: Float64Array;
}

/** A sparse linear equation; its arrays may be longer than `terms`. */
export interface Equation {
  terms: number;
  readonly index: Int32Array;
  readonly coefficient: Float64Array;
  value: number;
}

/** How far an equation is off, and the variance it was known with. */
export interface Innovation {
  readonly off: number;
  readonly variance: number;
}

/** A belief of `size` unknowns, all zero with certainty. */
export const makeBelief = (size: number): Belief => ({
  size,
  mean: new Float64Array(size),
  covariance: new Float64Array(size * size),
});

/** An equation with room for `room` terms. */
export const makeEquation = (room: number): Equation => ({
  terms: 0,
  index: new Int32Array(room),
  coefficient: new Float64Array(room),
  value: 0,
});

/** Copies one belief over another of the same size. */
export function copyBeliefInto(from: Belief, to: Belief): void {
  to.mean.set(from.mean);
  to.covariance.set(from.covariance);
}

/** Adds a term, joined to the one with the same index where there is one. */
export function addTerm(equation: Equation, index: number, coefficient: number): void {
  for (let i = 0; i < equation.terms; i++)
    if (equation.index[i] === index) {
      equation.coefficient[i] = (equation.coefficient[i] as number) + coefficient;
      return;
    }
  equation.index[equation.terms] = index;
  equation.coefficient[equation.terms] = coefficient;
  equation.terms++;
}

/** The innovation of an equation, without changing the belief. */
export function innovationOf(belief: Belief, equation: Equation): Innovation {
  let off = equation.value;
  let variance = 0;
  const { covariance, mean, size } = belief;
  for (let i = 0; i < equation.terms; i++) {
    const row = (equation.index[i] as number) * size;
    const a = equation.coefficient[i] as number;
    off -= a * (mean[equation.index[i] as number] as number);
    for (let j = 0; j < i; j++)
      variance +=
        2 *
        a *
        (equation.coefficient[j] as number) *
        (covariance[row + (equation.index[j] as number)] as number);
    variance += a * a * (covariance[row + (equation.index[i] as number)] as number);
  }
  return { off, variance };
}

/** Takes the equation as true: mean and covariance are conditioned on it. `gain` is scratch of the
 * belief's size. The innovation must have been taken from this belief, with a variance above 0. */
export function conditionInto(
  belief: Belief,
  equation: Equation,
  innovation: Innovation,
  gain: Float64Array,
): void {
  const { covariance, mean, size } = belief;
  gain.fill(0);
  for (let i = 0; i < equation.terms; i++) {
    const row = (equation.index[i] as number) * size;
    const a = equation.coefficient[i] as number;
    for (let j = 0; j < size; j++)
      gain[j] = (gain[j] as number) + a * (covariance[row + j] as number);
  }
  const step = innovation.off / innovation.variance;
  for (let i = 0; i < size; i++) {
    const g = gain[i] as number;
    if (g === 0) continue;
    mean[i] = (mean[i] as number) + g * step;
    const share = g / innovation.variance;
    const row = i * size;
    for (let j = 0; j < size; j++)
      covariance[row + j] = (covariance[row + j] as number) - share * (gain[j] as number);
  }
}
