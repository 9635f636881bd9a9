// Who is here now, how long the light lasts, how it blows, what stands: what replanning sets out from.

import type { Fault, Read } from '../measure/fault.ts';
import { UNKNOWN_LIGHT } from './common.ts';
import { clockTime, DAY, dateOf, dayNumber, secondsOfDay } from './date.ts';
import { SLOT } from './hours.ts';
import { lightOn } from './light.ts';
import type { Standing } from './plan.ts';
import type { RaiseTask } from './raise-task.ts';
import type { RaiseTasks } from './raise-tasks.ts';
import type { CrewSettings, Person } from './schema.ts';
import { forecastOf, gustBetween } from './wind.ts';

/** What is here now. */
export interface Here {
  /** As 2026-06-12, and the time of day as 10:30, by the site's clock; null: told by the hours of light. */
  readonly date: string;
  readonly time: string | null;
  /** People here, and how many of them climb and can lead. */
  readonly people: number;
  readonly climb: number;
  readonly lead: number;
  /** Hours of light that are left; null: by the sun. */
  readonly lightHours: number | null;
  /** Gusts now, m/s; null: by the forecast. */
  readonly gust: number | null;
  /** Stages that are done, 0: none; and lifts that are done of the next. */
  readonly stage: number;
  readonly lifts: number;
}

/** The crew from now on, and when that is, seconds of the plan: the people here are sure until the light
 * goes; who comes on later days stays as it was. */
export interface CrewNow {
  readonly crew: CrewSettings;
  readonly from: number;
  readonly until: number;
  /** Gust reckoned with now, m/s; null: nobody knows. */
  readonly gust: number | null;
  readonly assumed: readonly string[];
}

/** How far the gusts of a day may be off its forecast all day long, either way. */
const MOST_OFF = 2;

/** What stands and who is here against the crew of the project. Faults: numbers that can't be, no time. */
export function crewNow(crew: CrewSettings, here: Here): Read<CrewNow> {
  const faults = hereFaults(here);
  if (faults.length > 0) return { ok: false, faults };
  const day = dayNumber(here.date) as number;
  const dusk = duskOf(crew, here.date);
  const given = here.time === null ? null : secondsOfDay(here.time);
  const told = given ?? Math.max(0, dusk - 3600 * (here.lightHours ?? 0));
  const from = Math.ceil(told / SLOT) * SLOT;
  const light = here.lightHours === null ? dusk : Math.min(dusk, from + 3600 * here.lightHours);
  const until = Math.max(from, light);
  const shift = {
    date: here.date,
    from: clockTime(from),
    to: clockTime(60 * Math.floor(until / 60)),
  };
  const now = Array.from(
    { length: here.people },
    (_, i): Person => ({
      name: `here ${i + 1}`,
      climbs: i < here.climb,
      leads: i >= here.people - here.lead,
      sure: true,
      shifts: shift.from < shift.to ? [shift] : [],
    }),
  );
  const later = crew.people.map((one) => ({
    ...one,
    shifts: one.shifts.filter(({ date }) => date > here.date),
  }));
  const dates = [here.date, ...crew.dates.filter((date) => date > here.date)];
  const wind = forecastNow(crew, here, day * DAY + from, day * DAY + Math.max(until, from + 3600));
  return {
    ok: true,
    value: {
      crew: {
        ...crew,
        people: [...now, ...later],
        dates,
        forecast: wind.forecast,
        // Who asks now is not at a break.
        breaks: crew.breaks.filter(
          (one) => !((secondsOfDay(one.from) ?? 0) <= from && from < (secondsOfDay(one.to) ?? 0)),
        ),
      },
      from,
      until,
      gust: wind.gust,
      assumed: [
        ...(here.time === null
          ? [
              `It is taken to be ${clockTime(from)}: ${here.lightHours} hours before the light goes.`,
            ]
          : []),
        ...wind.assumed,
      ],
    },
  };
}

