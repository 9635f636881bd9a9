// A change of what was decided about places, as one step that can be undone.

import type { PlacesDecision } from '@shellraise/core';
import { useCallback } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp } from '../../ui/app-context.tsx';
import type { Stood } from './stood.ts';

/** Changes the decision; where nothing was decided so far, what stands is decided with it. */
export function useDecide({ standing }: Stood) {
  const app = useApp();
  return useCallback(
    (change: (decision: PlacesDecision) => PlacesDecision, label: string): void => {
      const before = projectOf(app.state.getState()).places ?? standing.decision;
      const after = change(before);
      app.change(
        ({ project }) => {
          project.places = structuredClone(after);
          return undefined;
        },
        { label },
      );
    },
    [app, standing],
  );
}
