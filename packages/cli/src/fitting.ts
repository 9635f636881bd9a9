// Asks the engine for the best shells that a stock can stand, in a worker.

import type { FitAnswer, JoinedGroup, Kind, Shell, Wishes } from '@shellraise/core';
import { askWorker } from './ask-worker.ts';
import { startProgress } from './progress.ts';

/** What is to be fitted. */
export interface FitQuestion {
  readonly shell: Shell;
  readonly kinds: readonly Kind[];
  readonly wishes: Wishes;
  readonly interchangeable: readonly (readonly string[])[];
  /** Panels still joined. */
  readonly groups: readonly JoinedGroup[];
  readonly seconds: number;
}

/** The best shells for these wishes. */
export async function fitting(question: FitQuestion): Promise<FitAnswer> {
  const bar = startProgress();
  try {
    return await askWorker<FitAnswer, number>(
      new URL('./fit-worker.js', import.meta.url),
      question,
      (done) => bar.update(done, 'fitting the stock'),
    );
  } finally {
    bar.stop();
  }
}
