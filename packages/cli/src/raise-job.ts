// The raising plan of the chosen shell, with the winds of its stages: what the raise command works on.

import {
  type Gear,
  handsAtPiece,
  noGear,
  planRaising,
  type RaisedShell,
  type RaiseFacts,
  type RaisingBrief,
  type RaisingPlan,
  raisedShell,
  raiseFacts,
  raisingBrief,
  type StageWinds,
  seamFacts,
  stageWinds,
} from '@shellraise/core';
import { Ending } from './ending.ts';
import { type ChosenSite, orEnd, siteOfChosen } from './ground-site.ts';
import type { Chosen } from './job.ts';
import { factsOf } from './paper-question.ts';
import type { Progress } from './progress.ts';

/** A shell with its plan. */
export interface Raised {
  readonly chosen: Chosen;
  readonly site: ChosenSite;
  readonly brief: RaisingBrief;
  readonly plan: RaisingPlan;
  readonly winds: readonly StageWinds[];
  readonly gear: Gear;
  /** Thread of a seam's bolts; null where nobody knows. */
  readonly threadOf: (seam: number) => string | null;
  /** What the weekend is planned from. */
  readonly question: RaiseFacts;
  /** The plan with the facts that yard, lifts and kit are asked by. */
  readonly shell: RaisedShell;
}

/** How the plan is sought. */
export interface RaisedOptions {
  readonly tries: number;
  readonly seed: number;
  readonly progress: Progress;
}

/** The plan of the chosen shell by what its file says. Ends the command where there is none. */
export function raisedOf(file: string, chosen: Chosen, options: RaisedOptions): Raised {
  const facts = factsOf(chosen);
  const site = siteOfChosen(file, chosen);
  const hands = handsAtPiece(facts.crew);
  const brief = orEnd(file, raisingBrief({ ...facts, hands }, site.site));
  const read = planRaising(brief, {
    seed: options.seed,
    tries: options.tries,
    onProgress: (tried, tries) => options.progress.update((0.6 * tried) / tries, 'order of work'),
  });
  if (!read.ok)
    throw new Ending(
      1,
      read.faults.map(({ path, found, expected }) => `${path}: ${found}; expected ${expected}`),
    );
  const plan = read.value;
  options.progress.update(0.6, 'wind of the stages');
  const winds = orEnd(file, stageWinds(site.site.stages, plan));
  return {
    ...{ chosen, site, brief, plan, winds },
    gear: facts.gear ?? noGear,
    threadOf: seamFacts(facts).thread,
    question: raiseFacts(facts, site.site, plan, winds),
    shell: raisedShell(facts, site.site, plan),
  };
}
