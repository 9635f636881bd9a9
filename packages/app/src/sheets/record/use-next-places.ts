// The panels that go up next by the raising plan, where it has been worked out on this device.

import { stageAtWork } from '@shellraise/core';
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { raisingKey } from '../../engine/raising-runs.ts';
import type { Stood } from '../places/stood.ts';
import { raisingRuns, useRaisingQuestion } from '../raising/raising-run.ts';
import type { Noted } from './use-noted.ts';

/** Places of the stage at work whose panels are not up yet. */
export function useNextPlaces(stood: Stood, { state }: Noted): readonly number[] {
  const question = useRaisingQuestion(stood);
  const run = useStore(raisingRuns.store);
  const key = useMemo(() => raisingKey(question), [question]);
  // An order that is still being bettered may send people for other panels.
  const plan = run.key === key && run.status !== 'running' ? run.value : null;
  return useMemo(() => {
    const stage = plan && stageAtWork(plan, state);
    return stage ? stage.pieces.flat().filter((place) => state.placed[place] === null) : [];
  }, [plan, state]);
}
