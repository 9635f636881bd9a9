// The places that the file leaves open on purpose: they never hold a panel, so nothing of theirs is
// labelled, recorded, raised or stacked.

import { type Besides, leftOutOf, openingsIn, standingShell } from '@shellraise/core';
import type { Chosen } from './job.ts';

type Kept = Pick<Chosen, 'loaded' | 'shape' | 'way' | 'arrangement'>;

/** What the file decides besides the arrangement. */
export const keptBesides = ({ loaded }: Pick<Chosen, 'loaded'>): Besides =>
  loaded.project?.places ?? {};

/** Place → its number with the datum not turned on: decisions name places so. */
export const plainNumbers = ({ shape, way, arrangement }: Kept): readonly string[] =>
  standingShell(shape.shell, way, arrangement.cut).courses.numbers;

/** Places left out on purpose, by index, ascending; an opening whose places do not all stand here is passed
 * over. */
export function keptOpenings(chosen: Kept): number[] {
  const kept = keptBesides(chosen);
  return kept.openings === undefined ? [] : leftOutOf(openingsIn(plainNumbers(chosen), kept));
}
