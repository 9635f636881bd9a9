// What the papers are asked: the standing shell with all that its project says, and how they are to look.

import type { Paper, PaperQuestion } from '@shellraise/core';
import { useMemo } from 'react';
import { dayOf } from '../../clock.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState, useDerived, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { fittedKinds, type Stood } from '../places/stood.ts';
import { useAssumes } from '../places/use-assumes.ts';

/** The question, without an order of work. */
export function usePaperQuestion(stood: Stood, paper: Paper): PaperQuestion {
  const { frame } = useWords();
  const { system } = useLengths();
  const project = useAppState(projectOf);
  const holes = useDerived((derived) => derived.work.value?.holes);
  const assumes = useAssumes();
  const { standing } = stood;
  const { title, pile, wishes } = project;
  const { loads, ground, parts, stages, takeoff, gear, crew, raising, fitout, storage } = project;
  const windFrom = wishes?.windFrom ?? null;
  return useMemo(
    (): PaperQuestion => ({
      title: title || frame.untitled,
      date: dayOf(Date.now()),
      assumes,
      which: '',
      shell: standing.standing.shell,
      numbers: standing.numbers,
      leftOut: standing.leftOut,
      kinds: fittedKinds(stood),
      painted: standing.decision.frozen !== undefined && standing.frozenFault === null,
      ...{ paper, lengths: system },
      ...{ holes: holes ?? [], hardware: pile.hardware },
      ...{ loads, ground, parts, stages, takeoff, gear, crew, raising, fitout, storage },
      ...{ windFrom, plan: null },
    }),
    [
      title,
      frame,
      assumes,
      standing,
      stood,
      paper,
      system,
      holes,
      pile.hardware,
      loads,
      ground,
      parts,
      stages,
      takeoff,
      gear,
      crew,
      raising,
      fitout,
      storage,
      windFrom,
    ],
  );
}
