// From tasks, hours, people and gear to the arrays that serial generation runs on.

import { HANDLING_LIMITS } from '../stages/stop-work.ts';
import { CLOSE_DOWN, NIGHT_MARGIN } from './common.ts';
import {
  LIGHT_NEEDS,
  type LightNeed,
  type PlanHours,
  planHours,
  SLOT,
  SLOTS_PER_DAY,
} from './hours.ts';
import { networkOf } from './network.ts';
import { PEOPLE_RESOURCES, type Presence, plannedCapacityInto, presenceOf } from './people.ts';
import type { CrewSettings } from './schema.ts';
import { firstList } from './search.ts';
import {
  type NightRule,
  runSerialInto,
  type SerialCalendar,
  type SerialTasks,
  serialWork,
} from './serial.ts';
import type { Task } from './task.ts';

/** What tasks may be done when: their need of light and their limit of gust, m/s (infinite: none). */
export interface HourClass {
  readonly light: LightNeed;
  readonly gustLimit: number;
}

/** Stops behind → seconds to the next stop point that may be left that night, closed down (infinite where
 * there is none), and of that the way. */
export interface DayWays {
  readonly toStop: Float64Array;
  readonly way: Float64Array;
}

/** A plan ready to run. */
export interface CompiledPlan {
  readonly tasks: readonly Task[];
  readonly crew: CrewSettings;
  readonly hours: PlanHours;
  readonly presence: Presence;
  readonly classes: readonly HourClass[];
  readonly serial: SerialTasks;
  /** With planned people and the wind forecast. */
  readonly calendar: SerialCalendar;
  /** Names of the resources: people, climbers, leads, climbers or leads, then gear. */
  readonly resources: readonly string[];
  /** Tasks that are stop points, in the order in which they are reached. */
  readonly stops: readonly number[];
  /** The ways to the stop points on a day with these people and gear. */
  readonly waysOf: (day: number, most: Int32Array) => DayWays;
  /** Slot → 1 where anybody is planned to be there. */
  readonly attended: Uint8Array;
}

/** A plan of tasks without faults, with gear by name and number. */
export function compilePlan(
  tasks: readonly Task[],
  crew: CrewSettings,
  gear: Readonly<Record<string, number>>,
): CompiledPlan {
  const hours = planHours(crew);
  const presence = presenceOf(crew.people, hours.days, hours.slots);
  const gearNames = [...new Set(tasks.flatMap((task) => Object.keys(task.gear)))].sort();
  const resources = ['people', 'climbers', 'leads', 'climbers or leads', ...gearNames];
  const { classes, classOf } = hourClasses(tasks);
  const size = resources.length;
  const capacity = new Int32Array(presence.end.length * size);
  plannedCapacityInto(capacity, size, crew, presence);
  for (let p = 0; p < presence.end.length; p++)
    gearNames.forEach((name, g) => {
      capacity[p * size + PEOPLE_RESOURCES + g] = gear[name] ?? 0;
    });
  const calendar: SerialCalendar = {
    slot: SLOT,
    slots: hours.slots,
    slotsPerDay: SLOTS_PER_DAY,
    endless: false,
    until: new Int32Array(classes.length * hours.slots),
    next: new Int32Array(classes.length * hours.slots),
    pieceOf: presence.pieceOf,
    pieceEnd: presence.end,
    capacity,
    pace: hours.pace,
    gust: hours.gust,
    dark: darkOf(hours, presence, crew),
  };
  const attended = Uint8Array.from(presence.pieceOf, (p) => (capacity[p * size] > 0 ? 1 : 0));
  const asForecast = new Float64Array(hours.days.length).fill(1);
  openHoursInto(calendar, hours, classes, asForecast, attended);
  const plain = serialTasks(tasks, classOf, gearNames);
  const { night, stops, waysOf } = nightRule(tasks, plain, calendar, hours);
  return {
    tasks,
    crew,
    hours,
    presence,
    classes,
    serial: { ...plain, night },
    calendar,
    resources,
    stops,
    waysOf,
    attended,
  };
}

