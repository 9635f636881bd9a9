// Sides whose reading does not fit the closed net: each is compared with what the rest of the net
// says it should be, its own reading taken out.

import type { NetFit } from './fit.ts';
import type { SideBelief } from './side-belief.ts';

/** A side of a kind (both by index) and what the rest of the net expects of it. */
export interface SuspectSide {
  readonly kind: number;
  readonly side: number;
  /** Metres. */
  readonly measured: number;
  readonly expected: number;
  /** How far off, in standard deviations of the difference. */
  readonly off: number;
}

/** Off by more than this many standard deviations: 1 in 16 000 by noise. */
const SUSPECT = 4;

/** The suspect sides of a fit, the worst first. `readings` are those that the fit used, `stated`
 * those with the deviations that the pile states. */
export function suspectsOf(readings: SideBelief, stated: SideBelief, fit: NetFit): SuspectSide[] {
  const out: SuspectSide[] = [];
  let s = 0;
  readings.sides.forEach((own, kind) => {
    own.forEach((measured, side) => {
      const used = (readings.variances[kind] as readonly number[])[side] as number;
      const own = (stated.variances[kind] as readonly number[])[side] as number;
      const left = fit.variances[s++] as number;
      const fitted = (fit.sides[kind] as readonly number[])[side] as number;
      if (used - left <= 1e-6 * used) return;
      const expected = measured + ((fitted - measured) * used) / (used - left);
      const restVariance = (used * left) / (used - left);
      const off = Math.abs(measured - expected) / Math.sqrt(own + restVariance);
      if (off > SUSPECT) out.push({ kind, side, measured, expected, off });
    });
  });
  return out.sort((a, b) => b.off - a.off);
}
