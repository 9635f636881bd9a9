// What the record says of this crew's work: for the forecast, and how many stages are done.

import {
  defaultTakeoff,
  measuredWork,
  type RaisingPlan,
  type RecordedWork,
  recordPlan,
  recordState,
  seamBolts,
  stageAtWork,
} from '@shellraise/core';
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { recordOf } from '../../record/this-record.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState, useDerived } from '../../ui/app-context.tsx';
import type { Stood } from '../places/stood.ts';

/** What was recorded; null where nothing was. */
export interface RecordedOfCrew {
  readonly observed: readonly RecordedWork[] | null;
  /** Stages done from the first on. */
  readonly done: number | null;
}

/** The work in the record of the project on show. */
export function useRecordedWork({ standing, kinds }: Stood, raising: RaisingPlan): RecordedOfCrew {
  const session = recordOf(useAppState((state) => state.projectId));
  const { version } = useStore(session.store);
  const takeoff = useAppState((state) => projectOf(state).takeoff);
  const holes = useDerived((derived) => derived.work.value?.holes);
  const { shell, courses } = standing.standing;
  const { numbers } = standing;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the log grows, its version says when
  return useMemo((): RecordedOfCrew => {
    if (session.log.size === 0) return { observed: null, done: null };
    const plan = recordPlan(shell, { numbers, course: courses.course });
    const bolts = seamBolts(shell, kinds, takeoff ?? defaultTakeoff, holes ?? []);
    const { observed } = measuredWork(session.log, plan, (seam) => {
      const own = bolts[seam];
      return own?.status === 'known' ? own.pattern.holes : null;
    });
    const state = recordState(session.log, plan);
    const next = stageAtWork(raising, state)?.number ?? raising.stages.length + 1;
    return {
      observed: observed.length > 0 ? observed : null,
      done: state.done.length > 0 ? next - 1 : null,
    };
  }, [session, version, shell, numbers, courses, kinds, takeoff, holes, raising]);
}
