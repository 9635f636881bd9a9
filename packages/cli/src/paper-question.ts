// What core is asked about the chosen shell: all that its project says, as core's papers, ground and raising
// take it.

import type { PaperQuestion } from '@shellraise/core';
import { type Chosen, fittedKinds } from './job.ts';
import { lengthsIn } from './lengths.ts';
import { keptOpenings } from './openings.ts';
import type { LengthSystem } from './options.ts';
import { assumptions } from './sheets/assumptions.ts';

/** How sheets are to look. */
export interface SheetLook {
  readonly lengths: LengthSystem;
  readonly paper: PaperQuestion['paper'];
  readonly date: string;
}

/** What is known of the chosen shell, whatever is drawn of it. */
export type ChosenFacts = Omit<PaperQuestion, 'assumes' | 'date' | 'lengths' | 'paper'>;

/** The facts of the chosen shell. */
export function factsOf(chosen: Chosen): ChosenFacts {
  const { loaded, standing, numbers, number } = chosen;
  const { project, title, hardware, holes } = loaded;
  return {
    ...{ title, hardware, holes },
    shell: standing.shell,
    numbers: numbers.numbers,
    painted: numbers.status === 'frozen',
    leftOut: keptOpenings(chosen),
    kinds: fittedKinds(chosen),
    which: `Arrangement ${number};`,
    loads: project?.loads,
    ground: project?.ground,
    parts: project?.parts,
    stages: project?.stages,
    takeoff: project?.takeoff,
    gear: project?.gear,
    crew: project?.crew,
    raising: project?.raising,
    plan: null,
    fitout: project?.fitout,
    storage: project?.storage,
    windFrom: project?.wishes?.windFrom ?? null,
  };
}

/** The same with the looks of its sheets. */
export const paperQuestion = (chosen: Chosen, look: SheetLook): PaperQuestion => ({
  ...factsOf(chosen),
  ...look,
  assumes: assumptions(chosen, lengthsIn(look.lengths)),
});
