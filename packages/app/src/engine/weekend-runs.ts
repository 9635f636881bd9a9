// The weekend: first odds after a few hundred runs of the plan are shown while the rest is reckoned.

import type { Weekend } from '@shellraise/core';
import { progressAt } from './ask.ts';
import type { EngineBridge } from './bridge.ts';
import { answered, createRuns, noRun, type Run } from './runs.ts';
import { FIRST_ODDS, type WeekendAsked } from './weekend.ts';

/** Runs of the weekend; `value` of one under way: the first odds. A question that says how is asked for its
 * first odds alone. `now`: milliseconds that only go forward. */
export const createWeekendRuns = (bridge: Pick<EngineBridge, 'ask'>, now: () => number) =>
  createRuns<WeekendAsked, Run<WeekendAsked, Weekend>>(
    noRun,
    now,
    async (question, { show, wait }) => {
      const how = { ...question.how, ...FIRST_ODDS };
      const first = await wait(bridge.ask('weekend', { ...question, how }));
      if (question.how !== undefined) return answered(first);
      if (first.ok) show({ value: first.value });
      const onProgress = (done: number): void => show({ progress: progressAt(done) });
      return answered(await wait(bridge.ask('weekend', question, onProgress)));
    },
  );
