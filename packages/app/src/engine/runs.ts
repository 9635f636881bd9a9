// Runs of a question that takes long, one at a time, kept beside the sheets so that a run goes on while
// another sheet is looked at. A run that another one took the place of is ended and tells nothing more.

import type { Fault, Read } from '@shellraise/core';
import { createStore } from 'zustand/vanilla';
import { type Ask, idle, progressAt, unanswered } from './ask.ts';
import { type Asked, Unanswered } from './bridge.ts';

/** Where a run is. `input` is the question that was asked last. */
export interface Run<Q, A> extends Ask<A, Q> {
  /** What the question is known by: questions with one key have one answer. */
  readonly key: unknown;
  /** Why there is no answer. */
  readonly faults: readonly Fault[];
  /** Seconds from the start to the end; null before that. */
  readonly took: number | null;
}

/** A run that nobody asked for. */
export const noRun: Run<never, never> = { ...idle, key: null, faults: [], took: null };

/** What a run has at hand while it goes on. */
export interface Live<R> {
  /** The run as it is shown. */
  readonly shown: () => R;
  /** Shows more of it. */
  readonly show: (more: Partial<R>) => void;
  /** Seconds since the start. */
  readonly seconds: () => number;
  /** The answer of a part of the question; none where another run took the place of this one. */
  readonly wait: <T>(asked: Asked<T>) => Promise<T>;
}

/** Runs of a question, from the run that nobody asked for. `now`: milliseconds that only go forward. `ask`
 * asks the engine and returns what the end shows. `keyOf`: without it, each question is its own. */
export function createRuns<Q, R extends Run<Q, unknown>>(
  none: R,
  now: () => number,
  ask: (question: Q, live: Live<R>) => Promise<Partial<R>>,
  keyOf: (question: Q) => unknown = (question) => question,
) {
  const store = createStore<R>(() => none);
  let last: symbol | null = null;
  let stop: () => void = () => undefined;

  function start(question: Q, key: unknown = keyOf(question)): void {
    cancel();
    const own = Symbol();
    last = own;
    const since = now();
    const seconds = (): number => (now() - since) / 1000;
    const show = (more: Partial<R>): void => {
      if (own === last) store.setState(more);
    };
    const end = (more: object): void => show({ took: seconds(), ...more } as Partial<R>);
    const wait = async <T>(asked: Asked<T>): Promise<T> => {
      stop = asked.cancel;
      const answer = await asked.answer;
      if (own !== last) throw new Unanswered('cancelled', 'cancelled');
      return answer;
    };
    store.setState({ ...none, status: 'running', input: question, key, since });
    ask(question, { shown: store.getState, show, seconds, wait }).then(
      (more) => end({ status: 'done', fresh: true, ...more }),
      (error: unknown) => end(unanswered(error)),
    );
  }

  function cancel(): void {
    if (store.getState().status === 'running') stop();
  }

  return {
    store,
    /** Starts anew; a run before it is ended. */
    start: (question: Q): void => start(question),
    /** Starts anew, unless a question with this answer runs or has ended. */
    follow(question: Q): void {
      const key = keyOf(question);
      if (store.getState().key !== key) start(question, key);
    },
    /** Ends the run; what it has shown stays. */
    cancel,
    /** Forgets all: another project is opened. */
    reset(): void {
      cancel();
      last = null;
      store.setState(none, true);
    },
  };
}

/** What the end of a run shows. */
export const answered = <A>(read: Read<A>): { value: A } | { value: null; faults: Fault[] } =>
  read.ok ? { value: read.value } : { value: null, faults: [...read.faults] };

/** Runs of a question that is one call of the engine, told how far it is, 0 … 1. */
export const createAskRuns = <Q, A>(
  ask: (question: Q, onProgress: (done: number) => void) => Asked<Read<A>>,
  now: () => number,
) =>
  createRuns<Q, Run<Q, A>>(noRun, now, async (question, { show, wait }) =>
    answered(await wait(ask(question, (done) => show({ progress: progressAt(done) })))),
  );
