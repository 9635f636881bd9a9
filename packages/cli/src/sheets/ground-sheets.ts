// The sheets of the ground: stake-out, shims, anchors, ring beam, survey.

import {
  anchorPlanSheets,
  type Drawing,
  describeFault,
  type Paper,
  ringBeamSheets,
  type SheetFacts,
  type SurveyAnswer,
  shimSheets,
  stakeOutSheets,
  surveySheets,
  tapeOptions,
  tapePlan,
} from '@shellraise/core';
import { badInput } from '../ending.ts';
import type { ChosenSite } from '../ground-site.ts';
import { surveyOfChosen } from '../ground-survey.ts';
import type { Chosen } from '../job.ts';
import type { LengthSystem } from '../options.ts';
import type { SheetJob, SheetMaker } from './job.ts';

/** The makers. */
export const groundSheets: readonly SheetMaker[] = (
  [
    ['stake-out', 'where the base hubs go, with chords and diagonals'],
    ['shims', 'levels, and what goes under each base hub'],
    ['anchors', 'which anchors stand where, and what each must hold'],
    ['ring-beam', 'the beam that the shell stands on'],
    ['survey', 'as built against plan, and the form to fill in'],
  ] as const
).map(([name, what]) => ({
  name,
  what,
  make: (job) => {
    const why = whyNot(name, job.site());
    if (why !== null) throw badInput(...why);
    return groundSet(job)[name] ?? [];
  },
}));

/** Why a set is not made though the file has something for it; null where it is made or has nothing. */
function whyNot(name: string, { site, ground, unread }: ChosenSite): readonly string[] | null {
  if (name === 'anchors' && ground.anchor && !site.anchors.ok)
    return site.anchors.faults.map(describeFault);
  if (name === 'shims' && ground.levels.length > 0 && unread.length > 0)
    return [`ground.levels: found no level of base hub ${unread.join(', ')}, expected one of each`];
  return null;
}

/** How the ground's sheets look. */
export interface GroundLook {
  readonly lengths: LengthSystem;
  readonly paper?: Paper;
  readonly date: string;
}

const groundSet = ({ file, chosen, site, ...look }: SheetJob) => {
  const own = site();
  return groundDrawings(chosen, own, surveyOfChosen(file, chosen, own), look);
};

/** Every sheet that the entries of the file allow, by the name of its set: stake-out and survey always. */
export function groundDrawings(
  chosen: Chosen,
  site: ChosenSite,
  survey: SurveyAnswer | null,
  { date, ...onPaper }: GroundLook,
): Readonly<Record<string, readonly Drawing[]>> {
  const { ground, shims } = site;
  const { base, anchors } = site.site;
  const tape = tapePlan(base, tapeOptions(ground));
  const withDatum = { ...onPaper, datum: tape.datum };
  const facts: SheetFacts = {
    project: chosen.loaded.title,
    sheet: 'Ground',
    date,
    assumes: `Arrangement ${chosen.number}; ${base.hubs.length} sides at the base.`,
  };
  return {
    'stake-out': stakeOutSheets(base, tape, facts, onPaper),
    shims: shims === null ? [] : shimSheets(base, shims, facts, withDatum),
    anchors:
      anchors.ok && ground.anchor
        ? anchorPlanSheets(base, ground.anchor, anchors.value, facts, onPaper)
        : [],
    'ring-beam': beamSheets(site, facts, withDatum),
    survey: surveySheets(
      { base, readings: ground.survey, answer: survey, tolerances: ground.tolerances },
      facts,
      withDatum,
    ),
  };
}

function beamSheets(
  { ground, site }: ChosenSite,
  facts: SheetFacts,
  options: Parameters<typeof ringBeamSheets>[3],
): readonly Drawing[] {
  if (ground.ringBeam === null) return [];
  try {
    return ringBeamSheets(site.base, ground.ringBeam, facts, options);
  } catch (error) {
    if (error instanceof RangeError) throw badInput(`ground.ringBeam: ${error.message}`);
    throw error;
  }
}
