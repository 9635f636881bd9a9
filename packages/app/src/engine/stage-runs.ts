// The stages of a build: their rows are shown as they come, and stay where the run is ended.

import { progressAt } from './ask.ts';
import type { EngineBridge } from './bridge.ts';
import type { GroundQuestion } from './ground.ts';
import { answered, createRuns, noRun, type Run } from './runs.ts';
import { siteKey } from './site-key.ts';
import type { StageRow, StagesAnswer } from './stages.ts';

/** Where a run is. */
export interface StageRun extends Run<GroundQuestion, StagesAnswer> {
  readonly rows: readonly StageRow[];
}

/** Runs of stages. `now`: milliseconds that only go forward. */
export const createStageRuns = (bridge: Pick<EngineBridge, 'ask'>, now: () => number) =>
  createRuns<GroundQuestion, StageRun>(
    { ...noRun, rows: [] },
    now,
    async (question, { shown, show, wait }) => {
      const asked = bridge.ask('stages', question, (more, done) => {
        const rows = [...shown().rows, ...more];
        show({ rows, progress: progressAt(done, rows.length) });
      });
      const read = await wait(asked);
      return { ...answered(read), ...(read.ok ? { rows: read.value.rows } : {}) };
    },
    siteKey,
  );
