// The weekend, one run at a time, kept beside the sheet: the same question is not asked twice, another
// one ends the run before. First odds after a few hundred runs are shown while the rest is reckoned.

import type { Fault, Weekend } from '@shellraise/core';
import { createStore } from 'zustand/vanilla';
import type { EngineBridge } from './bridge.ts';
import { type Ask, idle, unanswered } from './derived.ts';
import { FIRST_ODDS, type WeekendAsked } from './weekend.ts';

/** Where a run is; `value` while it runs: the first odds. */
export interface WeekendRun extends Ask<Weekend> {
  /** The question that is asked or answered. */
  readonly of: WeekendAsked | null;
  /** Why there is no weekend. */
  readonly faults: readonly Fault[];
}

const none: WeekendRun = {
  ...idle,
  of: null,
  faults: [],
};

/** Runs of the weekend. `now`: milliseconds that only go forward. */
export function createWeekendRuns(bridge: Pick<EngineBridge, 'ask'>, now: () => number) {
  const store = createStore<WeekendRun>(() => none);
  let cancel: (() => void) | null = null;
  let run = 0;
  return {
    store,
    /** Starts anew, unless this question runs or is answered. A question that says how is asked for its
     * first odds alone. */
    start(question: WeekendAsked, again = false): void {
      const { of, status } = store.getState();
      if (!again && of === question) return;
      run += 1;
      const mine = run;
      const put = (more: Partial<WeekendRun>): void => {
        if (mine === run) store.setState(more);
      };
      if (status === 'running') cancel?.();
      store.setState({ ...none, status: 'running', input: question, of: question, since: now() });
      const first = bridge.ask('weekend', { ...question, how: { ...question.how, ...FIRST_ODDS } });
      cancel = first.cancel;
      const whole = (): Promise<void> => {
        if (mine !== run) return Promise.resolve();
        const asked = bridge.ask('weekend', question, (done) =>
          put({ progress: { step: 'fit', placed: 0, done, part: null } }),
        );
        cancel = asked.cancel;
        return asked.answer.then((read) =>
          put(
            read.ok
              ? { status: 'done', value: read.value, fresh: true }
              : { status: 'done', faults: read.faults, fresh: true },
          ),
        );
      };
      first.answer
        .then((read) => {
          if (question.how !== undefined)
            return put({
              ...{ status: 'done', fresh: true },
              ...(read.ok ? { value: read.value } : { faults: read.faults }),
            });
          if (read.ok) put({ value: read.value });
          return whole();
        })
        .catch((error: unknown) => put(unanswered(error)));
    },
    /** Ends the run. */
    cancel: (): void => cancel?.(),
  };
}

/** Runs with what can be asked of them. */
export type WeekendRuns = ReturnType<typeof createWeekendRuns>;
