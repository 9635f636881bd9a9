// Asks the engine which shapes the kinds close into: in a worker, so that the bar moves and an
// interrupt is heard at once.

import { Worker } from 'node:worker_threads';
import type { Identification, IdentifyProgress, ShapeQuestion } from '@shellraise/core';
import { startProgress } from './progress.ts';

type Message = { readonly progress: IdentifyProgress } | { readonly answer: Identification };

const steps: Readonly<Record<IdentifyProgress['step'], string>> = {
  net: 'growing nets',
  fit: 'fitting what closed',
};

/** The shapes of a pile. */
export async function identification(question: ShapeQuestion): Promise<Identification> {
  const bar = startProgress();
  const worker = new Worker(new URL('./identify-worker.js', import.meta.url), {
    workerData: question,
  });
  try {
    return await new Promise<Identification>((resolve, reject) => {
      worker.on('message', (message: Message) => {
        if ('answer' in message) resolve(message.answer);
        else bar.update(message.progress.done, describe(message.progress));
      });
      worker.once('error', reject);
      worker.once('exit', (code) =>
        reject(new Error(`the identification ended with code ${code}`)),
      );
    });
  } finally {
    bar.stop();
    await worker.terminate();
  }
}

const describe = ({ step, placed }: IdentifyProgress): string =>
  step === 'net' && placed > 0 ? `${steps[step]}: ${placed} panels placed` : steps[step];
