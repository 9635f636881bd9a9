// Serial generation of a schedule: time goes from event to event; at each, tasks that may start are
// taken in the order of a list, and each that light, wind, breaks, people and gear allow is started.
// Nothing that is decided looks ahead of what people know then: a task is started by its planned
// duration, it ends by its drawn one. `look` 1: the list is followed strictly, no task starts before one
// in front of it; the list of an optimal schedule by its starts gives that schedule. More: up to so many
// waiting tasks are passed over, so that nobody stands idle. Hands to spare are lent to what has a use for them
// and taken back as soon as others need them or go home. Written for ten thousand runs: typed
// arrays, one workspace. Times are seconds from midnight of the first date; dates follow each other
// without the days between.

import type { Network } from './network.ts';

/** What every run of a plan shares. Resources are numbered; 0 is hands. */
export interface SerialTasks {
  readonly network: Network;
  readonly resources: number;
  /** Task × resources. */
  readonly need: Int32Array;
  /** Further hands that each has a use for, and the part of its duration that they shorten. */
  readonly extra: Int32Array;
  readonly shared: Float64Array;
  /** Seconds that must be free and open ahead when a task is started. */
  readonly planned: Float64Array;
  readonly pauses: Uint8Array;
  /** Which hours are open to each: a row of `until`. */
  readonly classOf: Int32Array;
  readonly night: NightRule;
}

/** Which tasks may not be begun unless a stop point is reached before dark. Stops are in the order in
 * which they are reached. */
export interface NightRule {
  readonly stops: number;
  /** Task → its stop, −1 where it is none. */
  readonly stopOf: Int32Array;
  readonly commits: Uint8Array;
  /** Tasks that commit and belong before stop s: entry s, up to and with `stops`. */
  readonly begunBefore: Int32Array;
  /** Day × stops + 1: seconds from beginning behind s stops to the next that may be left that night,
   * closed down; infinite where there is none. */
  readonly toStop: Float64Array;
  /** Of that the way, closing down left out: it goes with the crew's pace. 0 where there is none. */
  readonly way: Float64Array;
  /** Stop → least gust limit, m/s, of what commits on the way to it; infinite where there is none. */
  readonly gustLimit: Float64Array;
}

/** The hours of one run. Slots of equal length from time 0. */
export interface SerialCalendar {
  readonly slot: number;
  readonly slots: number;
  readonly slotsPerDay: number;
  /** The last slot goes on for ever. */
  readonly endless: boolean;
  /** Class × slots: the first slot behind the run of open ones (the slot itself: closed), and the first
   * open slot from here on (`slots`: none). */
  readonly until: Int32Array;
  readonly next: Int32Array;
  /** Slot → piece of constant capacity; piece → its end in seconds; piece × resources. */
  readonly pieceOf: Int32Array;
  readonly pieceEnd: Float64Array;
  readonly capacity: Int32Array;
  /** Slot → speed of work, 1 or less, and gust forecast, m/s (NaN: not known). */
  readonly pace: Float64Array;
  readonly gust: Float64Array;
  /** Day → when what was begun must be at a stop point and closed down, seconds. */
  readonly dark: Float64Array;
}

/** Arrays that runs write in: starts and finishes by task, and by day where the shell was at dark. */
export interface SerialWork {
  readonly start: Float64Array;
  readonly finish: Float64Array;
  /** Task that each waited for last, −1: none. */
  readonly cause: Int32Array;
  /** Day → stops done by dark; `between`: 1 where more had been begun; `busy`: 1 where work ran on. */
  readonly reached: Int32Array;
  readonly between: Uint8Array;
  readonly left: Int32Array;
  readonly ready: Int32Array;
  readonly end: Float64Array;
  readonly running: Int32Array;
  /** Hands lent to each beyond what it needs, the seconds of work left of it with them, and when that was. */
  readonly hands: Int32Array;
  readonly due: Float64Array;
  readonly since: Float64Array;
  readonly used: Int32Array;
  readonly fresh: Int32Array;
  readonly stopDone: Uint8Array;
}

/** A workspace for runs of these tasks over so many days. */
export const serialWork = (tasks: SerialTasks, days: number): SerialWork => {
  const n = tasks.network.count;
  return {
    start: new Float64Array(n),
    finish: new Float64Array(n),
    cause: new Int32Array(n),
    reached: new Int32Array(days),
    between: new Uint8Array(days),
    left: new Int32Array(n),
    ready: new Int32Array(n),
    end: new Float64Array(n),
    running: new Int32Array(n),
    hands: new Int32Array(n),
    due: new Float64Array(n),
    since: new Float64Array(n),
    used: new Int32Array(tasks.resources),
    fresh: new Int32Array(n),
    stopDone: new Uint8Array(tasks.night.stops + 1),
  };
};

/** One run: the tasks in the order of `list` (`rank`: task → its place in it), with drawn durations.
 * Writes starts and finishes (infinite where a task never starts) and the evenings. Returns the last
 * finish, infinite where something is left undone. */
