// What keeps a plan from being done, said plainly, each with the least change that helps: too few people,
// climbers or leads, gear, no daylight, wind all day, a task longer than any hours for it, a stop point
// too far for one day.

import { type CompiledPlan, lightNeedOf } from './compile.ts';
import { DAY, dateOf, weekday } from './date.ts';
import { SLOT, SLOTS_PER_DAY } from './hours.ts';
import { lightOn } from './light.ts';
import { PEOPLE_RESOURCES } from './people.ts';
import type { SerialSchedule } from './search.ts';

/** What sort of trouble: see each maker below. */
export type TroubleSort =
  | 'people'
  | 'gear'
  | 'daylight'
  | 'wind'
  | 'too long'
  | 'night'
  | 'not done'
  | 'too heavy'
  | 'forecast';

/** A trouble of a plan. */
export interface Trouble {
  readonly sort: TroubleSort;
  /** Tasks that it keeps from being done, by id. */
  readonly tasks: readonly string[];
  readonly found: string;
  /** The least change that helps. */
  readonly change: string;
}

/** Every trouble of a plan, none where all is done. */
export function troublesOf(
  plan: CompiledPlan,
  schedule: SerialSchedule,
  gear: Readonly<Record<string, number>>,
): Trouble[] {
  const found = [
    ...shortOf(plan, gear),
    ...darkness(plan),
    ...windy(plan),
    ...tooLong(plan),
    ...nights(plan),
  ];
  const undone = plan.tasks.filter((_, i) => schedule.finish[i] === Number.POSITIVE_INFINITY);
  if (found.length > 0 || undone.length === 0) return found;
  return [
    notDone(
      plan,
      undone.map(({ id }) => id),
    ),
  ];
}

const RESOURCE_WORDS: readonly (readonly [string, string])[] = [
  ['people', 'people'],
  ['people who climb', 'who climbs'],
  ['people who can lead', 'who can lead'],
  ['people who climb or lead', 'who climbs or can lead'],
];

/** Tasks that need more of something than there ever is. */
function shortOf(plan: CompiledPlan, gear: Readonly<Record<string, number>>): Trouble[] {
  const { serial, calendar, resources, tasks, crew } = plan;
  return resources.flatMap((name, r): Trouble[] => {
    const have = mostOf(plan, r);
    const short = tasks.flatMap((task, i) =>
      (serial.need[i * serial.resources + r] as number) > have ? [{ task, i }] : [],
    );
    if (short.length === 0 || calendar.slots === 0) return [];
    const most = Math.max(...short.map(({ i }) => serial.need[i * serial.resources + r] as number));
    const ids = short.map(({ task }) => task.id);
    if (r >= PEOPLE_RESOURCES)
      return [
        {
          sort: 'gear',
          tasks: ids,
          found: `${countOf(ids)} ${needs(ids)} ${most} of ${name}, there ${gear[name] === 1 ? 'is' : 'are'} ${gear[name] ?? 0}`,
          change: `${most - have} more of ${name}`,
        },
      ];
    const [words, who] = RESOURCE_WORDS[r] as readonly [string, string];
    // The fourth says nothing new where climbers or leads alone are short.
    if (r === 3 && (mostOf(plan, 1) < mostNeed(plan, 1) || mostOf(plan, 2) < mostNeed(plan, 2)))
      return [];
    const offered = crew.people.filter(
      ({ climbs, leads }) =>
        r === 0 || (r === 1 && climbs) || (r === 2 && leads) || (r === 3 && (climbs || leads)),
    );
    const missing = most - have;
    const unsure = offered.filter(({ sure }) => !sure);
    const promise =
      unsure.length > 0 && offered.length >= most
        ? `the word of ${unsure
            .slice(0, missing)
            .map(({ name: one }) => one)
            .join(' and ')} to come for certain, or `
        : '';
    return [
      {
        sort: 'people',
        tasks: ids,
        found: `${countOf(ids)} ${needs(ids)} ${most} ${words}; ${offered.length === 0 ? 'nobody offered' : `at most ${have} of ${offered.length} are reckoned to be there at once`}`,
        change: `${promise}${missing} more ${r === 0 ? (missing === 1 ? 'person' : 'people') : `${missing === 1 ? 'person' : 'people'} ${missing === 1 ? who : who.replace('climbs', 'climb').replace('can lead', 'can lead')}`}`,
      },
    ];
  });
}

function mostOf({ calendar, serial }: CompiledPlan, r: number): number {
  let most = 0;
  for (let p = 0; p < calendar.pieceEnd.length; p++)
    most = Math.max(most, calendar.capacity[p * serial.resources + r] as number);
  return most;
}

