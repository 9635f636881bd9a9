// How much of the shell's stiffness each of several openings leaves: the list's first ones, as each
// takes the frame of a whole shell.

import {
  frameParts,
  type Opening,
  openingStiffness,
  type StiffnessKept,
  unknownParts,
} from '@shellraise/core';
import type { Chosen } from './job.ts';
import { startProgress } from './progress.ts';

/** Openings that are asked about. */
const ASKED = 10;

/** An opening of a list, with what it leaves where that was asked. */
export type Weighed<T> = T & { readonly stiffness: StiffnessKept | null };

/** The list with what its first ten leave; those sorted by it where that is what counts. */
export function withStiffness<T extends { readonly opening: Opening }>(
  { standing, loaded }: Chosen,
  list: readonly T[],
  byStiffness: boolean,
): Weighed<T>[] {
  if (list.length === 0) return [];
  const progress = startProgress();
  const stiffnessOf = openingStiffness(
    standing.shell,
    frameParts(loaded.project?.parts ?? unknownParts),
  );
  const asked = list.slice(0, ASKED).map((one, i) => {
    progress.update(i / Math.min(ASKED, list.length), 'stiffness');
    return { ...one, stiffness: stiffnessOf(one.opening.places) };
  });
  progress.stop();
  if (byStiffness) asked.sort((a, b) => b.stiffness.kept - a.stiffness.kept);
  return [...asked, ...list.slice(ASKED).map((one) => ({ ...one, stiffness: null }))];
}