export function runSerialInto(
  work: SerialWork,
  tasks: SerialTasks,
  calendar: SerialCalendar,
  list: Int32Array,
  rank: Int32Array,
  drawn: Float64Array,
  look: number,
  from = 0,
): number {
  const { network, resources, need, extra, shared, planned, pauses, classOf, night } = tasks;
  const { slot, slots, slotsPerDay, endless, until, next, pieceOf, pieceEnd, capacity } = calendar;
  const { start, finish, cause, left, ready, end, running, hands, due, since, used, fresh } = work;
  const { stopDone, reached, between } = work;
  const { count, start: edge, next: follows } = network;
  const { stops, stopOf, commits, begunBefore, toStop, way, gustLimit } = night;
  const days = calendar.dark.length;
  const pieces = pieceEnd.length;
  start.fill(Number.POSITIVE_INFINITY);
  finish.fill(Number.POSITIVE_INFINITY);
  cause.fill(-1);
  used.fill(0);
  stopDone.fill(0);
  left.set(network.before);
  let waiting = 0;
  for (let k = 0; k < count; k++) if (left[list[k]] === 0) ready[waiting++] = k;
  let [active, started, upTo, last, now] = [0, 0, 0, 0, from];
  let [stop, begun, day, latest] = [0, 0, 0, -1];
  // Hands lent now, and running tasks that have a use for some.
  let [lent, helped] = [0, 0];
  /** Puts a running task where it belongs, the next to end last; `at`: from which place on it may move up. */
  const put = (j: number, ends: number, from: number): void => {
    let at = from;
    while (at > 0 && end[at - 1] < ends) {
      end[at] = end[at - 1];
      running[at] = running[at - 1];
      at--;
    }
    end[at] = ends;
    running[at] = j;
    finish[j] = ends;
  };
  /** Part of its duration that a task takes with so many hands lent. */
  const partWith = (j: number, more: number): number => {
    const people = need[j * resources];
    return more === 0 ? 1 : 1 - shared[j] + (shared[j] * people) / (people + more);
  };
  /** Lends a running task other hands from now on. */
  const lend = (x: number, more: number): void => {
    const j = running[x];
    const row = classOf[j] * slots;
    const done = pauses[j] === 1 ? workedBetween(calendar, row, since[j], now) : now - since[j];
    due[j] = (Math.max(0, due[j] - done) * partWith(j, more)) / partWith(j, hands[j]);
    since[j] = now;
    lent += more - hands[j];
    hands[j] = more;
    end.copyWithin(x, x + 1, active);
    running.copyWithin(x, x + 1, active);
    const ends = pauses[j] === 1 ? workedUntil(calendar, row, now, due[j]) : now + due[j];
    put(j, ends, active - 1);
  };
  while (day < days && calendar.dark[day] < now) {
    reached[day] = 0;
    between[day] = 0;
    day++;
  }
  for (;;) {
    const here = Math.min(slots - 1, Math.floor(now / slot));
    const piece = pieceOf[here];
    let wake = Number.POSITIVE_INFINITY;
    let [e, looked, freshCount] = [0, 0, 0];
    while (e < waiting && looked < look) {
      const k = ready[e];
      if (look === 1 && k !== upTo) break;
      const j = list[k];
      // Light, wind and breaks.
      const row = classOf[j] * slots;
      const open = until[row + here];
      let blocked = false;
      if (open === here) {
        blocked = true;
        const at = next[row + here];
        if (at < slots) wake = Math.min(wake, at * slot);
      } else if (
        pauses[j] === 0 &&
        now + planned[j] > open * slot + 1e-6 &&
        !(endless && open === slots)
      ) {
        blocked = true;
        const at = open < slots ? next[row + open] : slots;
        if (at < slots) wake = Math.min(wake, at * slot);
      }
      // The night.
      if (!blocked && commits[j] === 1 && begun === begunBefore[stop]) {
        const today = Math.floor(here / slotsPerDay);
        const dark = today < days ? calendar.dark[today] : Number.POSITIVE_INFINITY;
        if (now + toStop[today * (stops + 1) + stop] > dark + 1e-6) {
          blocked = true;
          const morning = (today + 1) * slotsPerDay;
          if (morning < slots) wake = Math.min(wake, morning * slot);
        } else if (stop < stops && today < days) {
          // Not into wind that would hold up the way to the stop point.
          const ends = Math.min(slots - 1, (now + way[today * (stops + 1) + stop]) / slot);
          for (let s = here; s <= ends; s++)
            if (calendar.gust[s] > gustLimit[stop]) {
              blocked = true;
              if (s + 1 < slots) wake = Math.min(wake, (s + 1) * slot);
              break;
            }
        }
      }
      // People and gear, now and while they are wanted.
      if (!blocked) {
        const to = pauses[j] === 1 ? now : now + planned[j];
        for (let p = piece; ; p++) {
          for (let r = 0; r < resources; r++)
            if (used[r] + need[j * resources + r] > capacity[p * resources + r]) {
              blocked = true;
              break;
            }
          if (blocked) {
            // Worth another look when a later piece begins.
            if (pieceEnd[piece] < slots * slot) wake = Math.min(wake, pieceEnd[piece]);
            break;
          }
          if (p === pieces - 1 || pieceEnd[p] >= to - 1e-6) break;
        }
      }
      if (blocked) {
        e++;
        looked++;
        continue;
      }
      ready.copyWithin(e, e + 1, waiting);
      waiting--;
      started++;
      upTo = k + 1;
      for (let r = 0; r < resources; r++) used[r] += need[j * resources + r];
      if (commits[j] === 1) begun++;
      fresh[freshCount++] = j;
      start[j] = now;
      if (latest >= 0 && (cause[j] < 0 || finish[cause[j]] < now) && finish[latest] === now)
        cause[j] = latest;
    }
    // Hands to spare are lent: taken back where others need them, to what was just begun first.
    const spare = capacity[piece * resources] - used[0];
    for (let x = 0; lent > spare && x < active; ) {
      const j = running[x];
      if (hands[j] === 0) x++;
      else {
        // What ends last gives first; it moves in front of where it was.
        lend(x, Math.max(0, hands[j] - (lent - spare)));
        if (running[x] === j) x++;
      }
    }
    for (let f = 0; f < freshCount; f++) {
      const j = fresh[f];
      const more = Math.max(0, Math.min(extra[j], spare - lent));
      lent += more;
      hands[j] = more;
      if (extra[j] > 0) helped++;
      due[j] = (drawn[j] * partWith(j, more)) / calendar.pace[here];
      since[j] = now;
      put(
        j,
        pauses[j] === 1 ? workedUntil(calendar, classOf[j] * slots, now, due[j]) : now + due[j],
        active++,
      );
    }
    for (let x = active - 1; lent < spare && helped > 0 && x >= 0; x--) {
      const j = running[x];
      if (extra[j] > hands[j]) lend(x, Math.min(extra[j], hands[j] + spare - lent));
    }
    if (helped > 0 && pieceEnd[piece] < slots * slot) wake = Math.min(wake, pieceEnd[piece]);
    const soon = active > 0 ? Math.min(end[active - 1], wake) : wake;
    while (day < days && calendar.dark[day] < soon) {
      reached[day] = stop;
      between[day] = begun === begunBefore[stop] ? 0 : 1;
      day++;
    }
    if (soon === Number.POSITIVE_INFINITY) break;
    now = soon;
    while (active > 0 && end[active - 1] <= now) {
      const j = running[--active];
      latest = j;
      last = finish[j];
      for (let r = 0; r < resources; r++) used[r] -= need[j * resources + r];
      lent -= hands[j];
      if (extra[j] > 0) helped--;
      for (let x = edge[j]; x < edge[j + 1]; x++) {
        const s = follows[x];
        cause[s] = j;
        if (--left[s] > 0) continue;
        const k = rank[s];
        let at = waiting++;
        while (at > 0 && ready[at - 1] > k) {
          ready[at] = ready[at - 1];
          at--;
        }
        ready[at] = k;
      }
      if (stopOf[j] >= 0) {
        stopDone[stopOf[j]] = 1;
        while (stop < stops && stopDone[stop] === 1) stop++;
      }
    }
  }
  return started === count && active === 0 ? last : Number.POSITIVE_INFINITY;
}