const mostNeed = ({ serial }: CompiledPlan, r: number): number => {
  let most = 0;
  for (let i = 0; i < serial.network.count; i++)
    most = Math.max(most, serial.need[i * serial.resources + r] as number);
  return most;
};

const countOf = (ids: readonly string[]): string =>
  ids.length === 1 ? `task ${ids[0]}` : `${ids.length} tasks (${ids[0]} first)`;

const needs = (ids: readonly string[]): string => (ids.length === 1 ? 'needs' : 'need');

/** Tasks by daylight, or by the sun, on dates that have none. */
function darkness(plan: CompiledPlan): Trouble[] {
  const { hours, tasks, crew } = plan;
  return (['sun', 'daylight'] as const).flatMap((need): Trouble[] => {
    const ids = tasks.filter((task) => lightNeedOf(task) === need).map(({ id }) => id);
    if (ids.length === 0 || hours.open[need].includes(1) || crew.site === null) return [];
    const first = hours.days[0];
    const words = (first?.light?.words ?? '').replace(/\.$/, '');
    return [
      {
        sort: 'daylight',
        tasks: ids,
        found: `${countOf(ids)} ${needs(ids)} ${need === 'sun' ? 'the sun, being at height' : 'daylight'}, and there is none on these dates. ${words}`,
        change: nextLight(plan, need),
      },
    ];
  });
}

/** The nearest date with light for the longest of such tasks. */
function nextLight({ hours, tasks, crew }: CompiledPlan, need: 'sun' | 'daylight'): string {
  const site = crew.site;
  const longest = Math.max(
    ...tasks.filter((task) => lightNeedOf(task) === need).map(({ duration }) => duration.likely),
  );
  const from = hours.days[0]?.day ?? 0;
  for (let off = 1; site !== null && off <= 183; off++)
    for (const day of [from + off, from - off]) {
      const light = lightOn(site, dateOf(day));
      const { is, from: a, to: b } = need === 'sun' ? light.sun : light.civil;
      if (is === 'never' || (b ?? DAY) - (a ?? 0) < longest) continue;
      return `another date: the nearest with light enough is ${weekday(day)} ${dateOf(day)}`;
    }
  return 'another date, or work by lamp that is not at height';
}

/** Tasks whose wind limit is passed in every hour that has light. */
function windy(plan: CompiledPlan): Trouble[] {
  const { hours, tasks, classes, calendar, serial } = plan;
  return classes.flatMap(({ light, gustLimit }, c): Trouble[] => {
    if (!hours.open[light].includes(1)) return [];
    if (calendar.next[c * calendar.slots] !== calendar.slots) return [];
    const ids = tasks.filter((_, i) => serial.classOf[i] === c).map(({ id }) => id);
    let calmest = Number.POSITIVE_INFINITY;
    hours.gust.forEach((gust, s) => {
      if (hours.open[light][s] === 1 && gust < calmest) calmest = gust;
    });
    return [
      {
        sort: 'wind',
        tasks: ids,
        found: `${countOf(ids)} may not be begun in gusts over ${gustLimit.toFixed(1)} m/s, and the calmest hour with light is forecast at ${calmest.toFixed(1)} m/s`,
        change: `another day: one with gusts ${(calmest - gustLimit).toFixed(1)} m/s lower`,
      },
    ];
  });
}

/** Tasks that are longer than any unbroken hours for them with the people that they need. */
function tooLong(plan: CompiledPlan): Trouble[] {
  const { tasks, serial, calendar } = plan;
  return tasks.flatMap((task, i): Trouble[] => {
    if (serial.pauses[i] === 1 || task.people === 0) return [];
    const longest = longestRun(plan, i);
    if (longest === 0 || task.duration.likely <= longest + 1e-6 || calendar.slots === 0) return [];
    return [
      {
        sort: 'too long',
        tasks: [task.id],
        found: `task ${task.id} takes ${hoursText(task.duration.likely)}, and the longest unbroken time for it is ${hoursText(longest)}`,
        change: 'split it, or mark it as one that may be put down and taken up again',
      },
    ];
  });
}

/** Seconds of the longest run of hours open to a task in which its people and gear are there. */
function longestRun({ serial, calendar, hours }: CompiledPlan, i: number): number {
  const { resources, need, classOf } = serial;
  const { until, pieceOf, capacity, slots } = calendar;
  let [run, most] = [0, 0];
  for (let s = 0; s < slots; s++) {
    let fits = (until[(classOf[i] as number) * slots + s] as number) > s;
    for (let r = 0; fits && r < resources; r++)
      fits =
        (need[i * resources + r] as number) <=
        (capacity[(pieceOf[s] as number) * resources + r] as number);
    run = fits ? run + SLOT * (hours.pace[s] as number) : 0;
    most = Math.max(most, run);
  }
  return most;
}

