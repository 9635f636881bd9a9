// What is done before a storm, in which order, with these hands: what is begun is finished, pieces are
// taken down, bolted, tied, guyed and closed; then everybody leaves.

import type { RaisingStage } from '../raise/plan.ts';
import { type Here, tasksLeft } from './here.ts';
import type { RaiseTask } from './raise-task.ts';
import type { RaiseTasks } from './raise-tasks.ts';
import { namesOf } from './task-maker.ts';
import type { WeekendQuestion } from './weekend.ts';

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

/** Taking a piece down against putting it up. */
const DOWN = 0.7;

/** Tasks up to a stop point that are left. */
export function upTo(tasks: readonly RaiseTask[], stop: string): RaiseTask[] {
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

/** Lifts that come down again to reach a stage, the last first. */
export function takenDown(
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

/** The steps of a way to meet the storm, each with when it must be done. */
export function stepsTo(
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
