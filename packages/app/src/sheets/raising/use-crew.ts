// Who comes and when, kept in the project, with what changes it.

import { type CrewSettings, defaultCrew, type Person } from '@shellraise/core';
import { useMemo } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';

/** The crew with what changes it: each a step that can be undone. */
export function useCrew() {
  const app = useApp();
  const { step } = useWords().weekend;
  const crew = useAppState((state) => projectOf(state).crew) ?? defaultCrew;
  return useMemo(() => {
    const set = (part: Partial<CrewSettings>): void =>
      app.change(
        ({ project }) => {
          project.crew = { ...(project.crew ?? defaultCrew), ...part };
          return undefined;
        },
        { label: step },
      );
    return {
      crew,
      set,
      setPerson: (name: string, part: Partial<Person>): void =>
        set({ people: crew.people.map((one) => (one.name === name ? { ...one, ...part } : one)) }),
    };
  }, [app, crew, step]);
}
