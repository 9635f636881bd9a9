// What the lead has fixed in the order, kept in the project, with the ways to change it.

import { defaultRaising, type RaisingSettings } from '@shellraise/core';
import { useMemo } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';

/** What is fixed, with what changes it: each a step that can be undone. */
export function useLead() {
  const app = useApp();
  const words = useWords().raising.changes;
  const lead = useAppState((state) => projectOf(state).raising) ?? defaultRaising;
  return useMemo(
    () => ({
      lead,
      fix: (part: Partial<RaisingSettings>): void =>
        app.change(
          ({ project }) => {
            project.raising = { ...(project.raising ?? defaultRaising), ...part };
            return undefined;
          },
          { label: words.step },
        ),
      free: (): void =>
        app.change(
          ({ project }) => {
            delete project.raising;
            return undefined;
          },
          { label: words.freeStep },
        ),
    }),
    [app, lead, words],
  );
}
