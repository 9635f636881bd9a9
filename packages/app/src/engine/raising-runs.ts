// The search for an order of work: the first plan that stands is shown as soon as it is there, the better
// one when it is found; the best so far stays where the search is ended.

import type { RaisingPlan } from '@shellraise/core';
import { progressAt } from './ask.ts';
import type { EngineBridge } from './bridge.ts';
import type { RaisingQuestion } from './raising.ts';
import { answered, createRuns, noRun, type Run } from './runs.ts';
import { siteKey } from './site-key.ts';

/** Questions with one key have one plan. */
export const raisingKey = (question: RaisingQuestion): string => {
  const { gear, holes, takeoff, raising, hands } = question;
  return `${siteKey(question)} ${JSON.stringify([gear, holes, takeoff, raising, hands])}`;
};

/** Runs of the search; `value` is the best plan so far. `now`: milliseconds that only go forward. */
export const createRaisingRuns = (bridge: Pick<EngineBridge, 'ask'>, now: () => number) =>
  createRuns<RaisingQuestion, Run<RaisingQuestion, RaisingPlan>>(
    noRun,
    now,
    async (question, { show, wait }) =>
      answered(
        await wait(
          bridge.ask(
            'raisingPlan',
            question,
            ({ tried, tries }) => show({ progress: progressAt(tried / tries, tried) }),
            (plan) => show({ value: plan }),
          ),
        ),
      ),
    raisingKey,
  );
