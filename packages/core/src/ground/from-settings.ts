// From what the project file holds of the ground to what the reckoning asks for.

import type { BaseForces } from './anchors/demand.ts';
import type { Tie } from './anchors/layout.ts';
import type { AnchorBrief } from './anchors/plan.ts';
import { type Practice, practices } from './anchors/practice.ts';
import type { GroundSettings } from './schema.ts';
import type { SurveyOptions } from './survey/verdict.ts';
import type { TapeOptions } from './tape-plan.ts';

/** How to set out with tapes. */
export const tapeOptions = ({ tape }: GroundSettings): TapeOptions => ({
  tapeSd: tape.sd,
  tapeLength: tape.length,
  ...(tape.datum === null ? {} : { datum: tape.datum }),
});

/** The practices to reckon anchors by: the one chosen, or all of them for the worst. */
export const chosenPractices = ({ practice }: GroundSettings): Practice[] =>
  practice === 'worst of all' ? Object.values(practices) : [practices[practice]];

/** How anchors are pulled. */
export const tieOf = ({ guy }: GroundSettings): Tie =>
  guy === null
    ? { pull: { way: 'up' }, height: 0 }
    : { pull: { way: 'guy', elevation: guy.elevation }, height: guy.height };

/** What the anchor plan is made from, with the load cases at the base. */
export const anchorBrief = (
  settings: GroundSettings,
  cases: readonly BaseForces[],
): AnchorBrief => ({
  anchor: settings.anchor,
  soil: settings.soil,
  tie: tieOf(settings),
  tests: settings.pullTests,
  cases,
  practices: chosenPractices(settings),
  price: settings.price,
});

/** How to judge the survey, with the places left out on purpose. */
export const surveyOptions = (
  { tolerances, play }: GroundSettings,
  leftOut: ReadonlySet<number> = new Set(),
): SurveyOptions => ({ tolerances, play, leftOut });
