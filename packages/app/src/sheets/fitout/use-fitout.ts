// What the project says of the fit-out, with what changes it: each a step that can be undone.

import { defaultFitout, type FitoutSettings } from '@shellraise/core';
import { useMemo } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState } from '../../ui/app-context.tsx';

/** The settings with what changes a part of them; `label` names the step. */
export function useFitout() {
  const app = useApp();
  const settings = useAppState((state) => projectOf(state).fitout) ?? defaultFitout;
  return useMemo(
    () => ({
      settings,
      set: (part: Partial<FitoutSettings>, label: string): void =>
        app.change(
          ({ project }) => {
            project.fitout = { ...(project.fitout ?? defaultFitout), ...part };
            return undefined;
          },
          { label },
        ),
    }),
    [app, settings],
  );
}
