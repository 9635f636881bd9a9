// The plan of the days: which task when and with how many people, where the shell stands each evening and
// whether it stands in that night's wind, what keeps it from being done and the least that would help.
// An estimate, and no word on safety: the wind on site, local rules and a licensed engineer or rigger
// decide. Times are seconds of the plan (day k begins at k × 86 400).

import type { Provenance } from '../loads/provenance.ts';
import type { Fault, Read } from '../measure/fault.ts';
import { HANDLING_LIMITS } from '../stages/stop-work.ts';
import { type FinishBounds, finishBounds } from './bounds.ts';
import { CREW_SOURCES, GUST_SD, NO_SHOW } from './common.ts';
import { type CompiledPlan, compilePlan } from './compile.ts';
import { clockTime, DAY, weekday } from './date.ts';
import { heldAt, heldBack } from './night-hold.ts';
import type { CrewSettings } from './schema.ts';
import { type SerialSchedule, searchSchedule } from './search.ts';
import { type StopPoint, type Task, taskFaults } from './task.ts';
import { hoursText, type Trouble, troublesOf } from './troubles.ts';

/** What a plan is made from. */
export interface CrewQuestion {
  readonly tasks: readonly Task[];
  readonly crew: CrewSettings;
  /** Ladders, towers, tools: number by name; what is not named is not there. */
  readonly gear: Readonly<Record<string, number>>;
  /** Of the search, and lists that it tries; 400 where left out. */
  readonly seed: number;
  readonly tries?: number;
  /** When the plan sets out, seconds of the plan; 0 where left out. */
  readonly from?: number;
  /** What stands when it sets out; nothing where left out. */
  readonly standing?: Standing | null;
}

/** A state that stands already: the last stop point that was reached, and whether more has been begun. */
export interface Standing {
  /** The stop point's task; null: none was reached. */
  readonly id: string | null;
  readonly what: string;
  readonly point: StopPoint | null;
  readonly isBetween: boolean;
}

/** A task in the plan; start and finish infinite where it is not done in these days. */
export interface PlannedTask {
  readonly id: string;
  readonly what: string;
  readonly start: number;
  readonly finish: number;
  readonly people: number;
}

/** Where the shell is at dark, and whether it may be left. `nothing stands`: nothing was begun; `holds`:
 * a stop point that stands in the gust forecast; `gives way`: one that does not; `unknown`: one of the
 * two gusts is not known; `between`: no stop point was reached. */
export interface Evening {
  readonly date: string;
  readonly dark: number;
  /** The last stop point reached, by its task; null: none. */
  readonly stopPoint: string | null;
  readonly verdict: 'nothing stands' | 'holds' | 'gives way' | 'unknown' | 'between';
  readonly nightGust: number | null;
  readonly allowedGust: number | null;
  /** When closing down begins, and hands for it; null where nothing stands. */
  readonly closeDown: { readonly from: number; readonly hands: number } | null;
  readonly words: string;
}

/** A plan. */
export interface CrewPlan {
  readonly compiled: CompiledPlan;
  readonly schedule: SerialSchedule;
  readonly tasks: readonly PlannedTask[];
  /** Last finish, null where something is left undone. */
  readonly end: number | null;
  /** No plan with these people and hours ends before. */
  readonly bounds: FinishBounds;
  readonly evenings: readonly Evening[];
  readonly troubles: readonly Trouble[];
  readonly assumed: readonly string[];
  readonly flags: readonly Provenance[];
}

/** Waiting tasks that may be passed over: as many cards as a lead looks through. */
export const LOOK = 12;

const TRIES = 400;

