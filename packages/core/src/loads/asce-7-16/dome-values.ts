// A, B and C of the three-point rule for a shell, from the table of numbers.

import { assertForm, type ShellForm } from '../law.ts';
import { numberOf, type Override } from '../numbers.ts';
import { commonPractice, reckonedFrom, type Sourced, withSources } from '../provenance.ts';
import { type ThreePoints, threePointRatios } from './dome.ts';

/** A, B, C for a shell: for a half sphere those of the table; C goes straight from the ground's to
 * the raised value as the springline rises from 0 to half the width; for flatter domes A and B go
 * straight to the values at a rise of 0.05. The figure itself was not readable, so all is flagged.
 * Source: ASCE 7-16, Fig. 27.3-2 and EN 1991-1-4:2005, Fig. 7.12, values from memory. */
export function threePoints(
  form: ShellForm,
  overrides: readonly Override[] = [],
): Sourced<ThreePoints> {
  assertForm(form);
  const { rise, raise } = threePointRatios(form);
  const steep = Math.min(1, (rise - 0.05) / 0.45);
  const raised = Math.min(1, raise / 0.5);
  const a = between('windwardAFlat', 'windwardA', steep, overrides);
  const b = between('crownBFlat', 'crownB', steep, overrides);
  const c = between('leewardC', 'leewardCRaised', raised, overrides);
  return reckonedFrom({ a: a.value, b: b.value, c: c.value }, a, b, c);
}

/** The straight line between two numbers of the table; where it is one of them, only that counts. */
function between(
  from: Parameters<typeof numberOf>[0],
  to: Parameters<typeof numberOf>[0],
  part: number,
  overrides: readonly Override[],
): Sourced {
  const [at0, at1] = [numberOf(from, overrides), numberOf(to, overrides)];
  if (part <= 1e-9) return at0;
  if (part >= 1 - 1e-9) return at1;
  return withSources(
    reckonedFrom(at0.value + (at1.value - at0.value) * part, at0, at1),
    commonPractice('three-point values in a straight line between those remembered'),
  );
}
