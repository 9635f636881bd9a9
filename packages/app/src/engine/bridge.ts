// The bridge to the engine's worker. One worker answers one question at a time; a question that is
// cancelled, or whose worker dies, ends the worker, and the next question starts a new one. What took
// long is kept, and not asked again.

import { proxy, type Remote, wrap } from 'comlink';
import { type AnswerStore, answerStore } from '../store/answer-store.ts';
import type { Engine } from './api.ts';
import { engineBuild, startWorker } from './start-worker.ts';

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

/** Questions whose answers hang on the question alone and may take long. The raising plan also hangs on
 * how far the search came: kept, it stays the one whose cards were printed. */
const worthKeeping: ReadonlySet<Question> = new Set<Question>([
  'identify',
  'arrange',
  'stand',
  'relate',
  'marks',
  'ground',
  'stages',
  'stability',
  'printedPlans',
  'raisingPlan',
  'yardAndKit',
  'ways',
  'mayWait',
  'weekend',
  'fitout',
  'fitoutSignal',
  'fitoutDoor',
  'fitoutCarry',
]);

/** An answer that came sooner is as soon asked again as found, milliseconds. */
const LONG = 150;

/** One worker with its line of questions. */
export class EngineBridge {
  private worker: Worker | null = null;
  private remote: Remote<Engine> | null = null;
  private readonly waiting = new Set<(error: Unanswered) => void>();

  constructor(
    private readonly start: () => Worker,
    private readonly kept: AnswerStore | null = null,
  ) {}

  /** Asks the engine. Functions among the arguments are called back from the worker, unless the
   * answer is a kept one. */
  ask<Q extends Question>(question: Q, ...args: Parameters<Engine[Q]>): Asked<Answer<Q>> {
    let fail: (error: Unanswered) => void = () => undefined;
    const answer = new Promise<Answer<Q>>((resolve, reject) => {
      fail = reject;
      this.waiting.add(fail);
      const { kept } = this;
      const asked =
        kept !== null && worthKeeping.has(question)
          ? this.found(kept, question, args, () => this.waiting.has(fail))
          : this.asked(question, args);
      asked.then(resolve, (error: unknown) => reject(new Unanswered('failed', messageOf(error))));
    }).finally(() => this.waiting.delete(fail));
    return { answer, cancel: () => this.end(new Unanswered('cancelled', 'cancelled')) };
  }

  /** The kept answer, or else the worker's, kept if it took long. */
  private async found<Q extends Question>(
    kept: AnswerStore,
    question: Q,
    args: Parameters<Engine[Q]>,
    wanted: () => boolean,
  ): Promise<Answer<Q>> {
    const whole = wholeQuestion(question, args);
    const before = await kept.find(whole);
    if (before !== undefined) return before as Answer<Q>;
    // Cancelled meanwhile: no worker is started for what nobody waits for.
    if (!wanted()) throw new Unanswered('cancelled', 'cancelled');
    const since = performance.now();
    const answer = await this.asked(question, args);
    if (performance.now() - since >= LONG) void kept.keep(whole, answer);
    return answer;
  }

  private asked<Q extends Question>(question: Q, args: Parameters<Engine[Q]>): Promise<Answer<Q>> {
    const call = this.running()[question] as unknown as (...own: unknown[]) => Promise<Answer<Q>>;
    return call(...args.map((arg) => (typeof arg === 'function' ? proxy(arg) : arg)));
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

/** All that a question says, as one text: two that differ in anything differ here. */
export function wholeQuestion(question: string, args: readonly unknown[]): string {
  return JSON.stringify(
    [question, ...args.filter((arg) => typeof arg !== 'function')],
    (_, value) => {
      if (value instanceof Map) return { map: [...value] };
      if (value instanceof Set) return { set: [...value] };
      if (ArrayBuffer.isView(value)) return Array.from(value as Uint8Array);
      return typeof value === 'number' && !Number.isFinite(value)
        ? { number: String(value) }
        : value;
    },
  );
}

/** Kept answers, by the engine's build; a page under work keeps none. */
export const keptAnswers: AnswerStore | null = import.meta.env.DEV
  ? null
  : answerStore(engineBuild, () => Date.now());

const engine = (): EngineBridge => new EngineBridge(startWorker, keptAnswers);

/** For what must be quick: reading files, working up the pile. */
export const quickEngine = engine();
/** For what may take long: shapes, arrangements, drawings. */
export const longEngine = engine();
/** For fitting the stock: to stop it stops nothing else. */
export const fitEngine = engine();
/** For all stages of a build: to stop it stops nothing else. */
export const stagesEngine = engine();
/** For buckling and swing of a stage: to stop it stops nothing else. */
export const stabilityEngine = engine();
/** For the raising plan: to stop it stops nothing else. */
export const raiseEngine = engine();
/** For the weekend, what to do now, a storm: to stop it stops nothing else. */
export const weekendEngine = engine();
/** For what changes to the crew would buy: to stop it stops nothing else. */
export const whatIfEngine = engine();
/** For what the shell is for: to stop it stops nothing else. */
export const fitoutEngine = engine();
/** For scale models: to stop it stops nothing else. */
export const patternsEngine = engine();
/** For papers of the shell and its ground: to stop it stops nothing else. */
export const papersEngine = engine();
/** For papers that go by the order of work: to stop it stops nothing else. */
export const orderedEngine = engine();
/** For what is only printed, worked out ahead. */
export const printEngine = engine();
