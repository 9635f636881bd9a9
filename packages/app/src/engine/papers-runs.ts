// Sets of papers being made, one run at a time, kept beside the sheet: each set is told as soon as it is
// there, and what is there stays when the run is stopped.

import type { PaperQuestion } from '@shellraise/core';
import { createStore } from 'zustand/vanilla';
import type { EngineBridge } from './bridge.ts';
import { type Ask, idle, unanswered } from './derived.ts';
import type { SetTold } from './papers.ts';

/** Where a run is. */
export interface PapersRun extends Ask<readonly SetTold[]> {
  readonly of: PaperQuestion | null;
  /** Sets that are told already. */
  readonly sets: readonly SetTold[];
}

const none: PapersRun = { ...idle, of: null, sets: [] };

/** Runs of the makers. `now`: milliseconds that only go forward. */
export function createPapersRuns(bridge: Pick<EngineBridge, 'ask'>, now: () => number) {
  const store = createStore<PapersRun>(() => none);
  let cancel: (() => void) | null = null;
  let run = 0;
  return {
    store,
    /** Makes the sets of these names, unless they are made or being made for this very question. */
    start(question: PaperQuestion, names: readonly string[], again = false): void {
      if (!again && store.getState().of === question) return;
      run += 1;
      const mine = run;
      const put = (more: Partial<PapersRun>): void => {
        if (mine === run) store.setState(more);
      };
      if (store.getState().status === 'running') cancel?.();
      store.setState({ ...none, status: 'running', input: question, of: question, since: now() });
      // One at a time: pages on show are asked for between them.
      const make = async (): Promise<void> => {
        for (const [i, name] of names.entries()) {
          const asked = bridge.ask('paperSets', question, [name]);
          cancel = asked.cancel;
          const told = await asked.answer;
          if (mine !== run) return;
          put({
            sets: [...store.getState().sets, ...told],
            progress: { step: 'fit', placed: 0, done: (i + 1) / names.length, part: null },
          });
        }
        put({ status: 'done', value: store.getState().sets, fresh: true });
      };
      make().catch((error: unknown) => put(unanswered(error)));
    },
    /** Ends the run. */
    cancel: (): void => cancel?.(),
  };
}

/** Runs with what can be asked of them. */
export type PapersRuns = ReturnType<typeof createPapersRuns>;
