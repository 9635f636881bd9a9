// Which laws a shell is reckoned by: those of the code that the lead picks, or all of them.

import { threePointLaw } from './asce-7-16/dome.ts';
import { threePoints } from './asce-7-16/dome-values.ts';
import { enDome } from './en-1991-1-4/dome.ts';
import { gbDome, gbDomeMirrored } from './gb-50009/dome.ts';
import { assertForm, type PressureLaw, type ShellForm } from './law.ts';
import { numberOf, type Override } from './numbers.ts';
import type { WindCode } from './peak-pressure.ts';
import { commonPractice, mergeSources, type Provenance } from './provenance.ts';
import { measuredSphereLaw } from './sphere-flow/measured.ts';

/** What the lead may pick for velocity pressure and internal pressure. */
export type CodeChoice = WindCode | 'worst of all';

/** What the lead may pick for the pressure on the outside. */
export const LAW_CHOICES = ['of the code', 'gb 50009', 'sphere', 'worst of all'] as const;

/** One of {@link LAW_CHOICES}. */
export type LawChoice = (typeof LAW_CHOICES)[number];

/** A shell whose base lies lower than this below the centre, part of the radius, is more than a half
 * sphere: less is within the raggedness of a base ring. */
const MORE_THAN_HALF = 0.05;

/** Laws of another code, or of a steady flow, are used with the peak pressure of the code picked. */
const SHAPE_ON_PEAK: Provenance = commonPractice(
  'a steady pressure shape on the peak pressure of another code',
);

const onPeak = (law: PressureLaw): PressureLaw => ({
  ...law,
  sources: mergeSources(law.sources, [SHAPE_ON_PEAK]),
});

/** Whether no clause covers the form, so that all laws are taken.
 * Source: own limit, 5 % of the radius. */
export const isTruncated = ({ radius, baseZ }: ShellForm): boolean =>
  baseZ < -MORE_THAN_HALF * radius;

/** The laws for a closed shell by the lead's choice. For more than a half sphere there is no clause:
 * whatever was picked, the envelope of all is taken (GB 50009 carried down and mirrored, three
 * points carried down, the sphere as measured). RangeError for a form that is none, or flatter than
 * the three-point rule allows.
 * Source: GB 50009-2012, ASCE 7-16, EN 1991-1-4:2005, Achenbach 1972; the envelope is own. */
export function lawsFor(
  form: ShellForm,
  code: CodeChoice,
  choice: LawChoice,
  overrides: readonly Override[] = [],
): PressureLaw[] {
  assertForm(form);
  const truncated = isTruncated(form);
  const take = (law: LawChoice): boolean =>
    truncated || choice === 'worst of all' || choice === law;
  const gb = truncated ? [gbDome(form), gbDomeMirrored(form)] : [gbDome(form)];
  return [
    ...(take('of the code')
      ? threePointLaws(form, truncated ? 'worst of all' : code, overrides)
      : []),
    ...(take('gb 50009') ? gb.map(onPeak) : []),
    ...(take('sphere') ? [onPeak(measuredSphereLaw(numberOf('sphereDrag', overrides)))] : []),
  ];
}

/** Both cases with the gust effect by ASCE 7; the straight one without it by EN 1991-1-4. */
function threePointLaws(
  form: ShellForm,
  code: CodeChoice,
  overrides: readonly Override[],
): PressureLaw[] {
  const points = threePoints(form, overrides);
  const gust = numberOf('asceGustEffect', overrides);
  const laws: PressureLaw[] = [];
  if (code !== 'en 1991-1-4')
    for (const kind of ['A', 'B'] as const) {
      const law = threePointLaw(form, points, kind, gust);
      laws.push({ ...law, name: `ASCE 7 ${law.name}` });
    }
  if (code === 'en 1991-1-4' || code === 'worst of all') laws.push(enDome(form, points));
  return laws;
}
