// The internal pressures to be taken in turn for a shell as open as it is.

import { type Enclosure, internalPressure716 } from './asce-7-16/internal.ts';
import { internalBehindOpening, internalClosed } from './en-1991-1-4/internal.ts';
import type { CodeChoice } from './laws.ts';
import { numberOf, type Override } from './numbers.ts';
import { mergeSources, type Provenance, type Sourced } from './provenance.ts';

/** Internal pressures of a shell by how open it is; the external coefficient at its openings is yet
 * to be told. */
export interface InternalLaw {
  /** Lowest and highest coefficient, positive outward, by the external one at the openings. */
  readonly range: (atOpening: number) => readonly [number, number];
  readonly sources: readonly Provenance[];
}

/** Lowest and highest internal coefficient by the code picked, or over all of them. A half-open shell
 * also takes the suction of an open top; ASCE 7's is taken with either sign.
 * Source: ASCE 7-16, Table 26.13-1; EN 1991-1-4:2005, 7.2.9. */
export function internalLaw(
  code: CodeChoice,
  enclosure: Enclosure,
  overrides: readonly Override[] = [],
): InternalLaw {
  const fixed: Sourced<readonly number[]>[] = [];
  let behind: Sourced | null = null;
  if (code !== 'en 1991-1-4') {
    const { value, sources } = internalPressure716(enclosure, overrides);
    fixed.push({ value: [-value, value], sources });
  }
  if (code === 'en 1991-1-4' || code === 'worst of all') {
    fixed.push(internalClosed(overrides));
    if (enclosure !== 'closed') behind = internalBehindOpening(1, 3, overrides);
  }
  if (enclosure === 'half open') {
    const { value, sources } = numberOf('openTopInternal', overrides);
    fixed.push({ value: [value], sources });
  }
  const all = fixed.flatMap((part) => part.value);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const share = behind?.value;
  return {
    range: (atOpening) =>
      share === undefined
        ? [least, most]
        : [Math.min(least, share * atOpening), Math.max(most, share * atOpening)],
    sources: mergeSources(...fixed.map((part) => part.sources), behind?.sources ?? []),
  };
}
