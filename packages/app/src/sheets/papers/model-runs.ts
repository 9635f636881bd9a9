// The model as it is asked for: one run at a time, kept beside the sheet, and what it is asked about.

import { defaultTakeoff, type ModelSettings, type ModelSort, sidePatterns } from '@shellraise/core';
import { useMemo } from 'react';
import { patternsEngine } from '../../engine/bridge.ts';
import type { PatternQuestion, PatternTold } from '../../engine/patterns.ts';
import { createAskRuns } from '../../engine/runs.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState, useDerived } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { fittedKinds, type Stood } from '../places/stood.ts';
import { useAssumes } from '../places/use-assumes.ts';
import { useOnPaper } from '../places/use-on-paper.ts';

/** The files of a model. */
export const modelRuns = createAskRuns<PatternQuestion, PatternTold>(
  (question, onProgress) => patternsEngine.ask('patterns', question, onProgress),
  () => performance.now(),
);

/** The question for a standing shell; new whenever anything of it changes. */
export function useModelQuestion(
  stood: Stood,
  sort: ModelSort,
  settings: ModelSettings,
): PatternQuestion {
  const words = useWords().patterns;
  const takeoff = useAppState((state) => projectOf(state).takeoff);
  const { measuredAlong, hubAllowance } = useAppState((state) => projectOf(state).pile);
  const counts = useDerived((derived) => derived.work.value?.holes);
  const onPaper = useOnPaper(words.tab, useAssumes(), words.caution);
  return useMemo((): PatternQuestion => {
    const { standing } = stood;
    const kinds = fittedKinds(stood);
    const { paper } = settings;
    return {
      ...onPaper,
      ...{ paper, sort, settings },
      shell: standing.standing.shell,
      course: standing.standing.courses.course,
      numbers: standing.numbers,
      kinds: kinds.map(({ id, marks }) => ({ id, mark: marks[0] ?? '' })),
      leftOut: standing.leftOut,
      allowance: measuredAlong === 'hubs' ? 0 : hubAllowance,
      holes: sidePatterns(kinds, takeoff ?? defaultTakeoff, counts ?? []).map((sides) =>
        (sides ?? []).map((pattern) => pattern?.holes ?? null),
      ),
    };
  }, [stood, onPaper, sort, settings, takeoff, counts, measuredAlong, hubAllowance]);
}
