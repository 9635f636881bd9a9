// Learning curves: y = a n^b with b = log2 of the rate. Wright: y is the mean of the first n units;
// Crawford: y is the nth unit. Sources: T. P. Wright, Journal of the Aeronautical Sciences 3, 1936;
// R. M. Wideman, Canadian Journal of Civil Engineering 21, 1994, 939-953 ("80 %: average of first two
// 80 %, so the second unit took 60 %").

/** The exponent of a learning rate: 0.9 means that twice as many units take nine tenths each. */
export function learningExponent(rate: number): number {
  if (!(rate > 0 && rate <= 1)) throw new RangeError(`learning rate is ${rate}, expected 0 to 1`);
  return Math.log2(rate);
}

/** Wright: what the first n units take together, the first taking 1. n ≥ 0, parts of units allowed. */
export const wrightTotal = (n: number, rate: number): number =>
  n === 0 ? 0 : n ** (1 + learningExponent(rate));

/** Wright: what unit n takes, from 1. */
export const wrightUnit = (n: number, rate: number): number =>
  wrightTotal(n, rate) - wrightTotal(n - 1, rate);

/** Crawford: what unit n takes, from 1. */
export const crawfordUnit = (n: number, rate: number): number => n ** learningExponent(rate);

/** Crawford: what the first n units take together, summed one by one. */
export function crawfordTotal(n: number, rate: number): number {
  const b = learningExponent(rate);
  let sum = 0;
  for (let k = 1; k <= n; k++) sum += k ** b;
  return sum;
}

/** Mean time of a unit among `count` that follow `done` ones, against that of unit `settled` (Wright);
 * of the next one where the count is 0. */
export function learningFactor(done: number, count: number, settled: number, rate: number): number {
  const many = Math.max(1, count);
  const mean = (wrightTotal(done + many, rate) - wrightTotal(done, rate)) / many;
  return mean / wrightUnit(settled, rate);
}