/** The gust over which a task is not begun, m/s; infinite where there is no limit. At height it is never
 * more than guidance for work at height. */
export function gustLimitOf({ gustLimit, atHeight }: Task): number {
  const guidance = HANDLING_LIMITS.find(({ task }) => task === 'work at height')?.gust;
  const height = atHeight ? (guidance ?? Number.POSITIVE_INFINITY) : Number.POSITIVE_INFINITY;
  return Math.min(gustLimit ?? Number.POSITIVE_INFINITY, height);
}

/** The light that a task needs. */
export const lightNeedOf = ({ people, daylight, atHeight }: Task): LightNeed =>
  people === 0 ? 'waits' : atHeight ? 'sun' : daylight ? 'daylight' : 'lamp';

function hourClasses(tasks: readonly Task[]): { classes: HourClass[]; classOf: Int32Array } {
  const classes: HourClass[] = [];
  const known = new Map<string, number>();
  const classOf = Int32Array.from(tasks, (task) => {
    const [light, gustLimit] = [lightNeedOf(task), gustLimitOf(task)];
    const key = `${light} ${gustLimit}`;
    const at = known.get(key) ?? classes.push({ light, gustLimit }) - 1;
    known.set(key, at);
    return at;
  });
  return { classes, classOf };
}

/** Writes which hours are open to each class when the gusts of each day come as so many times the
 * forecast. Unknown gusts hold nobody back. Work goes on only while anybody is there (`attended`). */
export function openHoursInto(
  calendar: SerialCalendar,
  { open, gust }: PlanHours,
  classes: readonly HourClass[],
  gustFactor: Float64Array,
  attended: Uint8Array,
): void {
  const { until, next, slots, slotsPerDay } = calendar;
  for (let c = 0; c < classes.length; c++) {
    const { light, gustLimit } = classes[c];
    const lit = open[light];
    const alone = light === 'waits';
    const row = c * slots;
    let [end, first] = [slots, slots];
    for (let day = slots / slotsPerDay - 1; day >= 0; day--) {
      const limit = gustLimit / gustFactor[day];
      for (let s = (day + 1) * slotsPerDay - 1; s >= day * slotsPerDay; s--) {
        if (lit[s] === 1 && (alone || attended[s] === 1) && !(gust[s] > limit)) {
          until[row + s] = end;
          first = s;
        } else {
          until[row + s] = s;
          end = s;
        }
        next[row + s] = first;
      }
    }
  }
}

function serialTasks(
  tasks: readonly Task[],
  classOf: Int32Array,
  gearNames: readonly string[],
): SerialTasks {
  const n = tasks.length;
  return {
    network: networkOf(tasks),
    resources: PEOPLE_RESOURCES + gearNames.length,
    need: Int32Array.from(
      tasks.flatMap(({ people, climbers, leads, gear }) => [
        people,
        climbers,
        leads,
        climbers + leads,
        ...gearNames.map((name) => gear[name] ?? 0),
      ]),
    ),
    extra: Int32Array.from(tasks, ({ people, usefulPeople }) =>
      people === 0 ? 0 : Math.max(0, usefulPeople - people),
    ),
    shared: Float64Array.from(tasks, ({ shared }) => shared),
    planned: Float64Array.from(tasks, ({ duration }) => duration.likely),
    pauses: Uint8Array.from(tasks, ({ pauses, people }) => (pauses && people > 0 ? 1 : 0)),
    classOf,
    night: {
      stops: 0,
      stopOf: new Int32Array(n).fill(-1),
      commits: new Uint8Array(n),
      begunBefore: new Int32Array(1),
      toStop: new Float64Array(1),
      way: new Float64Array(1),
      gustLimit: new Float64Array(1),
    },
  };
}

