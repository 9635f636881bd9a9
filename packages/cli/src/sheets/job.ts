// The chosen shell as core's makers of sheets are asked about it, the search for its order on the progress
// line.

import { type SheetJob, sheetJob } from '@shellraise/core';
import type { Chosen } from '../job.ts';
import { paperQuestion, type SheetLook } from '../paper-question.ts';
import { type Progress, startProgress } from '../progress.ts';

/** Orders of work tried, and the seed: as `shellraise raise` does where nothing else is asked for. */
const SEARCH = { tries: 200, seed: 1 };

/** The job of an arrangement. */
export function chosenSheets(chosen: Chosen, look: SheetLook): SheetJob {
  let progress: Progress | null = null;
  const job = sheetJob(paperQuestion(chosen, look), {
    ...SEARCH,
    onProgress: (part) => {
      progress ??= startProgress();
      progress.update(part, 'order of work');
    },
  });
  return {
    ...job,
    raised: () => {
      try {
        return job.raised();
      } finally {
        progress?.stop();
        progress = null;
      }
    },
  };
}
