// The stages of a build, one run at a time: asked when the question changes, its rows shown as they
// come, stopped at once. Kept beside the sheet, so that it goes on while another tab is looked at.

import type { Fault } from '@shellraise/core';
import { createStore } from 'zustand/vanilla';
import type { EngineBridge } from './bridge.ts';
import { type Ask, idle, unanswered } from './derived.ts';
import type { GroundQuestion, StageRow, StagesAnswer } from './ground.ts';
import { siteKey } from './site-key.ts';

/** Where a run is. `input` is the question that was asked last. */
export interface StageRun extends Ask<StagesAnswer> {
  readonly rows: readonly StageRow[];
  /** Why there are no stages. */
  readonly faults: readonly Fault[];
}

const none: StageRun = {
  ...idle,
  rows: [],
  faults: [],
};

/** Runs of stages. `now`: milliseconds that only go forward. */
export function createStageRuns(bridge: Pick<EngineBridge, 'ask'>, now: () => number) {
  const store = createStore<StageRun>(() => none);
  let cancel: (() => void) | null = null;
  let run = 0;
  return {
    store,
    /** Starts anew, unless a question with this answer runs or is answered. */
    start(question: GroundQuestion, again = false): void {
      const last = store.getState().input as GroundQuestion | null;
      if (!again && last && siteKey(last) === siteKey(question)) return;
      run += 1;
      const mine = run;
      const put = (more: Partial<StageRun>): void => {
        if (mine === run) store.setState(more);
      };
      cancel?.();
      store.setState({ ...none, status: 'running', input: question, since: now() });
      const asked = bridge.ask('stages', question, (rows, done) => {
        const before = store.getState().rows;
        put({
          rows: [...before, ...rows],
          progress: { step: 'fit', placed: before.length + rows.length, done, part: null },
        });
      });
      cancel = asked.cancel;
      asked.answer.then(
        (read) =>
          read.ok
            ? put({ status: 'done', value: read.value, rows: read.value.rows, fresh: true })
            : put({ status: 'done', faults: read.faults, fresh: true }),
        (error: unknown) => put(unanswered(error)),
      );
    },
    /** Ends the run; the stages so far stay. */
    cancel: (): void => cancel?.(),
  };
}

/** Runs with what can be asked of them. */
export type StageRuns = ReturnType<typeof createStageRuns>;
