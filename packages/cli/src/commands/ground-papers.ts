// `shellraise ground --out`: the sheets of the ground as drawings (SVG).

import {
  anchorPlanSheets,
  type Drawing,
  ringBeamSheets,
  type SheetFacts,
  type SurveyAnswer,
  shimSheets,
  stakeOutSheets,
  surveySheets,
  tapeOptions,
  tapePlan,
  toSvg,
} from '@shellraise/core';
import { badInput } from '../ending.ts';
import type { ChosenSite } from '../ground-site.ts';
import type { Chosen } from '../job.ts';
import type { GroundOptions } from '../options.ts';
import { type OutFile, writeAll } from '../write.ts';
import { dateOf, writtenText } from './papers.ts';

/** Writes the sheets, and what was written where; empty where no folder is asked for. */
export function writeGround(
  chosen: Chosen,
  site: ChosenSite,
  survey: SurveyAnswer | null,
  options: GroundOptions,
): string {
  const { out } = options;
  if (out === undefined) return '';
  const files = groundPapers(chosen, site, survey, options);
  writeAll(out, files);
  return writtenText(out, files);
}

/** Every sheet that the entries of the file allow: stake-out and survey always. */
export function groundPapers(
  chosen: Chosen,
  site: ChosenSite,
  survey: SurveyAnswer | null,
  options: GroundOptions,
): readonly OutFile[] {
  const { ground, shims } = site;
  const { base, anchors } = site.site;
  const tape = tapePlan(base, tapeOptions(ground));
  const onPaper = { lengths: options.lengths };
  const withDatum = { ...onPaper, datum: tape.datum };
  const facts: SheetFacts = {
    project: chosen.loaded.title,
    sheet: 'Ground',
    date: dateOf(options),
    assumes: `Arrangement ${chosen.number}; ${base.hubs.length} sides at the base.`,
  };
  return filesOf({
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
  });
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

const filesOf = (sheets: Readonly<Record<string, readonly Drawing[]>>): readonly OutFile[] =>
  Object.entries(sheets).flatMap(([name, drawings]) =>
    drawings.map((drawing, i) => ({
      name: `${name}${drawings.length > 1 ? `-${i + 1}` : ''}.svg`,
      text: toSvg(drawing),
    })),
  );
