// A long question that is asked by a press, one run at a time, kept beside the sheet so that it goes on
// while another tab is looked at.

import type { Fault, Read } from '@shellraise/core';
import { createStore } from 'zustand/vanilla';
import type { Asked } from './bridge.ts';
import { type Ask, idle, unanswered } from './derived.ts';

/** Where a run is. */
export interface AskRun<Q, A> extends Ask<A> {
  /** The question that is asked or answered. */
  readonly of: Q | null;
  /** Why there is no answer. */
  readonly faults: readonly Fault[];
}

/** Runs of a question. `now`: milliseconds that only go forward. */
export function createAskRuns<Q extends object, A>(
  ask: (question: Q, onProgress: (done: number) => void) => Asked<Read<A>>,
  now: () => number,
) {
  const none: AskRun<Q, A> = { ...idle, of: null, faults: [] };
  const store = createStore<AskRun<Q, A>>(() => none);
  let cancel: (() => void) | null = null;
  let run = 0;
  return {
    store,
    /** Starts anew; a run before it ends. */
    start(question: Q): void {
      run += 1;
      const mine = run;
      const put = (more: Partial<AskRun<Q, A>>): void => {
        if (mine === run) store.setState(more);
      };
      if (store.getState().status === 'running') cancel?.();
      store.setState({ ...none, status: 'running', input: question, of: question, since: now() });
      const asked = ask(question, (done) =>
        put({ progress: { step: 'fit', placed: 0, done, part: null } }),
      );
      cancel = asked.cancel;
      asked.answer.then(
        (read) =>
          put(
            read.ok
              ? { status: 'done', value: read.value, fresh: true }
              : { status: 'done', faults: read.faults, fresh: true },
          ),
        (error: unknown) => put(unanswered(error)),
      );
    },
    /** Ends the run. */
    cancel: (): void => cancel?.(),
  };
}
