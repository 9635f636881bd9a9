// The standing shell as the record speaks of it: its places, seams and hubs, and the bolts of each seam.

import {
  defaultTakeoff,
  type RecordPlan,
  recordPlan,
  type SidePattern,
  seamBolts,
} from '@shellraise/core';
import { useMemo } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useAppState, useDerived } from '../../ui/app-context.tsx';
import type { Stood } from '../places/stood.ts';

/** What the record speaks of. */
export interface Recordable {
  readonly plan: RecordPlan;
  /** Seam → the bolts that go through it, null where nobody knows. */
  readonly patterns: readonly (SidePattern | null)[];
  readonly bolts: (seam: number) => number | null;
}

/** The plan of a standing shell for its record, and its bolts. */
export function useRecordPlan({ standing, kinds }: Stood): Recordable {
  const { shell, courses } = standing.standing;
  const { numbers } = standing;
  const takeoff = useAppState((state) => projectOf(state).takeoff);
  const holes = useDerived((derived) => derived.work.value?.holes);
  const plan = useMemo(
    () => recordPlan(shell, { numbers, course: courses.course }),
    [shell, numbers, courses],
  );
  const patterns = useMemo(
    () =>
      seamBolts(shell, kinds, takeoff ?? defaultTakeoff, holes ?? []).map((one) =>
        one.status === 'known' ? one.pattern : null,
      ),
    [shell, kinds, takeoff, holes],
  );
  return useMemo(
    () => ({ plan, patterns, bolts: (seam) => patterns[seam]?.holes ?? null }),
    [plan, patterns],
  );
}
