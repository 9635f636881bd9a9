// What the record says of this crew's work: for the forecast, and how many stages are done.

import {
  measuredWork,
  type RaisingPlan,
  type RecordedWork,
  recordState,
  stageAtWork,
} from '@shellraise/core';
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { recordOf } from '../../record/this-record.ts';
import { useAppState } from '../../ui/app-context.tsx';
import type { Stood } from '../places/stood.ts';
import { useRecordPlan } from '../record/use-record-plan.ts';

/** What was recorded; null where nothing was. */
export interface RecordedOfCrew {
  readonly observed: readonly RecordedWork[] | null;
  /** Stages done from the first on. */
  readonly done: number | null;
}

/** The work in the record of the project on show. */
export function useRecordedWork(stood: Stood, raising: RaisingPlan): RecordedOfCrew {
  const { said } = useStore(recordOf(useAppState((state) => state.projectId)).store);
  const { plan, bolts } = useRecordPlan(stood);
  return useMemo((): RecordedOfCrew => {
    if (said.log.size === 0) return { observed: null, done: null };
    const { observed } = measuredWork(said.log, plan, bolts);
    const state = recordState(said.log, plan);
    const next = stageAtWork(raising, state)?.number ?? raising.stages.length + 1;
    return {
      observed: observed.length > 0 ? observed : null,
      done: state.done.length > 0 ? next - 1 : null,
    };
  }, [said, plan, bolts, raising]);
}
