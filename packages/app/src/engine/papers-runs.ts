// Sets of papers being made: each is told as soon as it is there, and what is there stays when the run is
// ended.

import type { PaperQuestion } from '@shellraise/core';
import { progressAt } from './ask.ts';
import type { EngineBridge } from './bridge.ts';
import type { SetTold } from './papers.ts';
import { createRuns, noRun, type Run } from './runs.ts';

/** The sets of these names, by what they are made of. */
export interface PapersAsked {
  readonly question: PaperQuestion;
  readonly names: readonly string[];
}

/** Where a run is; `value` has the sets that are told already. */
export type PapersRun = Run<PapersAsked, readonly SetTold[]>;

/** Runs of the makers. `now`: milliseconds that only go forward. */
export const createPapersRuns = (bridge: Pick<EngineBridge, 'ask'>, now: () => number) =>
  createRuns<PapersAsked, PapersRun>(
    noRun,
    now,
    async ({ question, names }, { show, wait }) => {
      let value: readonly SetTold[] = [];
      // One at a time: pages on show are asked for between them.
      for (const [i, name] of names.entries()) {
        value = [...value, ...(await wait(bridge.ask('paperSets', question, [name])))];
        show({ value, progress: progressAt((i + 1) / names.length) });
      }
      return { value };
    },
    ({ question }) => question,
  );
