// A storm in so many hours: from any stage, what to close, tie or take down, in which order, with these
// hands. Three ways are weighed: on to a later stage that stands in the storm, staying as it is, back to an
// earlier one that does; where none can be reached in time, everybody leaves after what can be tied. An
// estimate and no design approval: local codes and a licensed engineer or rigger decide.

import { commonPractice, type Provenance } from '../loads/provenance.ts';
import { type Fault, type Read, refuse } from '../measure/fault.ts';
import type { RaisingStage } from '../raise/plan.ts';
import { DAY, dayNumber } from './date.ts';
import { paceSd } from './durations.ts';
import { gearCounts } from './gear-counts.ts';
import { type CrewNow, crewNow, type Here, tasksLeft } from './here.ts';
import { crewOdds } from './odds.ts';
import { crewPlan } from './plan.ts';
import { namesOf, type RaiseTask, type RaiseTasks, raiseTasks } from './raise-tasks.ts';
import { crewRates } from './recorded-rates.ts';
import { hoursText } from './troubles.ts';
import type { WeekendQuestion } from './weekend.ts';
import { forecastOf, gustBetween } from './wind.ts';

/** What is asked when a storm is coming. */
export interface StormQuestion extends WeekendQuestion {
  readonly here: Here;
  /** Hours until it is here. */
  readonly hours: number;
  /** Its gusts, m/s; null: by the forecast. */
  readonly stormGust: number | null;
}

/** One way to meet it. */
export interface StormChoice {
  readonly way: 'on' | 'stay' | 'back';
  /** The stage that meets it; 0: everything is down. */
  readonly stage: number;
  /** Gust that it stands in, m/s; null: nobody knows. */
  readonly stands: number | null;
  /** Likeliest seconds, closing down and all. */
  readonly seconds: number;
  /** Odds of being there in time. */
  readonly odds: number;
}

/** One step, in order. */
export interface StormStep {
  readonly what:
    | 'stop'
    | 'lift'
    | 'take down'
    | 'bolt'
    | 'tie'
    | 'guy'
    | 'close'
    | 'store'
    | 'leave';
  readonly words: string;
  /** Hands, of whom so many climb. */
  readonly hands: number;
  readonly climbers: number;
  /** Likeliest seconds. */
  readonly seconds: number;
  /** Done at the latest, seconds from now. */
  readonly by: number;
}

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

/** Taking a piece down against putting it up. */
const DOWN = 0.7;
/** Odds at which a way counts as in time. */
const SURE = 0.9;
/** Everybody is out of the fall range so long before the storm, seconds. */
const OUT = 900;
/** Stages on that are looked at. */
const AHEAD = 6;

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

const standsIn = ({ winds }: StormQuestion, stage: number): number | null =>
  stage === 0
    ? Number.POSITIVE_INFINITY
    : (winds.find((one) => one.stage === stage)?.leave ?? null);

/** Whether a stage may be left: it stands without props, or on such as are known to hold. */
const mayStay = ({ plan, winds }: StormQuestion, stage: number): boolean =>
  stage === 0 ||
  (plan.stages.find(({ number }) => number === stage)?.props.length ?? 1) === 0 ||
  (winds.find((one) => one.stage === stage)?.propsHold ?? false);

const isEnough = (stands: number | null, gust: number): boolean =>
  stands === null || stands >= gust;

function stayChoice(question: StormQuestion, gust: number): StormChoice[] {
  const { stage, lifts } = question.here;
  const stands = standsIn(question, stage);
  if (lifts > 0 || !mayStay(question, stage) || !isEnough(stands, gust)) return [];
  const seconds = question.crew.closeDown.seconds;
  return [{ way: 'stay', stage, stands: finite(stands), seconds, odds: 1 }];
}

const finite = (x: number | null): number | null => (x === null || !Number.isFinite(x) ? null : x);