/** Stretches between stop points that no day is long enough for, or that end in none fit for any night. */
function nights(plan: CompiledPlan): Trouble[] {
  const { serial, stops, tasks, calendar, hours } = plan;
  const { toStop, begunBefore } = serial.night;
  const days = hours.days.length;
  return stops.flatMap((stop, s): Trouble[] => {
    if (begunBefore[s + 1] === begunBefore[s]) return [];
    const room = hours.days.map((_, k) => (calendar.dark[k] as number) - firstOpen(plan, k, s));
    const ways = hours.days.map((_, k) => toStop[k * (stops.length + 1) + s] as number);
    if (ways.some((way, k) => way <= (room[k] as number) + 1e-6) || days === 0) return [];
    const from = s === 0 ? 'the start' : `stop point ${tasks[stops[s - 1] as number]?.id}`;
    const id = tasks[stop]?.id as string;
    // No hour for it at all, or nobody who could: told by what lacks.
    if (Math.max(...room) <= 0) return [];
    if (ways.every((way) => way === Number.POSITIVE_INFINITY)) {
      if (standsOnSomeNight(plan, s)) return [];
      const gusts = hours.days.map(({ nightGust }) => nightGust ?? 0);
      return [
        {
          sort: 'night',
          tasks: [id],
          found: `behind ${from} no stop point stands in the wind of any of these nights (calmest ${Math.min(...gusts).toFixed(1)} m/s)`,
          change: `guys or anchors by which stop point ${id} stands in ${Math.min(...gusts).toFixed(1)} m/s, or other nights`,
        },
      ];
    }
    const shortest = Math.min(...ways);
    const longest = Math.max(...room);
    return [
      {
        sort: 'night',
        tasks: [id],
        found: `from ${from} to ${id} takes ${hoursText(shortest)} with closing down and a margin, and the longest day has ${hoursText(longest)}`,
        change: `a stop point on the way (a stage on props is one as soon as somebody says what a prop bears), or people who come ${hoursText(shortest - longest)} earlier`,
      },
    ];
  });
}

/** Whether a stop point from the s-th on may be left on one of the nights. */
const standsOnSomeNight = ({ hours, stops, tasks }: CompiledPlan, s: number): boolean =>
  hours.days.some(({ nightGust }) =>
    stops.slice(s).some((stop) => {
      const allowed = tasks[stop]?.stopPoint?.allowedGust ?? null;
      return nightGust === null || allowed === null || allowed >= nightGust;
    }),
  );

/** When a day's work on a stretch may begin: light, and the people that its lifts need. */
function firstOpen(plan: CompiledPlan, k: number, stretch: number): number {
  const { hours, calendar, serial } = plan;
  const need = peopleOf(plan, stretch);
  for (let slot = k * SLOTS_PER_DAY; slot < (k + 1) * SLOTS_PER_DAY; slot++)
    if (
      hours.open.daylight[slot] === 1 &&
      (calendar.capacity[(calendar.pieceOf[slot] as number) * serial.resources] as number) >= need
    )
      return slot * SLOT;
  return (k + 1) * DAY;
}

/** The most people that a task needs which changes what stands, before a stop point and after the last. */
function peopleOf({ tasks, serial, stops }: CompiledPlan, stretch: number): number {
  const before = new Set<number>();
  const stack = [stops[stretch] as number];
  const ids = new Map(tasks.map(({ id }, i) => [id, i]));
  const done = new Set(stops.slice(0, stretch));
  for (let i = stack.pop(); i !== undefined; i = stack.pop()) {
    if (before.has(i) || done.has(i)) continue;
    before.add(i);
    for (const id of tasks[i]?.after ?? []) stack.push(ids.get(id) as number);
  }
  return [...before].reduce(
    (most, i) =>
      tasks[i]?.commits ? Math.max(most, serial.need[i * serial.resources] as number) : most,
    1,
  );
}

function notDone({ hours, tasks, serial }: CompiledPlan, ids: readonly string[]): Trouble {
  const left = tasks.reduce(
    (sum, { id, people }, i) =>
      ids.includes(id) ? sum + people * (serial.planned[i] as number) : sum,
    0,
  );
  const last = hours.days.at(-1);
  return {
    sort: 'not done',
    tasks: ids,
    found: `${ids.length} of ${tasks.length} tasks are left on ${last?.date ?? 'the last day'}, from ${ids[0]} on: ${hoursText(left)} of one person’s work`,
    change: 'more hours or more hands: the what-ifs tell which helps most',
  };
}

/** Hours and minutes, as `3 h 40 min`. */
export const hoursText = (seconds: number): string => {
  const minutes = Math.round(seconds / 60);
  const [h, m] = [Math.floor(minutes / 60), minutes % 60];
  return h === 0 ? `${m} min` : m === 0 ? `${h} h` : `${h} h ${m} min`;
};
