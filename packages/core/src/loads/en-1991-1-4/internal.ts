// Internal pressure by EN 1991-1-4:2005, 7.2.9.

import { numberOf, type Override } from '../numbers.ts';
import { reckonedFrom, type Sourced } from '../provenance.ts';

/** Internal pressure of a closed shell: the two values to be taken in turn, outward and suction.
 * Source: EN 1991-1-4:2005, 7.2.9(6) note 2, from memory. */
export function internalClosed(overrides: readonly Override[] = []): Sourced<[number, number]> {
  const over = numberOf('enInternalOver', overrides);
  const under = numberOf('enInternalUnder', overrides);
  return reckonedFrom([under.value, over.value], under, over);
}

/** Internal pressure behind a dominant opening with external coefficient `atOpening`: 0.75 of it
 * where the opening is twice all others together, 0.9 from three times on, straight in between.
 * RangeError for an opening less than twice the others: it is not dominant.
 * Source: EN 1991-1-4:2005, 7.2.9(5), from memory. */
export function internalBehindOpening(
  atOpening: number,
  timesOthers: number,
  overrides: readonly Override[] = [],
): Sourced {
  if (!(timesOthers >= 2))
    throw new RangeError(`opening is ${timesOthers} times all others, 2 or more is dominant`);
  const twice = numberOf('enDominantTwice', overrides);
  const thrice = numberOf('enDominantThrice', overrides);
  if (timesOthers >= 3) return reckonedFrom(thrice.value * atOpening, thrice);
  const share = twice.value + (thrice.value - twice.value) * (timesOthers - 2);
  return reckonedFrom(share * atOpening, twice, thrice);
}
