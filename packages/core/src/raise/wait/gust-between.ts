// The worst gust of the weeks between two trips, by the code that the lead chose: the design wind for so
// short a standing. At the crown, m/s.

import { numberOf } from '../../loads/numbers.ts';
import { flagsOf, type Provenance } from '../../loads/provenance.ts';
import { formOf, settingsPressure } from '../../loads/question.ts';
import { gustOfPressure } from '../../loads/reported-wind/gust.ts';
import type { LoadsSettings } from '../../loads/schema.ts';
import { baseRing } from '../../shell/rims.ts';
import type { Shell } from '../../shell/shell.ts';

/** The gust to reckon with while a shell is left for some days; null where no design wind is given.
 * RangeError for no days, or over 36,500. */
export function gustBetween(
  loads: LoadsSettings,
  shell: Shell,
  days: number,
): { readonly gust: number; readonly flags: readonly Provenance[] } | null {
  if (!(days > 0 && days <= 36_500))
    throw new RangeError(`it is left for ${days} days, expected over 0 to 36 500`);
  const form = formOf(loads, shell.radius, baseRing(shell)?.z.mean ?? 0);
  const pressure = settingsPressure({ ...loads, daysStanding: days }, form);
  if (pressure === null) return null;
  const density = numberOf('airDensity', loads.overrides);
  return { gust: gustOfPressure(pressure.value, density.value), flags: flagsOf(pressure) };
}
