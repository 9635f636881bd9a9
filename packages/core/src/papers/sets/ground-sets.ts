// The sheets of the ground: stake-out, shims, anchors, ring beam, survey.

import { surveyOptions, tapeOptions } from '../../ground/from-settings.ts';
import { type SurveyAnswer, surveyAnswer } from '../../ground/survey/verdict.ts';
import { tapePlan } from '../../ground/tape-plan.ts';
import { describeFault } from '../../measure/fault.ts';
import { anchorPlanSheets } from '../anchor-plan-sheet.ts';
import type { Drawing } from '../drawing.ts';
import type { SheetFacts } from '../flat-plan-sheet.ts';
import { ringBeamSheets } from '../ring-beam-sheet.ts';
import { shimSheets } from '../shim-sheet.ts';
import { stakeOutSheets } from '../stake-out-sheet.ts';
import { surveySheets } from '../survey-sheet.ts';
import { readOr, SheetFault } from './fault.ts';
import type { SheetJob, SheetMaker, SheetSite } from './job.ts';
import type { PaperQuestion } from './question.ts';

type GroundSet = (job: SheetJob, site: SheetSite, facts: SheetFacts) => readonly Drawing[];

const look = ({ asked: { paper, lengths } }: SheetJob) => ({ paper, lengths });

const withDatum = (job: SheetJob, { site, ground }: SheetSite) => ({
  ...look(job),
  datum: tapePlan(site.base, tapeOptions(ground)).datum,
});

const sets: readonly (readonly [name: string, what: string, make: GroundSet])[] = [
  [
    'stake-out',
    'where the base hubs go, with chords and diagonals',
    (job, { site: { base }, ground }, facts) =>
      stakeOutSheets(base, tapePlan(base, tapeOptions(ground)), facts, look(job)),
  ],
  [
    'shims',
    'levels, and what goes under each base hub',
    (job, on, facts) => {
      const { site, ground, shims, unread } = on;
      if (ground.levels.length > 0 && unread.length > 0)
        throw new SheetFault('input', [
          `ground.levels: found no level of base hub ${unread.join(', ')}, expected one of each`,
        ]);
      return shims === null ? [] : shimSheets(site.base, shims, facts, withDatum(job, on));
    },
  ],
  [
    'anchors',
    'which anchors stand where, and what each must hold',
    (job, { site: { base, anchors }, ground: { anchor } }, facts) => {
      if (!anchor) return [];
      if (!anchors.ok) throw new SheetFault('input', anchors.faults.map(describeFault));
      return anchorPlanSheets(base, anchor, anchors.value, facts, look(job));
    },
  ],
  [
    'ring-beam',
    'the beam that the shell stands on',
    (job, on, facts) => {
      const { ringBeam } = on.ground;
      if (ringBeam === null) return [];
      try {
        return ringBeamSheets(on.site.base, ringBeam, facts, withDatum(job, on));
      } catch (error) {
        if (error instanceof RangeError)
          throw new SheetFault('input', [`ground.ringBeam: ${error.message}`]);
        throw error;
      }
    },
  ],
  [
    'survey',
    'as built against plan, and the form to fill in',
    (job, on, facts) => {
      const { survey: readings, tolerances } = on.ground;
      const answer = surveyOfSite(job.asked, on);
      const content = { base: on.site.base, readings, answer, tolerances };
      return surveySheets(content, facts, withDatum(job, on));
    },
  ],
];

/** The makers. */
export const groundMakers: readonly SheetMaker[] = sets.map(([name, what, make]) => ({
  name,
  what,
  make: (job) => {
    const on = job.site();
    const assumes = `${job.asked.which} ${on.site.base.hubs.length} sides at the base.`.trim();
    return make(job, on, { ...job.facts('Ground'), assumes });
  },
}));

/** What the survey says; null where nothing is entered. Throws a `SheetFault` where a reading can't be. */
export function surveyOfSite(
  { shell, leftOut }: Pick<PaperQuestion, 'shell' | 'leftOut'>,
  { site, ground }: Pick<SheetSite, 'site' | 'ground'>,
): SurveyAnswer | null {
  if (ground.survey.length === 0) return null;
  const options = surveyOptions(ground, new Set(leftOut));
  return readOr(surveyAnswer(shell, site.base, ground.survey, options));
}
