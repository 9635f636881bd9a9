// Domes by EN 1991-1-4:2005, 7.2.8: the three points that ASCE 7 took over, without a case B and
// without a gust factor, which the peak pressure holds already.

import { type ThreePoints, threePointLaw } from '../asce-7-16/dome.ts';
import type { PressureLaw, ShellForm } from '../law.ts';
import { fromMemory, mergeSources, type Sourced } from '../provenance.ts';

/** The law for a shell with these values at A, B and C; refuses what the rule of ASCE 7 refuses.
 * Source: EN 1991-1-4:2005, 7.2.8 and Fig. 7.12, from memory. */
export function enDome(form: ShellForm, points: Sourced<ThreePoints>): PressureLaw {
  const law = threePointLaw(form, points, 'A', { value: 1, sources: [] });
  return {
    ...law,
    name: 'EN 1991-1-4 three points',
    sources: mergeSources([fromMemory('EN 1991-1-4:2005, 7.2.8 (domes)')], law.sources),
  };
}