/** The next stages that stand in it, with the odds of getting there in time. */
function onChoices(
  question: StormQuestion,
  now: CrewNow,
  made: RaiseTasks,
  gust: number,
  inTime: number,
): StormChoice[] {
  const { here, plan, crew, gear } = question;
  const close = crew.closeDown.seconds;
  const next = plan.stages
    .map(({ number }) => number)
    .filter((number) => number > here.stage && number <= here.stage + AHEAD)
    .filter((number) => mayStay(question, number) && isEnough(standsIn(question, number), gust));
  return next.slice(0, 2).flatMap((stage): StormChoice[] => {
    const left = tasksLeft(made, here.stage, here.lifts);
    const tasks = upTo(left.tasks, `stage ${stage}`);
    if (tasks.length === 0) return [];
    const until = Math.min(now.until, now.from + inTime - close);
    const asked = {
      tasks,
      crew: { ...now.crew, dates: [here.date], breaks: [] },
      gear: gearCounts(gear),
      seed: 1,
      tries: 20,
      from: now.from,
    };
    const planned = crewPlan(asked);
    if (!planned.ok) return [];
    const { end } = planned.value;
    const amounts = tasks.flatMap(({ amount }) => (amount === null ? [] : [amount]));
    const { simulation } = crewOdds(planned.value, {
      seed: 1,
      runs: 500,
      paceSd: paceSd(crewRates(crew, question.observed), amounts),
      from: now.from,
    });
    const odds = simulation.finish.reduce((sum, x) => sum + (x <= until ? 1 : 0), 0) / 500;
    const stands = finite(standsIn(question, stage));
    if (end === null) return [];
    return [{ way: 'on', stage, stands, seconds: end - now.from + close, odds }];
  });
}

/** The tasks that a stop point waits for, with it. */
function upTo(tasks: readonly RaiseTask[], stop: string): RaiseTask[] {
  const byId = new Map(tasks.map((task) => [task.id, task]));
  const wanted = new Set<string>();
  const stack = byId.has(stop) ? [stop] : [];
  for (let id = stack.pop(); id !== undefined; id = stack.pop()) {
    if (wanted.has(id)) continue;
    wanted.add(id);
    stack.push(...(byId.get(id)?.after ?? []));
  }
  return tasks.filter(({ id }) => wanted.has(id));
}

/** The nearest stages behind that stand in it, and everything down. */
function backChoices(
  question: StormQuestion,
  made: RaiseTasks,
  gust: number,
  inTime: number,
): StormChoice[] {
  const { here, plan, crew } = question;
  const behind = [0, ...plan.stages.map(({ number }) => number)]
    .filter((number) => number < here.stage || (number === here.stage && here.lifts > 0))
    .filter((number) => mayStay(question, number) && isEnough(standsIn(question, number), gust))
    .reverse();
  const [nearest] = behind;
  return [...new Set(nearest === undefined ? [] : [nearest, 0])]
    .filter((number) => number < here.stage || here.lifts > 0)
    .map((stage): StormChoice => {
      const work = takenDown(question, made, stage).reduce((sum, { seconds }) => sum + seconds, 0);
      const seconds = work + crew.closeDown.seconds;
      const amounts = made.tasks.flatMap(({ amount }) => (amount === null ? [] : [amount]));
      const sd = Math.max(0.05, paceSd(crewRates(crew, question.observed), amounts));
      // Log-normal pace about the likeliest time.
      const z = Math.log(Math.max(1, inTime) / seconds) / sd;
      return {
        way: 'back',
        stage,
        stands: finite(standsIn(question, stage)),
        seconds,
        odds: below(z),
      };
    });
}

/** Probability that a normal variable is under z (logistic approximation, within 0.01). */
const below = (z: number): number => 1 / (1 + Math.exp(-1.702 * z));

/** Lifts that come down again to reach a stage, the last first. */
function takenDown(
  { here, numbers }: StormQuestion,
  { tasks }: RaiseTasks,
  stage: number,
): StormStep[] {
  return tasks
    .filter(
      (task) =>
        task.sort === 'lift' &&
        task.stage > stage &&
        (task.stage <= here.stage ||
          (task.stage === here.stage + 1 && (task.lift ?? 0) < here.lifts)),
    )
    .reverse()
    .map((task) => ({
      what: 'take down',
      words: `Take down ${namesOf(numbers, task.places)}: held by ${task.people - task.leads} people, bolts out last at the lowest seam, props of its stage back in first.`,
      hands: task.people,
      climbers: task.climbers,
      seconds: DOWN * task.duration.likely,
      by: 0,
    }));
}