function hereFaults({
  date,
  time,
  people,
  climb,
  lead,
  lightHours,
  gust,
  stage,
  lifts,
}: Here): Fault[] {
  const faults: Fault[] = [];
  const check = (path: string, is: boolean, found: string, expected: string): void => {
    if (!is) faults.push({ path, found, expected });
  };
  const whole = (path: string, value: number, most: number, why: string): void =>
    check(path, Number.isInteger(value) && value >= 0 && value <= most, String(value), why);
  check('now.date', dayNumber(date) !== null, date, 'a date such as 2026-06-12');
  check(
    'now.time',
    time === null || secondsOfDay(time) !== null,
    String(time),
    'a time such as 10:30',
  );
  check(
    'now.light',
    time !== null || lightHours !== null,
    'neither the time nor the hours of light',
    'one of the two',
  );
  check(
    'now.light',
    lightHours === null || (lightHours >= 0 && lightHours <= 24),
    `${lightHours} hours`,
    '0 to 24 hours',
  );
  check(
    'now.gust',
    gust === null || (gust >= 0 && gust <= 60),
    `${gust} m/s`,
    '0 to 60 m/s: is it in another unit?',
  );
  whole('now.people', people, 200, 'a whole number, 0 to 200');
  whole('now.climb', climb, people, `at most the ${people} people here`);
  whole('now.lead', lead, people, `at most the ${people} people here`);
  whole('now.stage', stage, 10_000, 'the number of stages that are done');
  whole('now.lifts', lifts, 10_000, 'the number of lifts of the next stage that are done');
  return faults;
}

function duskOf({ site }: CrewSettings, date: string): number {
  if (site === null) return UNKNOWN_LIGHT.to;
  const { is, to } = lightOn(site, date).civil;
  return is === 'never' ? 0 : Math.min(DAY, to ?? DAY);
}

/** The forecast with what blows now: as far as the gusts are off it now, they stay off it till dark. */
function forecastNow(
  { forecast }: CrewSettings,
  { gust, date }: Here,
  from: number,
  to: number,
): { forecast: CrewSettings['forecast']; gust: number | null; assumed: string[] } {
  const told = gustBetween(forecastOf(forecast), from, from + 300);
  if (gust === null) return { forecast, gust: Number.isNaN(told) ? null : told, assumed: [] };
  const hours: CrewSettings['forecast'] = [];
  const known = !Number.isNaN(told) && told > 0;
  const off = known ? Math.min(MOST_OFF, Math.max(1 / MOST_OFF, gust / told)) : 1;
  const first = Math.floor(from / 3600) * 3600;
  for (let at = first; at <= to + 3600; at += 3600) {
    const then = gustBetween(forecastOf(forecast), at, at + 300);
    const value = known && !Number.isNaN(then) ? then * off : gust;
    const clock = `${dateOf(Math.floor(at / DAY))}T${clockTime(at - Math.floor(at / DAY) * DAY)}`;
    hours.push({
      at: clock,
      mean: value * 0.65,
      gust: at === first ? gust : value,
      temperatureC: null,
    });
  }
  const times = new Set(hours.map(({ at }) => at));
  return {
    forecast: [...forecast.filter(({ at }) => !times.has(at)), ...hours],
    gust,
    assumed: [
      known
        ? `Gusts are ${gust.toFixed(1)} m/s where ${told.toFixed(1)} m/s were forecast: they are taken to stay as far off it until dark on ${date}.`
        : `Gusts of ${gust.toFixed(1)} m/s are taken to last until dark on ${date}: no forecast tells of them.`,
    ],
  };
}

/** The tasks that are left when some stages and some lifts of the next are done. All that belongs to what
 * is done counts as done too. */
export function tasksLeft(made: RaiseTasks, stage: number, lifts: number): RaiseTasks {
  const isDone = (task: RaiseTask): boolean =>
    task.stage === 0
      ? stage > 0
      : task.stage <= stage ||
        (task.stage === stage + 1 && task.lift !== null && task.lift < lifts);
  const left = made.tasks.filter((task) => !isDone(task));
  const ids = new Set(left.map(({ id }) => id));
  return {
    ...made,
    tasks: left.map((task) => ({ ...task, after: task.after.filter((id) => ids.has(id)) })),
    tooHeavy: made.tooHeavy.filter((one) => one.stage > stage),
  };
}

/** What stands when some stages and some lifts of the next are done: the last of them that is a stop point,
 * and whether more has been begun since; null where nothing stands. */
export function standingOf(
  { tasks }: RaiseTasks,
  { stage, lifts }: Pick<Here, 'stage' | 'lifts'>,
): Standing | null {
  if (stage === 0 && lifts === 0) return null;
  const last = tasks.findLast((task) => task.stopPoint !== null && task.stage <= stage);
  return {
    id: last?.id ?? null,
    what: last?.what ?? '',
    point: last?.stopPoint ?? null,
    isBetween: lifts > 0 || last === undefined || last.stage < stage,
  };
}
