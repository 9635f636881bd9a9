// What there is to reach, lift and light with, and what is inside, kept in the project, with what changes
// it: each a step that can be undone.

import { type Gear, noGear } from '@shellraise/core';
import { useMemo } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';

/** The gear with what changes it. */
export function useGear() {
  const app = useApp();
  const { step } = useWords().yard.gear;
  const gear = useAppState((state) => projectOf(state).gear) ?? noGear;
  return useMemo(
    () => ({
      gear,
      set: (part: Partial<Gear>): void =>
        app.change(
          ({ project }) => {
            project.gear = { ...(project.gear ?? noGear), ...part };
            return undefined;
          },
          { label: step },
        ),
    }),
    [app, gear, step],
  );
}
