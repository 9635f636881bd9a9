// The velocity pressure by the lead's choice: one code's, or the highest of all.

import type { CodeChoice } from './laws.ts';
import type { Override } from './numbers.ts';
import {
  type DesignWind,
  peakPressure,
  type Site,
  WIND_CODES,
  type WindCode,
} from './peak-pressure.ts';
import type { Sourced } from './provenance.ts';

/** Peak pressure at a height above the ground (m), Pa, and the code that it is from: of "worst of
 * all" the highest, of equals the first. RangeError as in `peakPressure`.
 * Source: the clauses of each code's folder. */
export function designPressure(
  choice: CodeChoice,
  wind: DesignWind,
  site: Site,
  height: number,
  overrides: readonly Override[] = [],
): Sourced & { readonly code: WindCode } {
  const codes = choice === 'worst of all' ? WIND_CODES : [choice];
  return codes
    .map((code) => ({ code, ...peakPressure(code, wind, site, height, overrides) }))
    .reduce((worst, next) => (next.value > worst.value ? next : worst));
}
