// How much of the shell's stiffness each of several openings leaves: the list's first ones, as each
// takes the frame of a whole shell.

import {
  type FrameParts,
  frameParts,
  type Opening,
  type OpeningRank,
  openingStiffness,
  STIFFNESS_ASKED,
  unknownParts,
  type WithStiffness,
  withStiffness,
} from '@shellraise/core';
import type { Chosen } from './job.ts';
import { startProgress } from './progress.ts';

/** What stiffness is reckoned with: the parts of the project, and what is supposed of them. */
export const partsOf = ({ loaded }: Chosen): FrameParts =>
  frameParts(loaded.project?.parts ?? unknownParts);

/** A ranked list with what its first ones leave; by `least harm` the stiffest of them first. */
export function askStiffness<T extends { readonly opening: Opening }>(
  chosen: Chosen,
  list: readonly T[],
  rank: OpeningRank,
): WithStiffness<T>[] {
  if (list.length === 0) return [];
  const progress = startProgress();
  const stiffnessOf = openingStiffness(chosen.standing.shell, partsOf(chosen));
  const asked = list.slice(0, STIFFNESS_ASKED);
  const kept = asked.map(({ opening }, i) => {
    progress.update(i / asked.length, 'stiffness');
    return stiffnessOf(opening.places);
  });
  progress.stop();
  return withStiffness(list, kept, rank);
}
