// The night rule of a plan: which tasks commit to which stop point, and how long it takes on each day,
// with its people and breaks, from one stop point to the next that may be left that night.

import { NIGHT_MARGIN } from './common.ts';
import { LIGHT_NEEDS, type PlanHours, SLOT, SLOTS_PER_DAY } from './hours.ts';
import { firstList } from './search.ts';
import {
  type NightRule,
  runSerialInto,
  type SerialCalendar,
  type SerialTasks,
  serialWork,
} from './serial.ts';
import { gustLimitOf, type Task } from './task.ts';

/** Stops behind → seconds to the next stop point that may be left that night, closed down (infinite where
 * there is none), and of that the way. */
export interface DayWays {
  readonly toStop: Float64Array;
  readonly way: Float64Array;
}

/** The ways to the stop points on a day with these people and gear. */
export type WaysOf = (day: number, most: Int32Array) => DayWays;

/** The night rule: stops in the order of a schedule with hours without end, what commits before each,
 * and how long it takes on each day, with its people and breaks, from one to the next that stands in that
 * night's wind. */
export function nightRule(
  tasks: readonly Task[],
  plain: SerialTasks,
  calendar: SerialCalendar,
  hours: PlanHours,
): { night: NightRule; stops: number[]; waysOf: WaysOf } {
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
    const ways = waysWhileThere(calendar, plain.resources, k, waysOf);
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

/** The shortest ways of a day's crews: a stop point must be reached while those are there that its way is
 * reckoned with. Where no crew is there for long enough, as if those were until dark who are there for most of
 * the day. */
export function waysWhileThere(
  calendar: SerialCalendar,
  resources: number,
  k: number,
  waysOf: WaysOf,
): DayWays {
  let best: DayWays | null = null;
  for (const { most, there, gone } of crewsOfDay(calendar, resources, k)) {
    const { toStop, way } = waysOf(k, most);
    best ??= {
      toStop: new Float64Array(way.length).fill(Number.POSITIVE_INFINITY),
      way: new Float64Array(way.length),
    };
    for (let s = 0; s < way.length; s++) {
      const own = Math.max(toStop[s], way[s] + gone);
      if (!(own < best.toStop[s]) || !(way[s] <= NIGHT_MARGIN * there)) continue;
      best.toStop[s] = own;
      best.way[s] = way[s];
    }
  }
  // Behind the last stop there is nothing to reach.
  if (best?.toStop.subarray(0, -1).every((x) => x < Number.POSITIVE_INFINITY)) return best;
  const usual = waysOf(k, usualOfDay(calendar, resources, k));
  if (best === null) return usual;
  for (let s = 0; s < usual.way.length; s++)
    if (best.toStop[s] === Number.POSITIVE_INFINITY) {
      best.toStop[s] = usual.toStop[s];
      best.way[s] = usual.way[s];
    }
  return best;
}

/** Who is there from one coming or going of a day to a later one: the least of each resource between, for how
 * long, and how long before dark that ends, seconds. */
function crewsOfDay(
  { capacity, pieceOf, pieceEnd, dark, slot, slotsPerDay }: SerialCalendar,
  resources: number,
  k: number,
): { readonly most: Int32Array; readonly there: number; readonly gone: number }[] {
  const midnight = k * slotsPerDay * slot;
  const crews: { most: Int32Array; there: number; gone: number }[] = [];
  const last = pieceOf[(k + 1) * slotsPerDay - 1];
  for (let a = pieceOf[k * slotsPerDay]; a <= last; a++) {
    const from = a === 0 ? midnight : Math.max(midnight, pieceEnd[a - 1]);
    const most = capacity.slice(a * resources, (a + 1) * resources);
    for (let b = a; b <= last && from < dark[k]; b++) {
      for (let r = 0; r < resources; r++) most[r] = Math.min(most[r], capacity[b * resources + r]);
      if (most[0] === 0) break;
      const to = Math.min(dark[k], pieceEnd[b]);
      crews.push({ most: most.slice(), there: to - from, gone: dark[k] - to });
    }
  }
  return crews;
}

/** As many of each resource as are there for at least half of the time in which anybody is, before dark. */
function usualOfDay(
  { capacity, pieceOf, slot, slotsPerDay, dark }: SerialCalendar,
  resources: number,
  k: number,
): Int32Array {
  const pieces: number[] = [];
  for (let s = k * slotsPerDay; s < (k + 1) * slotsPerDay && (s + 1) * slot <= dark[k]; s++)
    if (capacity[pieceOf[s] * resources] > 0) pieces.push(pieceOf[s]);
  return Int32Array.from({ length: resources }, (_, r) => {
    const counts = pieces.map((p) => capacity[p * resources + r]).sort((a, b) => b - a);
    return counts[Math.ceil(counts.length / 2) - 1] ?? 0;
  });
}

/** The most of each resource in any piece of a day's time. */
function mostOfDay(
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