/** The plan of tasks, or the faults that keep it from being made: of the tasks, no day, nobody at all. */
export function crewPlan(question: CrewQuestion): Read<CrewPlan> {
  const faults = [...taskFaults(question.tasks), ...crewFaults(question)];
  if (faults.length > 0) return { ok: false, faults };
  const { compiled, schedule, bounds } = scheduled(question);
  const { tasks } = compiled;
  const done = schedule.end !== Number.POSITIVE_INFINITY;
  return {
    ok: true,
    value: {
      compiled,
      schedule,
      tasks: tasks.map(({ id, what, people }, i) => ({
        id,
        what,
        people,
        start: schedule.start[i] as number,
        finish: schedule.finish[i] as number,
      })),
      end: done ? schedule.end : null,
      bounds,
      evenings: compiled.hours.days.map((_, k) =>
        eveningOf(compiled, schedule, question.standing ?? null, k),
      ),
      troubles: troublesOf(compiled, schedule, question.gear),
      assumed: assumptions(compiled),
      flags: flagsOf(compiled),
    },
  };
}

/** Plans that are made anew at most, each time with one more stretch held back for the night. */
const MOST_HELD = 60;

/** The schedule in which every evening ends at a stop point, as far as durations come as planned. */
function scheduled({
  tasks: asked,
  crew,
  gear,
  seed,
  tries = TRIES,
  from = 0,
}: CrewQuestion): Pick<CrewPlan, 'compiled' | 'schedule' | 'bounds'> {
  let compiled = compilePlan(asked, crew, gear);
  const { serial, calendar, tasks } = compiled;
  const bounds = finishBounds(serial, calendar, serial.planned);
  const priority = tasks.map((task) => task.priority);
  const sought = (most: number): SerialSchedule =>
    searchSchedule(compiled.serial, calendar, priority, {
      ...{ seed, look: LOOK, bound: bounds.finish, from },
      tries: most,
    });
  let schedule = sought(tries);
  for (let turn = 0; turn < MOST_HELD; turn++) {
    const held = heldBack(compiled, schedule);
    if (held === null) break;
    compiled = held;
    schedule = sought(Math.min(tries, HELD_TRIES));
  }
  return { compiled, schedule, bounds };
}

/** Lists tried for a plan that is made anew. */
const HELD_TRIES = 60;

function crewFaults({ tasks, crew }: CrewQuestion): Fault[] {
  const faults: Fault[] = [];
  if (tasks.length === 0)
    faults.push({ path: 'tasks', found: 'no task', expected: 'at least one task' });
  if (crew.dates.length === 0)
    faults.push({ path: 'crew.dates', found: 'no day of work', expected: 'at least one date' });
  const names = new Set<string>();
  crew.people.forEach(({ name }, i) => {
    if (names.has(name))
      faults.push({
        path: `crew.people[${i}].name`,
        found: `${name} a second time`,
        expected: 'one row a person',
      });
    names.add(name);
  });
  return faults;
}

function eveningOf(
  plan: CompiledPlan,
  schedule: SerialSchedule,
  standing: Standing | null,
  k: number,
): Evening {
  const { date, nightGust } = plan.hours.days[k] as CompiledPlan['hours']['days'][number];
  const dark = plan.calendar.dark[k] as number;
  const reached = schedule.reached[k] as number;
  const task = reached > 0 ? plan.tasks[plan.stops[reached - 1] as number] : undefined;
  const between = schedule.between[k] === 1 || (!task && standing?.isBetween === true);
  const point = task?.stopPoint ?? standing?.point ?? null;
  const allowedGust = point?.allowedGust ?? null;
  const verdict = between
    ? 'between'
    : point === null
      ? 'nothing stands'
      : allowedGust === null || nightGust === null
        ? 'unknown'
        : allowedGust >= nightGust
          ? 'holds'
          : 'gives way';
  const closeDown = point === null ? null : { from: dark - point.closeDown, hands: point.hands };
  const evening = {
    date,
    dark,
    stopPoint: task?.id ?? standing?.id ?? null,
    verdict,
    nightGust,
    allowedGust,
  } as const;
  const words = eveningWords(evening, task?.what ?? standing?.what ?? '', k);
  return { ...evening, closeDown, words: [words, ...heldWords(plan, schedule, k)].join(' ') };
}

