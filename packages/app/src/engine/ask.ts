// A question to the engine as the screens see it: asked, how far, answered, or ended unanswered.

import type { IdentifyProgress } from '@shellraise/core';
import { Unanswered } from './bridge.ts';

/** One question to the engine. `value` is the last answer, also while a newer one is on its way:
 * `fresh` tells whether it belongs to the present input. */
export interface Ask<T, Q = unknown> {
  readonly status: 'idle' | 'running' | 'done' | 'cancelled' | 'failed';
  /** The input that was asked about last. */
  readonly input: Q | null;
  readonly value: T | null;
  readonly fresh: boolean;
  /** `performance.now()` when it was asked. */
  readonly since: number;
  readonly progress: IdentifyProgress | null;
  readonly fault: string | null;
  /** True where the worker died: asking again starts a new one. */
  readonly died: boolean;
}

/** Nothing asked yet. */
export const idle: Ask<never, never> = {
  status: 'idle',
  input: null,
  value: null,
  fresh: false,
  since: 0,
  progress: null,
  fault: null,
  died: false,
};

/** How far a question is: a part of it, 0 … 1, and how many of its steps are done. */
export const progressAt = (done: number, placed = 0): IdentifyProgress => ({
  step: 'fit',
  placed,
  done,
  part: null,
});

/** How a question ended that was not answered: stopped, or failed and why. */
export function unanswered(error: unknown): Pick<Ask<never>, 'status' | 'fault' | 'died'> {
  const why = error instanceof Unanswered ? error.why : 'failed';
  return {
    status: why === 'cancelled' ? 'cancelled' : 'failed',
    fault: error instanceof Error ? error.message : String(error),
    died: why === 'died',
  };
}
