// Now: with who is here, the light that is left and the wind there is: the next best cards, why others
// wait, jobs for spare hands, where the evening ends, and new odds for the days that are left.

import type { Provenance } from '../loads/provenance.ts';
import type { Read } from '../measure/fault.ts';
import { BUFFER_SOURCES, type BufferJob, bufferJobs } from './buffer.ts';
import { UNKNOWN_LIGHT } from './common.ts';
import { lightNeedOf } from './compile.ts';
import { clockTime } from './date.ts';
import { type CrewNow, crewNow, type Here, standingOf, tasksLeft } from './here.ts';
import { lightOn } from './light.ts';
import type { RaiseTask } from './raise-task.ts';
import { type RaiseTasks, raiseTasks } from './raise-tasks.ts';
import { hoursText } from './troubles.ts';
import { type Weekend, type WeekendOptions, type WeekendQuestion, weekendFrom } from './weekend.ts';

/** What is asked now. */
export interface NowQuestion extends WeekendQuestion {
  readonly here: Here;
  /** Panels of each kind that wait for mending; none where left out. */
  readonly repairs?: readonly { readonly kind: string; readonly count: number }[];
}

/** A card to be begun now. */
export interface NowCard {
  readonly id: string;
  readonly what: string;
  readonly stage: number;
  readonly people: number;
  readonly climbers: number;
  readonly leads: number;
  readonly gear: Readonly<Record<string, number>>;
  /** Likeliest seconds. */
  readonly seconds: number;
  /** Gust over which it is not begun, m/s; null: none. */
  readonly gustLimit: number | null;
}

/** A card that would be next and waits. */
export interface WaitingCard {
  readonly id: string;
  readonly what: string;
  readonly why: string;
}

/** What to do now. */
export interface NowAnswer {
  /** Time of day that it is taken to be, seconds. */
  readonly at: number;
  /** Begun at once, the most urgent first; and then, as hands come free. */
  readonly cards: readonly NowCard[];
  readonly soon: readonly NowCard[];
  readonly waiting: readonly WaitingCard[];
  /** Hands that the cards leave over, and jobs for them. */
  readonly spare: number;
  readonly jobs: readonly BufferJob[];
  /** The days that are left, from now. */
  readonly weekend: Weekend;
  readonly assumed: readonly string[];
  readonly flags: readonly Provenance[];
}

/** Cards told that wait, and that come next, at most. */
const MOST = 6;

/** What to do now; faults of what was told. */
export function nowPlan(question: NowQuestion, options: WeekendOptions = {}): Read<NowAnswer> {
  const { here } = question;
  const read = crewNow(question.crew, here);
  if (!read.ok) return read;
  const now = read.value;
  const all = raiseTasks(question);
  const made = tasksLeft(all, here.stage, here.lifts);
  if (made.tasks.length === 0)
    return {
      ok: false,
      faults: [
        {
          path: 'now.stage',
          found: `stage ${here.stage}, the last`,
          expected: `a stage before ${here.stage}: nothing is left to raise`,
        },
      ],
    };
  const weekend = weekendFrom({ ...question, crew: now.crew }, made, {
    tries: 40,
    runs: 1000,
    changes: [],
    ...options,
    from: now.from,
    standing: standingOf(all, here),
  });
  if (!weekend.ok) return weekend;
  const begun = new Set(
    weekend.value.tasks.flatMap(({ id, start, people }) =>
      start !== null && start <= now.from + 60 && people > 0 ? [id] : [],
    ),
  );
  const byId = new Map(made.tasks.map((task) => [task.id, task]));
  const inOrder = weekend.value.tasks.map(({ id }) => byId.get(id) as RaiseTask);
  const cards = inOrder.filter(({ id }) => begun.has(id));
  const spare = Math.max(0, here.people - cards.reduce((sum, { people }) => sum + people, 0));
  const today = weekend.value.tasks.filter(
    ({ id, start, people }) => start !== null && start < 86_400 && people > 0 && !begun.has(id),
  );
  return {
    ok: true,
    value: {
      at: now.from,
      cards: cards.map(cardOf),
      soon: today.slice(0, MOST).map(({ id }) => cardOf(byId.get(id) as RaiseTask)),
      waiting: waitingCards(made, begun, question, now),
      spare,
      jobs: spare > 0 || cards.length === 0 ? jobsNow(question, made, now) : [],
      weekend: weekend.value,
      assumed: [
        ...now.assumed,
        'All bolts, plates and passes of the stages that are done count as done.',
        ...weekend.value.assumed,
      ],
      flags: [...BUFFER_SOURCES, ...weekend.value.flags],
    },
  };
}