/** What was not begun for the night, and the least change that helps; nothing where nothing was. */
function heldWords(plan: CompiledPlan, schedule: SerialSchedule, k: number): string[] {
  const held = heldAt(plan, schedule, k);
  if (held === null) return [];
  const { next, from, missing } = held;
  const { nightGust } = plan.hours.days[k] as CompiledPlan['hours']['days'][number];
  const sooner = from - missing;
  const help =
    missing === Number.POSITIVE_INFINITY
      ? `no stop point beyond that stands in the night’s ${speed(nightGust)} can be reached with these people: the hands and gear that lack, guys or anchors by which ${next} stands in it, or a calmer night`
      : sooner >= k * DAY
        ? `${hoursText(missing)} more on this day, begun by ${clockTime(Math.floor((sooner - k * DAY) / 60) * 60)}, or more hands`
        : `more hands, or a stop point on the way`;
  return [
    `From ${clockTime(from - k * DAY)} on no further panel is begun: ${next} would not surely be reached by dark, and nothing started is safer than a shell left between two stop points. Least change that helps: ${help}.`,
  ];
}

function eveningWords(
  { date, dark, verdict, nightGust, allowedGust }: Omit<Evening, 'closeDown' | 'words'>,
  what: string,
  k: number,
): string {
  const when = `${date}, ${clockTime(dark - k * DAY)}`;
  const gusts = `it stands in gusts of ${speed(allowedGust)}, the night’s forecast is ${speed(nightGust)}`;
  switch (verdict) {
    case 'nothing stands':
      return `${when}: nothing stands yet that the wind could take.`;
    case 'holds':
      return `${when}: closed down at ${what}; ${gusts}.`;
    case 'gives way':
      return `${when}: at ${what}, which is not enough for the night: ${gusts}. Guy it, take it down, or begin it another day.`;
    case 'unknown':
      return `${when}: closed down at ${what}; whether it stands in the night’s wind nobody knows: ${gusts}.`;
    case 'between':
      return `${when}: caught between two stop points. The shell may not be left like this: go on to the next stop point, or take it down to the last.`;
  }
}

const speed = (gust: number | null): string =>
  gust === null ? 'unknown' : `${gust.toFixed(1)} m/s`;

function assumptions({ hours, crew, stops, tasks }: CompiledPlan): string[] {
  const out = [...hours.assumed];
  const unsure = crew.people.filter(({ sure }) => !sure).length;
  if (unsure > 0)
    out.push(
      `${Math.round(100 * crew.noShow)} % of the ${unsure} helpers who are not sure are reckoned not to come.`,
    );
  const blind = hours.days.filter(({ nightGust }) => nightGust === null);
  if (stops.length > 0 && blind.length > 0)
    out.push(
      `No forecast for the night of ${blind.map(({ date, day }) => `${weekday(day)} ${date}`).join(', ')}: any stop point counts as fit for it until somebody knows.`,
    );
  const limitless = stops.filter((i) => tasks[i]?.stopPoint?.allowedGust === null).length;
  if (limitless > 0)
    out.push(`Of ${limitless} stop points nobody knows the wind that they stand in.`);
  return out;
}

function flagsOf({ crew, hours, stops, tasks }: CompiledPlan): Provenance[] {
  const { noShow, gust, closing, breaks, heat, rest } = CREW_SOURCES;
  const height = HANDLING_LIMITS.find(({ task }) => task === 'work at height');
  return [
    ...(crew.noShow === NO_SHOW && crew.people.some(({ sure }) => !sure) ? [noShow] : []),
    ...(crew.gustSd === GUST_SD && crew.forecast.length > 0 ? [gust] : []),
    ...(stops.length > 0 ? [closing] : []),
    ...(crew.breaks.length > 0 ? [breaks] : []),
    ...(hours.pace.some((x) => x < 1) ? [heat, rest] : []),
    ...(height && tasks.some(({ atHeight }) => atHeight) ? [height.source] : []),
  ];
}
