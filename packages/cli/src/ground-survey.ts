// The base as it stands against its plan: go or no-go before course 2, which hub to move, which seams
// to keep slack, as text and as plain data.

import { type HubMove, type SurveyAnswer, surveyAnswer, surveyOptions } from '@shellraise/core';
import { flagBlock } from './ground-loads.ts';
import { type ChosenSite, orEnd } from './ground-site.ts';
import type { Chosen } from './job.ts';
import type { Lengths } from './lengths.ts';
import { keptOpenings } from './openings.ts';
import { bullets, count, heading, paint, wrap } from './terminal.ts';

/** What the survey of the file says; null where nothing is entered. Ends the command where a reading
 * can't be. */
export function surveyOfChosen(
  file: string,
  chosen: Chosen,
  { site, ground }: ChosenSite,
): SurveyAnswer | null {
  if (ground.survey.length === 0) return null;
  const options = surveyOptions(ground, new Set(keptOpenings(chosen)));
  return orEnd(file, surveyAnswer(chosen.standing.shell, site.base, ground.survey, options));
}

/** The blocks of a survey; one line where nothing is entered. */
export function surveyBlocks(
  survey: SurveyAnswer | null,
  chosen: Chosen,
  lengths: Lengths,
): string[] {
  if (survey === null)
    return ['No survey of the base is entered ("ground", "survey"): no go, no no-go.'];
  const { verdict, reasons, moves, slack, byCourse, sources } = survey;
  const seams = slack.map(({ side }) => seamWords(chosen, side));
  return [
    heading('The base as it stands'),
    verdict === 'go' ? paint.bold(VERDICTS[verdict]) : paint.red(paint.bold(VERDICTS[verdict])),
    bullets(
      moves.length > 0 ? 'Hubs to move, in this order:' : '',
      moves.map((move) => `hub ${move.hub}: ${ways(move, lengths)}`),
    ),
    bullets('Why:', reasons),
    seams.length === 0
      ? ''
      : bullets(
          `Keep ${count(seams.length, 'seam')} finger-tight until the course above is closed:`,
          [seams.slice(0, MOST_SEAMS).join(', ') + more(seams.length - MOST_SEAMS)],
        ),
    byCourse.length === 0
      ? ''
      : wrap(
          `Worst parting of seams: ${byCourse.map((by, c) => `course ${c + 1} ${lengths.small(by)}`).join(', ')}.`,
          '',
        ),
    flagBlock(
      'Not confirmed, or entered:',
      sources.filter(({ confirmation }) => confirmation !== 'confirmed'),
    ),
  ];
}

const VERDICTS: Readonly<Record<SurveyAnswer['verdict'], string>> = {
  measure: 'Measure on: too little is known, or readings do not go together.',
  go: 'GO: course 2 may start.',
  'go, keep slack': 'GO, with seams kept slack.',
  'no go': 'NO GO: move hubs before course 2.',
};

const MOST_SEAMS = 12;

const more = (count: number): string => (count > 0 ? ` and ${count} more` : '');

function seamWords({ standing, numbers }: Chosen, side: number): string {
  const { sidePlace, mate } = standing.shell;
  const number = (one: number): string => numbers.numbers[sidePlace[one] as number] as string;
  const other = mate[side] as number;
  return other < 0 ? `${number(side)} at the base` : `${number(side)} | ${number(other)}`;
}

/** Which ways a hub is to go; less than half a millimetre is none. */
function ways({ out, along, up }: HubMove, { small }: Lengths): string {
  const found = [
    [out, 'outwards', 'inwards'],
    [along, 'clockwise', 'anticlockwise'],
    [up, 'up', 'down'],
  ] as const;
  const told = found.flatMap(([by, one, other]) =>
    Math.abs(by) < 5e-4 ? [] : [`${small(Math.abs(by))} ${by > 0 ? one : other}`],
  );
  return told.length === 0 ? 'it stands well' : told.join(', ');
}

/** The survey as plain data, without the working of it. */
export const surveyDocument = (survey: SurveyAnswer | null): object | null =>
  survey && {
    verdict: survey.verdict,
    reasons: survey.reasons,
    moves: survey.moves,
    slack: survey.slack,
    byCourse: survey.byCourse,
    missing: survey.missing,
    off: survey.off,
    sources: survey.sources,
  };