const cardOf = (task: RaiseTask): NowCard => ({
  id: task.id,
  what: task.what,
  stage: task.stage,
  people: task.people,
  climbers: task.climbers,
  leads: task.leads,
  gear: task.gear,
  seconds: task.duration.likely,
  gustLimit: task.gustLimit,
});

/** Cards that nothing before them holds back, and what does. */
function waitingCards(
  { tasks }: RaiseTasks,
  begun: ReadonlySet<string>,
  { here, crew }: NowQuestion,
  now: CrewNow,
): WaitingCard[] {
  return tasks
    .filter(({ id, after, people }) => after.length === 0 && people > 0 && !begun.has(id))
    .slice(0, MOST)
    .map((task) => ({ id: task.id, what: task.what, why: whyNot(task, here, now, crew.site) }));
}

function whyNot(
  task: RaiseTask,
  here: Here,
  { gust, until, from }: CrewNow,
  site: NowQuestion['crew']['site'],
): string {
  const reasons: string[] = [];
  if (task.gustLimit !== null && gust !== null && gust > task.gustLimit)
    reasons.push(`gusts of ${gust.toFixed(1)} m/s, it stops at ${task.gustLimit.toFixed(1)} m/s`);
  const short = (need: number, have: number, who: string): void => {
    if (need > have) reasons.push(`${need} ${who} needed, ${have} here`);
  };
  short(task.people, here.people, 'people');
  short(task.climbers, here.climb, 'who climb');
  short(task.leads, here.lead, 'who lead');
  const dark = darkFor(task, site, here.date, from);
  if (dark !== null) reasons.push(dark);
  if (!task.pauses && task.duration.likely > until - from)
    reasons.push(
      `it takes ${hoursText(task.duration.likely)}, ${hoursText(Math.max(0, until - from))} of light are left`,
    );
  if (reasons.length > 0) return reasons.join('; ');
  return task.commits
    ? 'begun now, no stop point would be reached before dark, or hands and gear are at other cards'
    : 'hands and gear are at other cards';
}

/** What of the light keeps a task from being begun at a time of day; null where nothing does. */
function darkFor(
  task: RaiseTask,
  site: NowQuestion['crew']['site'],
  date: string,
  from: number,
): string | null {
  const need = lightNeedOf(task);
  if (need !== 'sun' && need !== 'daylight') return null;
  const light = site === null ? null : lightOn(site, date)[need === 'sun' ? 'sun' : 'civil'];
  const why = need === 'sun' ? 'it is at height' : 'it needs daylight';
  if (light?.is === 'never') return `no light all day, and ${why}`;
  const { from: dawn, to: dusk } = light ?? UNKNOWN_LIGHT;
  if (dawn !== null && from < dawn) return `dark until ${clockTime(dawn)}, and ${why}`;
  if (dusk !== null && from >= dusk) return `dark since ${clockTime(dusk)}, and ${why}`;
  return null;
}

function jobsNow(
  { repairs = [], crew }: NowQuestion,
  { tasks }: RaiseTasks,
  now: CrewNow,
): BufferJob[] {
  const plates = tasks.reduce((sum, { amount }) => sum + (amount?.counts.plate ?? 0), 0);
  const stages = new Set(tasks.flatMap(({ sort, stage }) => (sort === 'lift' ? [stage] : [])));
  const hour = `${now.crew.dates[0]}T${clockTime(3600 * Math.floor(now.from / 3600))}`;
  return bufferJobs({
    hubPlates: plates,
    bags: stages.size,
    repairs,
    liftsAhead: Math.min(10, tasks.filter(({ sort }) => sort === 'lift').length),
    temperatureC: crew.forecast.find(({ at }) => at === hour)?.temperatureC ?? null,
  });
}