/** When each day's work must be closed down: at dusk, or when too few are left to close down. */
function darkOf({ days }: PlanHours, { end, pieceOf }: Presence, crew: CrewSettings): Float64Array {
  const hands = new Int32Array(end.length * PEOPLE_RESOURCES);
  plannedCapacityInto(hands, PEOPLE_RESOURCES, crew, presenceOf(crew.people, days, pieceOf.length));
  const least = Math.max(1, Math.min(CLOSE_DOWN.hands, crew.closeDown.hands));
  return Float64Array.from(days, ({ dusk }, k) => {
    for (let s = (k + 1) * SLOTS_PER_DAY - 1; s >= k * SLOTS_PER_DAY; s--)
      if (hands[pieceOf[s] * PEOPLE_RESOURCES] >= least) return Math.min(dusk, (s + 1) * SLOT);
    return dusk;
  });
}

/** The night rule: stops in the order of a schedule with hours without end, what commits before each,
 * and how long it takes on each day, with its people and breaks, from one to the next that stands in that
 * night's wind. */
function nightRule(
  tasks: readonly Task[],
  plain: SerialTasks,
  calendar: SerialCalendar,
  hours: PlanHours,
): { night: NightRule; stops: number[]; waysOf: CompiledPlan['waysOf'] } {
  const days = hours.days.length;
  const ever = new Int32Array(plain.resources);
  for (let k = 0; k < days; k++)
    mostOfDay(calendar, plain.resources, k).forEach((most, r) => {
      ever[r] = Math.max(ever[r], most);
    });
  const { finish } = endlessRun(plain, ever);
  const isStop = tasks.flatMap(({ stopPoint }, i) => (stopPoint ? [i] : []));
  const stops = isStop.sort((a, b) => compared(finish[a], finish[b]) || a - b);
  const blockOf = blocksOf(tasks, plain, stops);
  const own = stops.map((_, s) =>
    tasks.flatMap(({ commits }, i) => (commits && blockOf[i] === s ? [i] : [])),
  );
  const begunBefore = new Int32Array(stops.length + 1);
  own.forEach((block, s) => {
    begunBefore[s + 1] = begunBefore[s] + block.length;
  });
  const row = stops.length + 1;
  const toStop = new Float64Array(days * row);
  const way = new Float64Array(days * row);
  const waysOf = (k: number, most: Int32Array): DayWays =>
    dayWays(
      tasks,
      stops,
      hours.days[k].nightGust,
      stretches(plain, hours, { k, stops, own, most }),
    );
  for (let k = 0; k < days; k++) {
    const ways = waysOf(k, mostOfDay(calendar, plain.resources, k));
    toStop.set(ways.toStop, k * row);
    way.set(ways.way, k * row);
  }
  const stopOf = new Int32Array(tasks.length).fill(-1);
  stops.forEach((i, s) => {
    stopOf[i] = s;
  });
  const commits = Uint8Array.from(tasks, (task) => (task.commits ? 1 : 0));
  const gustLimit = Float64Array.from(own, (block) =>
    block.reduce((least, i) => Math.min(least, gustLimitOf(tasks[i])), Number.POSITIVE_INFINITY),
  );
  const night = { stops: stops.length, stopOf, commits, begunBefore, toStop, way, gustLimit };
  return { night, stops, waysOf };
}

/** Infinite times are as long as each other. */
const compared = (a: number, b: number): number => (a < b ? -1 : a > b ? 1 : 0);

/** How long each stretch from one stop to the next takes with the people of a day, its breaks in between;
 * infinite where they can't do it. */
