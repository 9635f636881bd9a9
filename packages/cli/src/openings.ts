// The places that the file leaves open on purpose: they never hold a panel, so nothing of theirs is
// labelled, recorded, raised or stacked.

import { standingShell } from '@shellraise/core';
import type { Chosen } from './job.ts';

/** Places left out on purpose, by index, ascending. The file names them by their numbers with the datum not
 * turned on; an opening whose places do not all stand here is passed over. */
export function keptOpenings({
  loaded,
  shape,
  way,
  arrangement,
}: Pick<Chosen, 'loaded' | 'shape' | 'way' | 'arrangement'>): number[] {
  const kept = loaded.project?.places?.openings ?? [];
  if (kept.length === 0) return [];
  const plain = standingShell(shape.shell, way, arrangement.cut, 0).courses.numbers;
  const at = kept
    .map(({ places }) => places.map((number) => plain.indexOf(number)))
    .filter((places) => places.every((place) => place >= 0));
  return [...new Set(at.flat())].sort((a, b) => a - b);
}
