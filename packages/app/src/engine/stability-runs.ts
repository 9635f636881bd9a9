// Buckling and swing of one stage, reckoned where somebody asks for it: its progress, its end, and what
// it was asked about, so that it is shown beside that stage alone.

import type { Fault } from '@shellraise/core';
import { createStore } from 'zustand/vanilla';
import type { EngineBridge } from './bridge.ts';
import { type Ask, idle, unanswered } from './derived.ts';
import type { GroundQuestion, StageQuestion } from './ground.ts';
import type { StabilityDetail } from './stability.ts';

/** Where a run is. `input` is the stage that was asked about last. */
export interface StabilityRun extends Ask<StabilityDetail> {
  /** The question that the stage is of. */
  readonly of: GroundQuestion | null;
  readonly n: number;
  /** Why there is no answer. */
  readonly faults: readonly Fault[];
}

const none: StabilityRun = { ...idle, of: null, n: 0, faults: [] };

/** Runs of stability. `now`: milliseconds that only go forward. */
export function createStabilityRuns(bridge: Pick<EngineBridge, 'ask'>, now: () => number) {
  const store = createStore<StabilityRun>(() => none);
  let cancel: (() => void) | null = null;
  let run = 0;
  return {
    store,
    /** Asks about stage n of a build; what was asked before is ended. */
    start(of: GroundQuestion, n: number): void {
      run += 1;
      const mine = run;
      const put = (more: Partial<StabilityRun>): void => {
        if (mine === run) store.setState(more);
      };
      if (store.getState().status === 'running') cancel?.();
      const input: StageQuestion = { ...of, n };
      store.setState({ ...none, status: 'running', input, of, n, since: now() });
      const asked = bridge.ask('stability', input, (done) =>
        put({ progress: { step: 'fit', placed: 0, done, part: null } }),
      );
      cancel = asked.cancel;
      asked.answer.then(
        (read) =>
          read.ok
            ? put({ status: 'done', value: read.value, fresh: true })
            : put({ status: 'done', faults: read.faults, fresh: true }),
        (error: unknown) => put(unanswered(error)),
      );
    },
    /** Ends the run. */
    cancel: (): void => cancel?.(),
  };
}

/** Runs with what can be asked of them. */
export type StabilityRuns = ReturnType<typeof createStabilityRuns>;

/** The run where it is about stage n of this build; else one that nobody asked for. */
export const runOfStage = (run: StabilityRun, of: GroundQuestion, n: number): StabilityRun =>
  run.of === of && run.n === n ? run : none;
