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

/** The stages of a plan with one moved by a step; the same where there is no room. */
export function movedStage(numbers: readonly number[], stage: number, by: -1 | 1): number[] {
  const at = numbers.indexOf(stage);
  const to = at + by;
  const next = [...numbers];
  if (at < 0 || to < 0 || to >= numbers.length) return next;
  [next[at], next[to]] = [next[to] as number, next[at] as number];
  return next;
}
