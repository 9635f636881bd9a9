// Asks the engine for the best shells that a stock can stand: in a worker, so that the bar moves and
// an interrupt is heard at once.

import { Worker } from 'node:worker_threads';
import type { FitAnswer, JoinedGroup, Kind, Shell, Wishes } from '@shellraise/core';
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

type Message = { readonly progress: number } | { readonly answer: FitAnswer };

/** The best shells for these wishes. */
export async function fitting(question: FitQuestion): Promise<FitAnswer> {
  const bar = startProgress();
  const worker = new Worker(new URL('./fit-worker.js', import.meta.url), { workerData: question });
  try {
    return await new Promise<FitAnswer>((resolve, reject) => {
      worker.on('message', (message: Message) => {
        if ('answer' in message) resolve(message.answer);
        else bar.update(message.progress, 'fitting the stock');
      });
      worker.once('error', reject);
      worker.once('exit', (code) => reject(new Error(`the fitting ended with code ${code}`)));
    });
  } finally {
    bar.stop();
    await worker.terminate();
  }
}
