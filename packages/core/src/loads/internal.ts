// The internal pressures to be taken in turn for a shell as open as it is.

import { type Enclosure, internalPressure716 } from './asce-7-16/internal.ts';
import { internalBehindOpening, internalClosed } from './en-1991-1-4/internal.ts';
import type { CodeChoice } from './laws.ts';
import { numberOf, type Override } from './numbers.ts';
import { mergeSources, type Sourced } from './provenance.ts';

/** Lowest and highest internal coefficient (positive outward) by the code picked, or over all of
 * them. `atOpening` is the external coefficient where the openings are; a half-open shell also takes
 * the suction of an open top. ASCE 7's is taken with either sign.
 * Source: ASCE 7-16, Table 26.13-1; EN 1991-1-4:2005, 7.2.9. */
export function internalRange(
  code: CodeChoice,
  enclosure: Enclosure,
  atOpening: number,
  overrides: readonly Override[] = [],
): Sourced<readonly [number, number]> {
  const parts: Sourced<readonly number[]>[] = [];
  if (code !== 'en 1991-1-4') {
    const { value, sources } = internalPressure716(enclosure, overrides);
    parts.push({ value: [-value, value], sources });
  }
  if (code === 'en 1991-1-4' || code === 'worst of all') {
    parts.push(internalClosed(overrides));
    if (enclosure !== 'closed') {
      const { value, sources } = internalBehindOpening(atOpening, 3, overrides);
      parts.push({ value: [value], sources });
    }
  }
  if (enclosure === 'half open') {
    const { value, sources } = numberOf('openTopInternal', overrides);
    parts.push({ value: [value], sources });
  }
  const all = parts.flatMap((part) => part.value);
  return {
    value: [Math.min(...all), Math.max(...all)],
    sources: mergeSources(...parts.map((part) => part.sources)),
  };
}
