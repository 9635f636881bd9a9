// The search for the best shells that the stock can stand: asked by a press, each better fit shown as it
// comes.

import { progressAt } from './ask.ts';
import type { FitQuestion, FitShown, ShownFit } from './best-fits.ts';
import type { EngineBridge } from './bridge.ts';
import { createRuns, noRun, type Run } from './runs.ts';

/** Where the search is. */
export interface Fitting extends Run<FitQuestion, FitShown> {
  /** While it runs and where it was stopped: what was found so far, the best first. */
  readonly found: readonly ShownFit[];
  /** Seconds from the press to the first fit; null before it is there. */
  readonly firstAfter: number | null;
}

/** A search with its one question at a time. `now`: milliseconds that only go forward. */
export const createFitting = (bridge: Pick<EngineBridge, 'ask'>, now: () => number) =>
  createRuns<FitQuestion, Fitting>(
    { ...noRun, found: [], firstAfter: null },
    now,
    async (question, { shown, show, seconds, wait }) => {
      const asked = bridge.ask(
        'fit',
        question,
        (done) => show({ progress: progressAt(done) }),
        (fit) => {
          const { found, firstAfter } = shown();
          show({ found: [fit, ...found], firstAfter: firstAfter ?? seconds() });
        },
      );
      const value = await wait(asked);
      return { value, found: value.fits };
    },
  );

/** The search with what can be asked of it. */
export type FittingSearch = ReturnType<typeof createFitting>;
