// What the papers are asked: the standing shell with all that its project says, and how they are to look.

import type { Paper, PaperQuestion } from '@shellraise/core';
import { useMemo } from 'react';
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
      date: today(),
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

/** The day here, as 2026-05-01. */
function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
