// The wind for a short exposure: the same climate, another yearly probability.

import { assertBetween } from '../doors.ts';
import { confirmed, fromMemory, type Provenance } from '../provenance.ts';

/** Eq. 4.2, checked against a published value for five years. */
export const PROBABILITY: Provenance = confirmed('EN 1991-1-4:2005, Eq. 4.2 (K 0.2, n 0.5)');

/** Factor cprob on the 50-year wind for a return period in years; 1 at 50. RangeError outside 1.1
 * to 10,000 years.
 * Source: EN 1991-1-4:2005, Eq. 4.2, with K 0.2 and n 0.5. */
export function probabilityFactor(returnPeriodYears: number): number {
  assertBetween('return period', returnPeriodYears, 1.1, 10_000, 'years');
  const tail = (p: number): number => 1 - 0.2 * Math.log(-Math.log(1 - p));
  return Math.sqrt(tail(1 / returnPeriodYears) / tail(0.02));
}

/** Table 3.1 of EN 1991-1-6, from memory. */
export const EXECUTION_PERIODS: Provenance = fromMemory(
  'EN 1991-1-6:2005, Table 3.1 (return period while building)',
);

/** Return period to build by, in years, for a work that stands so for some days: 2 to three days, 5
 * to three months, 10 to one year, 50 beyond. RangeError for no days or over 36,500.
 * Source: EN 1991-1-6:2005, Table 3.1, from memory. */
export function executionReturnPeriod(days: number): number {
  assertBetween('days standing', days, 0.01, 36_500, 'days');
  if (days <= 3) return 2;
  if (days <= 92) return 5;
  return days <= 365 ? 10 : 50;
}
