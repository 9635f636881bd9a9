// From tasks, hours, people and gear to the arrays that serial generation runs on.

import { CLOSE_DOWN } from './common.ts';
import { type LightNeed, type PlanHours, planHours, SLOT, SLOTS_PER_DAY } from './hours.ts';
import { networkOf } from './network.ts';
import { nightRule, type WaysOf } from './night-ways.ts';
import { openHoursInto } from './open-hours.ts';
import { PEOPLE_RESOURCES, type Presence, plannedCapacityInto, presenceOf } from './people.ts';
import type { CrewSettings } from './schema.ts';
import type { SerialCalendar, SerialTasks } from './serial.ts';
import { gustLimitOf, type Task } from './task.ts';

/** What tasks may be done when: their need of light and their limit of gust, m/s (infinite: none). */
export interface HourClass {
  readonly light: LightNeed;
  readonly gustLimit: number;
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
  readonly waysOf: WaysOf;
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
  openHoursInto(calendar, hours, classes, attended)(asForecast);
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