function stretches(
  plain: SerialTasks,
  { open }: PlanHours,
  {
    k,
    stops,
    own,
    most,
  }: {
    readonly k: number;
    readonly stops: readonly number[];
    readonly own: readonly (readonly number[])[];
    readonly most: Int32Array;
  },
): Float64Array {
  const slots = Array.from({ length: SLOTS_PER_DAY }, (_, s) => k * SLOTS_PER_DAY + s);
  const { start, finish } = endlessRun(plain, most);
  const lit = slots.filter((s) => open.daylight[s] === 1);
  const [first, last] = [lit[0] ?? 0, lit.at(-1) ?? 0];
  const breaks = lit.length === 0 ? 1 : (last - first + 1) / lit.length;
  return Float64Array.from(stops, (stop, s) => {
    if (finish[stop] === Number.POSITIVE_INFINITY) return Number.POSITIVE_INFINITY;
    const from = own[s].reduce((least, i) => Math.min(least, start[i]), finish[stop]);
    return NIGHT_MARGIN * breaks * Math.max(0, finish[stop] - from);
  });
}

function dayWays(
  tasks: readonly Task[],
  stops: readonly number[],
  nightGust: number | null,
  length: Float64Array,
): DayWays {
  const toStop = new Float64Array(stops.length + 1).fill(Number.POSITIVE_INFINITY);
  const way = new Float64Array(stops.length + 1);
  for (let s = 0; s < stops.length; s++) {
    let sum = 0;
    for (let v = s; v < stops.length; v++) {
      sum += length[v];
      const point = tasks[stops[v]].stopPoint;
      if (!point) continue;
      const holds =
        nightGust === null || point.allowedGust === null || point.allowedGust >= nightGust;
      if (!holds) continue;
      toStop[s] = sum + point.closeDown;
      way[s] = sum;
      break;
    }
  }
  return { toStop, way };
}

/** The most of each resource in any piece of a day's time. */
export function mostOfDay(
  { capacity, pieceOf }: Pick<SerialCalendar, 'capacity' | 'pieceOf'>,
  resources: number,
  k: number,
): Int32Array {
  const most = new Int32Array(resources);
  const last = pieceOf[(k + 1) * SLOTS_PER_DAY - 1];
  for (let p = pieceOf[k * SLOTS_PER_DAY]; p <= last; p++)
    for (let r = 0; r < resources; r++) most[r] = Math.max(most[r], capacity[p * resources + r]);
  return most;
}

/** Starts and finishes with these people and gear and light without end. */
function endlessRun(
  plain: SerialTasks,
  most: Int32Array,
): { start: Float64Array; finish: Float64Array } {
  const { network, planned } = plain;
  const classes = Math.max(0, ...plain.classOf) + 1;
  const always: SerialCalendar = {
    slot: SLOT,
    slots: 1,
    slotsPerDay: SLOTS_PER_DAY,
    endless: true,
    until: new Int32Array(classes).fill(1),
    next: new Int32Array(classes),
    pieceOf: new Int32Array(1),
    pieceEnd: Float64Array.of(Number.POSITIVE_INFINITY),
    capacity: most,
    pace: Float64Array.of(1),
    gust: Float64Array.of(Number.NaN),
    dark: new Float64Array(0),
  };
  const list = firstList(network, planned, new Float64Array(network.count));
  const rank = new Int32Array(network.count);
  list.forEach((j, k) => {
    rank[j] = k;
  });
  const work = serialWork(plain, 0);
  runSerialInto(work, plain, always, list, rank, planned, LIGHT_NEEDS.length);
  return work;
}

/** Task → the first stop that it leads to, or is; the number of stops where it leads to none. */
function blocksOf(
  tasks: readonly Task[],
  { network }: SerialTasks,
  stops: readonly number[],
): Int32Array {
  const block = new Int32Array(tasks.length).fill(stops.length);
  stops.forEach((i, s) => {
    block[i] = s;
  });
  for (let k = network.count - 1; k >= 0; k--) {
    const i = network.order[k];
    for (let e = network.start[i]; e < network.start[i + 1]; e++)
      block[i] = Math.min(block[i], block[network.next[e]]);
  }
  return block;
}
