// Asks the engine which shapes the kinds close into: in a worker, with a bar, and with an interrupt
// that ends it at once.

import { Worker } from 'node:worker_threads';
import type { Identification, IdentifyProgress, ShapeQuestion } from '@shellraise/core';
import { Ending } from './ending.ts';
import { startProgress } from './progress.ts';

type Message = { readonly progress: IdentifyProgress } | { readonly answer: Identification };

const steps: Readonly<Record<IdentifyProgress['step'], string>> = {
  radius: 'looking for the radius',
  net: 'growing nets',
  fit: 'fitting what closed',
};

/** The shapes of a pile. An interrupt from the keyboard (SIGINT) ends the command with 130. */
export async function identification(question: ShapeQuestion): Promise<Identification> {
  const bar = startProgress();
  const worker = new Worker(new URL('./identify-worker.js', import.meta.url), {
    workerData: question,
  });
  let interrupt = () => {};
  try {
    return await new Promise<Identification>((resolve, reject) => {
      interrupt = () => reject(new Ending(130, ['Interrupted; nothing was written.']));
      process.once('SIGINT', interrupt);
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
    process.off('SIGINT', interrupt);
    bar.stop();
    await worker.terminate();
  }
}

const describe = ({ step, placed }: IdentifyProgress): string =>
  step === 'net' && placed > 0 ? `${steps[step]}: ${placed} panels placed` : steps[step];
