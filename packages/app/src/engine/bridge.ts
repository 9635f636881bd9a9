// The bridge to the engine's worker. One worker answers one question at a time; a question that is
// cancelled, or whose worker dies, ends the worker, and the next question starts a new one.

import { proxy, type Remote, wrap } from 'comlink';
import type { Engine } from './api.ts';

/** Why a question has no answer. */
export class Unanswered extends Error {
  readonly why: 'cancelled' | 'died' | 'failed';
  constructor(why: 'cancelled' | 'died' | 'failed', message: string) {
    super(message);
    this.why = why;
  }
}

/** A question under way. */
export interface Asked<T> {
  readonly answer: Promise<T>;
  readonly cancel: () => void;
}

type Question = keyof Engine;
type Answer<Q extends Question> = Awaited<ReturnType<Engine[Q]>>;

/** One worker with its line of questions. */
export class EngineBridge {
  private worker: Worker | null = null;
  private remote: Remote<Engine> | null = null;
  private readonly waiting = new Set<(error: Unanswered) => void>();

  constructor(private readonly start: () => Worker) {}

  /** Asks the engine. Functions among the arguments are called back from the worker. */
  ask<Q extends Question>(question: Q, ...args: Parameters<Engine[Q]>): Asked<Answer<Q>> {
    const remote = this.running();
    let fail: (error: Unanswered) => void = () => undefined;
    const answer = new Promise<Answer<Q>>((resolve, reject) => {
      fail = reject;
      this.waiting.add(fail);
      const call = remote[question] as unknown as (...own: unknown[]) => Promise<Answer<Q>>;
      call(...args.map((arg) => (typeof arg === 'function' ? proxy(arg) : arg))).then(
        resolve,
        (error: unknown) => reject(new Unanswered('failed', messageOf(error))),
      );
    }).finally(() => this.waiting.delete(fail));
    return { answer, cancel: () => this.end(new Unanswered('cancelled', 'cancelled')) };
  }

  private running(): Remote<Engine> {
    if (this.remote) return this.remote;
    const worker = this.start();
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      this.end(new Unanswered('died', event.message || 'the worker stopped'));
    });
    this.worker = worker;
    this.remote = wrap<Engine>(worker);
    return this.remote;
  }

  private end(error: Unanswered): void {
    this.worker?.terminate();
    this.worker = null;
    this.remote = null;
    for (const fail of [...this.waiting]) fail(error);
    this.waiting.clear();
  }
}

const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);

const startWorker = (): Worker =>
  new Worker(new URL('./engine-worker.ts', import.meta.url), { type: 'module' });

/** For what must be quick: reading files, working up the pile. */
export const quickEngine = new EngineBridge(startWorker);
/** For what may take long: shapes, arrangements, drawings. */
export const longEngine = new EngineBridge(startWorker);
/** For fitting the stock: to stop it stops nothing else. */
export const fitEngine = new EngineBridge(startWorker);
/** For all stages of a build: to stop it stops nothing else. */
export const stagesEngine = new EngineBridge(startWorker);
/** For buckling and swing of a stage: to stop it stops nothing else. */
export const stabilityEngine = new EngineBridge(startWorker);
/** For the raising plan: to stop it stops nothing else. */
export const raiseEngine = new EngineBridge(startWorker);
/** For the weekend, what to do now, a storm: to stop it stops nothing else. */
export const weekendEngine = new EngineBridge(startWorker);
/** For what is only printed, worked out ahead. */
export const printEngine = new EngineBridge(startWorker);