/** Open seconds of a row between two times. */
function workedBetween(
  { slot, slots, endless, until, next }: SerialCalendar,
  row: number,
  from: number,
  to: number,
): number {
  let [at, sum] = [from, 0];
  while (at < to) {
    const here = Math.min(slots - 1, Math.floor(at / slot));
    const open = until[row + here];
    if (open > here) {
      const ends = endless && open === slots ? to : Math.min(to, open * slot);
      sum += ends - at;
      at = ends;
      if (at >= to) break;
    }
    const again = open > here ? (open < slots ? next[row + open] : slots) : next[row + here];
    if (again >= slots) break;
    at = again * slot;
  }
  return sum;
}

/** When work that may be put down is done: so many open seconds from `now` on; infinite where the hours
 * do not suffice. */
function workedUntil(
  { slot, slots, endless, until, next }: SerialCalendar,
  row: number,
  now: number,
  seconds: number,
): number {
  let [at, rest] = [now, seconds];
  for (;;) {
    const here = Math.min(slots - 1, Math.floor(at / slot));
    const open = until[row + here];
    if (open > here) {
      if (at + rest <= open * slot || (endless && open === slots)) return at + rest;
      rest -= open * slot - at;
    }
    const again = open < slots ? next[row + open] : slots;
    if (again >= slots) return Number.POSITIVE_INFINITY;
    at = again * slot;
  }
}
