// A task of the raising plan: what must be done before it, how long it takes with how many hands, what
// it needs, in which wind and light it may be done, and whether the shell may be left after it.
// Durations in seconds, gusts in metres per second.

import type { Fault } from '../measure/fault.ts';
import { HANDLING_LIMITS } from '../stages/stop-work.ts';

/** A range of a quantity: the least and the most that people would bet on, and the likeliest. */
export interface Range {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** A stop point: the shell may be left overnight once the task is done. */
export interface StopPoint {
  /** Gust that it stands in, closed down, m/s; null: nobody knows. */
  readonly allowedGust: number | null;
  /** Closing it down for the night (ties, covers, ladders away), seconds, and hands for it. */
  readonly closeDown: number;
  readonly hands: number;
}

/** A task. */
export interface Task {
  readonly id: string;
  /** In words, for cards. */
  readonly what: string;
  /** Tasks to be done before it, by id. */
  readonly after: readonly string[];
  /** Seconds with just `people` hands. */
  readonly duration: Range;
  /** People that it needs, of whom so many climb and so many others lead; 0 people: it waits only. */
  readonly people: number;
  readonly climbers: number;
  readonly leads: number;
  /** Access gear and tools by name and number. */
  readonly gear: Readonly<Record<string, number>>;
  /** The most people that it has a use for, at least `people`. */
  readonly usefulPeople: number;
  /** Part of the duration that further hands shorten, 0 to 1. */
  readonly shared: number;
  /** No start where the gust is more, m/s; null: no limit. */
  readonly gustLimit: number | null;
  readonly daylight: boolean;
  readonly atHeight: boolean;
  /** Among tasks that could start, the higher goes first. */
  readonly priority: number;
  readonly stopPoint: StopPoint | null;
  /** Once it has begun, the shell may not be left before the next stop point. */
  readonly commits: boolean;
  /** It may be put down for breaks and nights and taken up again. */
  readonly pauses: boolean;
}

/** A task with the common for all that is not given: two people, no gear, by daylight, no wind limit,
 * not at height, it leaves the shell as it is. A duration given as one number is sure. */
export function taskOf(
  given: Pick<Task, 'id'> &
    Partial<Omit<Task, 'id' | 'duration'>> & { readonly duration: Range | number },
): Task {
  const { duration } = given;
  const people = given.people ?? 2;
  return {
    what: given.id,
    after: [],
    climbers: 0,
    leads: 0,
    gear: {},
    shared: 0,
    gustLimit: null,
    daylight: true,
    atHeight: false,
    priority: 0,
    stopPoint: null,
    commits: false,
    pauses: false,
    ...given,
    people,
    usefulPeople: Math.max(people, given.usefulPeople ?? people),
    duration:
      typeof duration === 'number' ? { low: duration, likely: duration, high: duration } : duration,
  };
}

/** Everything that keeps tasks from being planned: an id twice, an unknown or circular `after`, a
 * range out of order, needs that are no whole numbers, a share or limit out of range, and a task that
 * changes what stands with no stop point behind it. */
export function taskFaults(tasks: readonly Task[]): Fault[] {
  const ids = new Map<string, number>();
  const faults = tasks.flatMap((task, i) => {
    const again = ids.get(task.id);
    ids.set(task.id, i);
    return [
      ...(again === undefined
        ? []
        : [fault(task, 'id', 'the id of another task too', 'an id of its own')]),
      ...ownFaults(task),
    ];
  });
  for (const task of tasks)
    for (const id of task.after)
      if (!ids.has(id)) faults.push(fault(task, 'after', JSON.stringify(id), 'the id of a task'));
  if (faults.length > 0) return faults;
  const circle = circular(tasks, ids);
  if (circle.length > 0)
    return [
      {
        path: `task ${circle[0]}`,
        found: `each waits for the next: ${[...circle, circle[0]].join(', ')}`,
        expected: 'tasks that can be done one after the other',
      },
    ];
  return lostFaults(tasks, ids);
}

function ownFaults(task: Task): Fault[] {
  const { low, likely, high } = task.duration;
  const faults: Fault[] = [];
  if (!(low >= 0 && low <= likely && likely <= high && Number.isFinite(high)))
    faults.push(
      fault(task, 'duration', `${low}, ${likely}, ${high} s`, 'low ≤ likely ≤ high, none negative'),
    );
  const whole = (name: string, value: number): void => {
    if (!(Number.isInteger(value) && value >= 0 && value <= 1000))
      faults.push(fault(task, name, String(value), 'a whole number, 0 to 1000'));
  };
  whole('people', task.people);
  whole('climbers', task.climbers);
  whole('leads', task.leads);
  whole('usefulPeople', task.usefulPeople);
  for (const [name, count] of Object.entries(task.gear)) whole(`gear.${name}`, count);
  if (task.climbers + task.leads > task.people)
    faults.push(
      fault(
        task,
        'people',
        String(task.people),
        `at least its ${task.climbers} climbers and ${task.leads} leads`,
      ),
    );
  if (!(task.shared >= 0 && task.shared <= 1))
    faults.push(fault(task, 'shared', String(task.shared), '0 to 1'));
  for (const [name, gust] of [
    ['gustLimit', task.gustLimit],
    ['stopPoint.allowedGust', task.stopPoint?.allowedGust ?? null],
  ] as const)
    if (gust !== null && !(gust >= 0 && gust <= 100))
      faults.push(fault(task, name, `${gust} m/s`, '0 to 100 m/s, or null'));
  const closing = task.stopPoint?.closeDown ?? 0;
  if (!(closing >= 0 && closing <= 86_400))
    faults.push(fault(task, 'stopPoint.closeDown', `${closing} s`, '0 to 86400 s'));
  return faults;
}

const fault = (task: Task, field: string, found: string, expected: string): Fault => ({
  path: `task ${task.id}, ${field}`,
  found,
  expected,
});

/** Ids of tasks that wait for each other in a circle, none where there is no circle. */
function circular(tasks: readonly Task[], ids: ReadonlyMap<string, number>): string[] {
  const left = tasks.map(({ after }) => new Set(after).size);
  const next = tasks.map((): number[] => []);
  tasks.forEach(({ after }, i) => {
    for (const id of new Set(after)) next[ids.get(id) as number].push(i);
  });
  const ready = left.flatMap((count, i) => (count === 0 ? [i] : []));
  for (let at = 0; at < ready.length; at++)
    for (const j of next[ready[at]]) if (--left[j] === 0) ready.push(j);
  let at = left.findIndex((count) => count > 0);
  if (at < 0) return [];
  const seen: number[] = [];
  while (!seen.includes(at)) {
    seen.push(at);
    at = ids.get(tasks[at].after.find((id) => left[ids.get(id) as number] > 0) as string) as number;
  }
  return seen.slice(seen.indexOf(at)).map((i) => tasks[i].id);
}

/** Tasks that change what stands with no stop point among those behind them. */
function lostFaults(tasks: readonly Task[], ids: ReadonlyMap<string, number>): Fault[] {
  const covered = new Uint8Array(tasks.length);
  const cover = (i: number): void => {
    const stack = [i];
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      if (covered[at]) continue;
      covered[at] = 1;
      for (const id of tasks[at].after) stack.push(ids.get(id) as number);
    }
  };
  tasks.forEach(({ stopPoint }, i) => {
    if (stopPoint) cover(i);
  });
  return tasks
    .filter(({ commits }, i) => commits && !covered[i])
    .map((task) =>
      fault(
        task,
        'commits',
        'a task that changes what stands, with no stop point behind it',
        'a stop point after it: say where the shell may be left',
      ),
    );
}

/** The gust over which a task is not begun, m/s; infinite where there is no limit. At height it is never
 * more than guidance for work at height. */
export function gustLimitOf({ gustLimit, atHeight }: Task): number {
  const guidance = HANDLING_LIMITS.find(({ task }) => task === 'work at height')?.gust;
  const height = atHeight ? (guidance ?? Number.POSITIVE_INFINITY) : Number.POSITIVE_INFINITY;
  return Math.min(gustLimit ?? Number.POSITIVE_INFINITY, height);
}
