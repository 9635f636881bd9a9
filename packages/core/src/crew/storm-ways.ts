// Ways to meet a storm: staying as it is, on to a later stage that stands in it, back to an earlier one
// that does; each with its time and its odds, and which of them is taken.

import { paceSd } from './durations.ts';
import { gearCounts } from './gear-counts.ts';
import { type CrewNow, tasksLeft } from './here.ts';
import { crewOdds } from './odds.ts';
import { crewPlan } from './plan.ts';
import type { RaiseTasks } from './raise-tasks.ts';
import { crewRates } from './recorded-rates.ts';
import { type StormChoice, type StormQuestion, takenDown, upTo } from './storm-steps.ts';

/** Odds at which a way counts as in time. */
export const SURE = 0.9;
/** Stages on that are looked at. */
const AHEAD = 6;

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

/** Staying, where the stage stands in the storm. */
export function stayChoice(question: StormQuestion, gust: number): StormChoice[] {
  const { stage, lifts } = question.here;
  const stands = standsIn(question, stage);
  if (lifts > 0 || !mayStay(question, stage) || !isEnough(stands, gust)) return [];
  const seconds = question.crew.closeDown.seconds;
  return [{ way: 'stay', stage, stands: finite(stands), seconds, odds: 1 }];
}

const finite = (x: number | null): number | null => (x === null || !Number.isFinite(x) ? null : x);

/** The next stages that stand in it, with the odds of getting there in time. */
export function onChoices(
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

/** The nearest stages behind that stand in it, and everything down. */
export function backChoices(
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

/** Of ways that are in time: what is known first, staying before on before back. Of others the likeliest. */
export function best(choices: readonly StormChoice[]): StormChoice | null {
  const rank = ({ stands, stage, way }: StormChoice): number =>
    (stands === null && stage > 0 ? 10 : 0) + ['stay', 'on', 'back'].indexOf(way);
  const sure = choices.filter(({ odds }) => odds >= SURE);
  return (
    sure.sort((a, b) => rank(a) - rank(b) || b.stage - a.stage)[0] ??
    [...choices].sort((a, b) => b.odds - a.odds || rank(a) - rank(b))[0] ??
    null
  );
}
