// What was ticked off of the kit, kept in this browser for this project.

import { useMemo, useState } from 'react';
import { useAppState } from '../../ui/app-context.tsx';
import { readTicked, type Ticked } from './kit-ticks.ts';

/** The ticks and what sets them. */
export function useTicked(): readonly [Ticked, (ticked: Ticked) => void] {
  const key = `shellraise-kit-${useAppState((state) => state.projectId)}`;
  // How often they were set: what is kept is read anew.
  const [times, setTimes] = useState(0);
  const ticked = useMemo(() => readTicked(kept(key, times)), [key, times]);
  return [
    ticked,
    (next) => {
      keep(key, JSON.stringify(next));
      setTimes(times + 1);
    },
  ];
}

/** Where storage is refused they last as long as the page. */
const inPage = new Map<string, string>();

function kept(key: string, _times: number): string | null {
  try {
    return inPage.get(key) ?? localStorage.getItem(key);
  } catch {
    return inPage.get(key) ?? null;
  }
}

function keep(key: string, text: string): void {
  inPage.set(key, text);
  try {
    localStorage.setItem(key, text);
  } catch {
    // Told on the screen by `ticksKept`: this browser only.
  }
}
