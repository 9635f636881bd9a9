// The search for the best shells that the stock can stand: asked by a press, each better fit shown as
// it comes, stopped at once. Kept beside the sheets, so that it goes on while another one is looked at.

import type { IdentifyProgress } from '@shellraise/core';
import { createStore } from 'zustand/vanilla';
import type { EngineBridge } from './bridge.ts';
import { type Ask, idle, unanswered } from './derived.ts';
import type { FitQuestion, FitShown, ShownFit } from './stock.ts';

/** Where the search is. `input` is the question that was asked last. */
export interface Fitting extends Ask<FitShown> {
  /** While it runs and where it was stopped: what was found so far, the best first. */
  readonly found: readonly ShownFit[];
  /** Seconds from the press to the first fit; null before it is there. */
  readonly firstAfter: number | null;
  /** Seconds that the whole of it took; null before it has ended. */
  readonly took: number | null;
}

const none: Fitting = {
  ...idle,
  found: [],
  firstAfter: null,
  took: null,
};

/** A search with its one question at a time. `now`: milliseconds that only go forward. */
export function createFitting(bridge: Pick<EngineBridge, 'ask'>, now: () => number) {
  const store = createStore<Fitting>(() => none);
  let cancel: (() => void) | null = null;
  let run = 0;

  function put(mine: number, more: Partial<Fitting>): void {
    if (mine === run) store.setState(more);
  }

  function stop(): void {
    cancel?.();
    cancel = null;
  }

  return {
    store,
    /** Starts anew; a search under way is ended first. */
    start(question: FitQuestion): void {
      run += 1;
      const mine = run;
      stop();
      const since = now();
      const seconds = (): number => (now() - since) / 1000;
      store.setState({ ...none, status: 'running', input: question, since });
      const asked = bridge.ask(
        'fit',
        question,
        (done) => put(mine, { progress: progressAt(done) }),
        (fit) => {
          const { found, firstAfter } = store.getState();
          put(mine, { found: [fit, ...found], firstAfter: firstAfter ?? seconds() });
        },
      );
      cancel = asked.cancel;
      asked.answer.then(
        (value) =>
          put(mine, { status: 'done', value, found: value.fits, fresh: true, took: seconds() }),
        (error: unknown) => put(mine, { ...unanswered(error), took: seconds() }),
      );
    },
    /** Ends the search at once; what it found stays. */
    cancel: stop,
    /** Forgets all: another project is opened. */
    reset(): void {
      run += 1;
      stop();
      store.setState(none, true);
    },
  };
}

const progressAt = (done: number): IdentifyProgress => ({
  step: 'fit',
  placed: 0,
  done,
  part: null,
});

/** The search with what can be asked of it. */
export type FittingSearch = ReturnType<typeof createFitting>;
