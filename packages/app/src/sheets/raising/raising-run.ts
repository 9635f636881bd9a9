// The order of work as sheets share it: one search at a time, what it is asked, and one stage in full.

import { handsAtPiece, type RaisingPlan } from '@shellraise/core';
import { useMemo } from 'react';
import { longEngine, raiseEngine } from '../../engine/bridge.ts';
import type { RaisingQuestion, RaisingStageQuestion } from '../../engine/raising.ts';
import { createRaisingRuns } from '../../engine/raising-runs.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState, useDerived } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import type { Stood } from '../places/stood.ts';
import { useAnswer } from '../places/use-answer.ts';
import { faultsInWords } from './fault-words.ts';
import { useSettled } from './use-settled.ts';

/** The search for an order. */
export const raisingRuns = createRaisingRuns(raiseEngine, () => performance.now());

const askStage = (question: RaisingStageQuestion) => longEngine.ask('raisingStage', question);

/** What is asked: the standing shell with what the project says, and what the lead has fixed. */
export function useRaisingQuestion({ standing, kinds }: Stood): RaisingQuestion {
  const loads = useAppState((state) => projectOf(state).loads);
  const ground = useAppState((state) => projectOf(state).ground);
  const parts = useAppState((state) => projectOf(state).parts);
  const stages = useAppState((state) => projectOf(state).stages);
  const gear = useAppState((state) => projectOf(state).gear);
  const takeoff = useAppState((state) => projectOf(state).takeoff);
  const holes = useDerived((derived) => derived.work.value?.holes);
  const raising = useAppState((state) => projectOf(state).raising);
  const hands = useAppState((state) => handsAtPiece(projectOf(state).crew));
  const { shell } = standing.standing;
  const { numbers, leftOut } = standing;
  return useMemo(
    () => ({
      ...{ shell, numbers, leftOut, kinds, loads, ground, parts, stages, gear, takeoff },
      ...{ raising, hands, holes: holes ?? [] },
    }),
    [
      shell,
      numbers,
      leftOut,
      kinds,
      loads,
      ground,
      parts,
      stages,
      gear,
      takeoff,
      holes,
      raising,
      hands,
    ],
  );
}

/** Winds and lifts of the stage on show; null while they are reckoned, words where they can't be. */
export function useStageDetail(question: RaisingQuestion, plan: RaisingPlan, number: number) {
  const words = useWords().raising;
  const asked = useMemo(
    (): RaisingStageQuestion => ({ ...question, plan: plan.stages, number }),
    [question, plan, number],
  );
  const { last, fault } = useAnswer(useSettled(asked), askStage);
  if (fault !== null) return fault;
  if (last?.question.plan !== plan.stages || last.question.number !== number) return null;
  const read = last.answer;
  if (read.ok) return read.value;
  return faultsInWords(read.faults, words);
}
