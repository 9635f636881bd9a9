// A storm in so many hours: from any stage, what to close, tie or take down, in which order, with these
// hands. Three ways are weighed: on to a later stage that stands in the storm, staying as it is, back to an
// earlier one that does; where none can be reached in time, everybody leaves after what can be tied. An
// estimate and no design approval: local codes and a licensed engineer or rigger decide.

import { commonPractice, type Provenance } from '../loads/provenance.ts';
import { type Fault, type Read, refuse } from '../measure/fault.ts';
import { DAY, dayNumber } from './date.ts';
import { type CrewNow, crewNow } from './here.ts';
import { raiseTasks } from './raise-tasks.ts';
import { type StormChoice, type StormQuestion, type StormStep, stepsTo } from './storm-steps.ts';
import { backChoices, best, onChoices, SURE, stayChoice } from './storm-ways.ts';
import { hoursText } from './troubles.ts';
import { forecastOf, gustBetween } from './wind.ts';

/** What to do. */
export interface StormAnswer {
  /** `holds`: the stage chosen stands in those gusts by what is known, and is reached in nine of ten;
   * `unknown`: nobody knows what it stands in; `late`: it stands, and may not be reached in time; `none`:
   * no stage that can be reached stands in it. */
  readonly verdict: 'holds' | 'unknown' | 'late' | 'none';
  readonly gust: number;
  readonly hours: number;
  readonly chosen: StormChoice | null;
  readonly choices: readonly StormChoice[];
  readonly steps: readonly StormStep[];
  /** In one sentence. */
  readonly words: string;
  readonly cautions: readonly string[];
  readonly assumed: readonly string[];
  readonly flags: readonly Provenance[];
}

/** Everybody is out of the fall range so long before the storm, seconds. */
const OUT = 900;

const STORM_SOURCES: readonly Provenance[] = [
  commonPractice('taking down goes in seven tenths of the time of putting up'),
  commonPractice('what is closed, tied and taken down before a storm, and in which order'),
];

/** What to do before a storm; faults of what was told. */
export function stormPlan(question: StormQuestion): Read<StormAnswer> {
  const { here, hours } = question;
  const faults: Fault[] = [];
  if (!(hours > 0 && hours <= 72))
    faults.push({ path: 'storm', found: `${hours} hours`, expected: 'over 0 to 72 hours' });
  const last = question.plan.stages.at(-1)?.number ?? 0;
  if (here.stage > last)
    faults.push({
      path: 'now.stage',
      found: String(here.stage),
      expected: `0 to ${last}, the stages of the plan`,
    });
  const read = crewNow(question.crew, here);
  if (!read.ok) faults.push(...read.faults);
  if (faults.length > 0 || !read.ok) return { ok: false, faults };
  const now = read.value;
  const gust = question.stormGust ?? forecastGust(question, now);
  if (gust === null)
    return refuse(
      'storm.gust',
      'no gust, and no forecast for those hours',
      'the gusts that are expected, m/s',
    );
  const tasks = raiseTasks(question);
  const inTime = hours * 3600 - OUT;
  const choices = [
    ...stayChoice(question, gust),
    ...onChoices(question, now, tasks, gust, inTime),
    ...backChoices(question, tasks, gust, inTime),
  ];
  const chosen = best(choices);
  const verdict = verdictOf(chosen, gust);
  return {
    ok: true,
    value: {
      verdict,
      gust,
      hours,
      chosen,
      choices,
      steps: stepsTo(question, tasks, chosen, inTime),
      words: wordsOf(verdict, chosen, gust, hours),
      cautions: [
        'Nobody lifts, climbs or stays in the fall range once gusts pass the stop-work limit, whatever is left to do.',
        'Guys help and are not reckoned: no stage is taken to stand in more because of them.',
        'An estimate and no design approval: local codes and a licensed engineer or rigger decide.',
      ],
      assumed: [...now.assumed, 'Everybody who is here stays until it is done.'],
      flags: STORM_SOURCES,
    },
  };
}

/** The greatest gust forecast in the twelve hours from when it is to be here. */
function forecastGust({ crew, here, hours }: StormQuestion, { from }: CrewNow): number | null {
  const at = (dayNumber(here.date) as number) * DAY + from + hours * 3600;
  let most: number | null = null;
  const forecast = forecastOf(crew.forecast);
  for (let t = at; t < at + 12 * 3600; t += 3600) {
    const gust = gustBetween(forecast, t, t + 3600);
    if (!Number.isNaN(gust)) most = Math.max(most ?? 0, gust);
  }
  return most;
}

function verdictOf(chosen: StormChoice | null, gust: number): StormAnswer['verdict'] {
  if (chosen === null) return 'none';
  if (chosen.odds < SURE) return chosen.odds < 0.1 ? 'none' : 'late';
  if (chosen.stage === 0) return 'holds';
  return chosen.stands === null ? 'unknown' : chosen.stands >= gust ? 'holds' : 'none';
}

function wordsOf(
  verdict: StormAnswer['verdict'],
  chosen: StormChoice | null,
  gust: number,
  hours: number,
): string {
  const storm = `Gusts of ${gust.toFixed(1)} m/s in ${hoursText(hours * 3600)}`;
  if (chosen === null || verdict === 'none')
    return `${storm}: no stage that can be reached is known to stand in them. Tie what can be tied, and everybody leaves.`;
  const where = chosen.stage === 0 ? 'the ground' : `stage ${chosen.stage}`;
  const way =
    chosen.way === 'stay'
      ? `stay at ${where} and close down`
      : chosen.way === 'on'
        ? `go on to ${where} and close down`
        : `take down to ${where}`;
  const stands =
    chosen.stage === 0
      ? 'nothing is left for the wind to take'
      : chosen.stands === null
        ? 'what it stands in nobody knows'
        : `it stands in ${chosen.stands.toFixed(1)} m/s`;
  const odds = `${Math.round(100 * chosen.odds)} % in time`;
  return `${storm}: ${way}, ${hoursText(chosen.seconds)} (${odds}); ${stands}.`;
}
