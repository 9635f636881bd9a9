// From what the lead chose to what the laws are asked.

import { snowCases716 } from './asce-7-16/snow.ts';
import { designPressure } from './design-pressure.ts';
import { snowCasesEn } from './en-1991-1-3/snow.ts';
import { crownHeight, type ShellForm } from './law.ts';
import type { WindCode } from './peak-pressure.ts';
import type { Sourced } from './provenance.ts';
import type { LoadsSettings } from './schema.ts';
import type { SnowCase } from './snow/panels.ts';
import type { WindQuestion } from './wind-cases.ts';

/** The form of a shell by its sphere and the mean height of its base ring (shell's frame, m), with
 * the height above the ground that the lead gave.
 * Source: geometry. */
export const formOf = (
  settings: Pick<LoadsSettings, 'baseHeight'>,
  radius: number,
  baseZ: number,
): ShellForm => ({ radius, baseZ, baseHeight: settings.baseHeight });

/** What to ask of the wind on a shell.
 * Source: the lead's choices. */
export const windQuestion = (
  { code, law, overrides, doorOpen }: LoadsSettings,
  form: ShellForm,
  directions: readonly number[],
): WindQuestion => ({ form, code, law, directions, overrides, doorOpen });

/** The design velocity pressure, Pa, for a shell or for a stage that reaches `height` above the
 * ground (m; the crown's where left out); null where no design wind is given.
 * Source: the clauses of each code's folder. */
export function settingsPressure(
  settings: LoadsSettings,
  form: ShellForm,
  height: number = crownHeight(form),
): (Sourced & { readonly code: WindCode }) | null {
  const { code, wind, overrides } = settings;
  return wind ? designPressure(code, wind, settings, height, overrides) : null;
}

/** The snow cases by the lead's choice; none where no snow on the ground is given or it is 0.
 * Source: the clauses of each code's folder. */
export function snowCases(settings: LoadsSettings, form: ShellForm): SnowCase[] {
  const { snowCode, groundSnow, slippery, overrides } = settings;
  if (groundSnow === null || groundSnow === 0) return [];
  return [
    ...(snowCode === 'en 1991-1-3' ? [] : snowCases716(groundSnow, slippery, overrides)),
    ...(snowCode === 'asce 7-16' ? [] : snowCasesEn(form, groundSnow, overrides)),
  ];
}
