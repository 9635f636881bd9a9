// Asks the engine which shapes the kinds close into, in a worker.

import type { Identification, IdentifyProgress, ShapeQuestion } from '@shellraise/core';
import { askWorker } from './ask-worker.ts';
import { startProgress } from './progress.ts';

const steps: Readonly<Record<IdentifyProgress['step'], string>> = {
  net: 'growing nets',
  fit: 'fitting what closed',
};

/** The shapes of a pile. */
export async function identification(question: ShapeQuestion): Promise<Identification> {
  const bar = startProgress();
  try {
    return await askWorker<Identification, IdentifyProgress>(
      new URL('./identify-worker.js', import.meta.url),
      question,
      (progress) => bar.update(progress.done, describe(progress)),
    );
  } finally {
    bar.stop();
  }
}

const describe = ({ step, placed }: IdentifyProgress): string =>
  step === 'net' && placed > 0 ? `${steps[step]}: ${placed} panels placed` : steps[step];
