// The search for an order of work, one run at a time: the first plan that stands is shown as soon as it
// is there, the better one when it is found; stopped at once. Kept beside the sheet, so that it goes on
// while another one is looked at.

import type { Fault, RaisingPlan } from '@shellraise/core';
import { createStore } from 'zustand/vanilla';
import type { EngineBridge } from './bridge.ts';
import { type Ask, idle, unanswered } from './derived.ts';
import type { RaisingQuestion } from './raising.ts';
import { siteKey } from './site-key.ts';

/** Where a run is; `value` is the best plan so far. */
export interface RaisingRun extends Ask<RaisingPlan> {
  /** Why there is no plan. */
  readonly faults: readonly Fault[];
  /** The question's key. */
  readonly key: string;
}

const none: RaisingRun = {
  ...idle,
  faults: [],
  key: '',
};

/** Questions with one key have one plan. */
export const raisingKey = (question: RaisingQuestion): string => {
  const { gear, holes, takeoff, raising, hands } = question;
  return `${siteKey(question)} ${JSON.stringify([gear, holes, takeoff, raising, hands])}`;
};

/** Runs of the search. `now`: milliseconds that only go forward. */
export function createRaisingRuns(bridge: Pick<EngineBridge, 'ask'>, now: () => number) {
  const store = createStore<RaisingRun>(() => none);
  let cancel: (() => void) | null = null;
  let run = 0;
  return {
    store,
    /** Starts anew, unless a question with this answer runs or is answered. */
    start(question: RaisingQuestion, again = false): void {
      const key = raisingKey(question);
      if (!again && store.getState().key === key) return;
      run += 1;
      const mine = run;
      const put = (more: Partial<RaisingRun>): void => {
        if (mine === run) store.setState(more);
      };
      cancel?.();
      store.setState({ ...none, status: 'running', input: question, since: now(), key });
      const asked = bridge.ask(
        'raisingPlan',
        question,
        ({ tried, tries }) =>
          put({ progress: { step: 'fit', placed: tried, done: tried / tries, part: null } }),
        (plan) => put({ value: plan }),
      );
      cancel = asked.cancel;
      asked.answer.then(
        (read) =>
          read.ok
            ? put({ status: 'done', value: read.value, fresh: true })
            : put({ status: 'done', value: null, faults: read.faults, fresh: true }),
        (error: unknown) => put(unanswered(error)),
      );
    },
    /** Ends the run; the best plan so far stays. */
    cancel: (): void => cancel?.(),
  };
}

/** Runs with what can be asked of them. */
export type RaisingRuns = ReturnType<typeof createRaisingRuns>;