/** Of ways that are in time: what is known first, staying before on before back. Of others the likeliest. */
function best(choices: readonly StormChoice[]): StormChoice | null {
  const rank = ({ stands, stage, way }: StormChoice): number =>
    (stands === null && stage > 0 ? 10 : 0) + ['stay', 'on', 'back'].indexOf(way);
  const sure = choices.filter(({ odds }) => odds >= SURE);
  return (
    sure.sort((a, b) => rank(a) - rank(b) || b.stage - a.stage)[0] ??
    [...choices].sort((a, b) => b.odds - a.odds || rank(a) - rank(b))[0] ??
    null
  );
}

function verdictOf(chosen: StormChoice | null, gust: number): StormAnswer['verdict'] {
  if (chosen === null) return 'none';
  if (chosen.odds < SURE) return chosen.odds < 0.1 ? 'none' : 'late';
  if (chosen.stage === 0) return 'holds';
  return chosen.stands === null ? 'unknown' : chosen.stands >= gust ? 'holds' : 'none';
}

function stepsTo(
  question: StormQuestion,
  made: RaiseTasks,
  chosen: StormChoice | null,
  inTime: number,
): StormStep[] {
  const { here, plan, crew } = question;
  const stageAt = chosen?.stage ?? here.stage;
  const stage = plan.stages.find(({ number }) => number === stageAt);
  const step = (
    what: StormStep['what'],
    words: string,
    seconds: number,
    hands = 2,
    climbers = 0,
  ): StormStep => ({ what, words, hands, climbers, seconds, by: 0 });
  const forward =
    chosen?.way === 'on'
      ? upTo(tasksLeft(made, here.stage, here.lifts).tasks, `stage ${chosen.stage}`)
          .filter(({ people }) => people > 0)
          .map((task) =>
            step(
              task.sort === 'lift' ? 'lift' : 'bolt',
              task.what,
              task.duration.likely,
              task.people,
              task.climbers,
            ),
          )
      : [];
  const back = chosen?.way === 'back' ? takenDown(question, made, chosen.stage) : [];
  const stopped = chosen === null;
  const steps = [
    step(
      'stop',
      'Nothing more leaves the ground but what is listed here; what hangs is bolted or comes down. One person calls, one watches the gusts.',
      300,
      here.people,
    ),
    ...forward,
    ...back,
    ...(stageAt === 0 ? [] : closing(stage, crew.closeDown.seconds, step)),
    step(
      'store',
      'Stacks flat, strapped and weighted; ladders down, tower down or tied; nothing light lies loose.',
      0.3 * crew.closeDown.seconds,
    ),
    step(
      'leave',
      stopped
        ? 'Everybody out of the fall range now: no stage that can be reached is known to stand in it. Rope it off.'
        : `Everybody out of the fall range a quarter of an hour before it comes; rope it off; nobody inside.`,
      0,
      here.people,
    ),
  ];
  return timed(steps, inTime);
}

function closing(
  stage: RaisingStage | undefined,
  seconds: number,
  step: (
    what: StormStep['what'],
    words: string,
    seconds: number,
    hands?: number,
    climbers?: number,
  ) => StormStep,
): StormStep[] {
  const props = stage?.props.length ?? 0;
  return [
    step(
      'bolt',
      'A bolt in every hole of the seams that are up, the last pieces first.',
      0.2 * seconds,
    ),
    step(
      'tie',
      `Every base hub tied to its anchor, each anchor pulled by hand${props > 0 ? `; ${props} ${props === 1 ? 'prop' : 'props'} wedged and tied at head and foot` : ''}.`,
      0.3 * seconds,
    ),
    step(
      'guy',
      'Guys from the upper rim to anchors outside, on four sides, snug and not hauled tight.',
      0.2 * seconds,
      2,
      1,
    ),
    step(
      'close',
      'Door and openings closed, or all left open as the wind limit supposes; no sheet half tied.',
      0.1 * seconds,
    ),
  ];
}

/** The steps with when each must be done, so that the last is in time. */
function timed(steps: readonly StormStep[], inTime: number): StormStep[] {
  let by = inTime;
  return [...steps]
    .reverse()
    .map((step) => {
      const own = { ...step, by: Math.max(0, by) };
      by -= step.seconds;
      return own;
    })
    .reverse();
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
