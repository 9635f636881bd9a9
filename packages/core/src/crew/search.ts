// Better priorities by a seeded search: the list that serial generation follows is changed one task at
// a time, kept if the schedule is no worse or, early on, not much worse (simulated annealing,
// S. Kirkpatrick et al., Science 220, 1983). Two ways to read a list are tried in turn: strictly, and
// with tasks passed over. The same seed gives the same schedule; time is counted in lists tried.

import { type Random, seededRandom } from '../math/random.ts';
import { criticalPath, type Network } from './network.ts';
import { runSerialInto, type SerialCalendar, type SerialTasks, serialWork } from './serial.ts';

/** How long to search, and from which seed. */
export interface SearchOptions {
  readonly seed: number;
  /** Lists tried. */
  readonly tries: number;
  /** Tasks that may be passed over where not read strictly. */
  readonly look: number;
  /** Stop where this finish is reached: a lower bound, seconds. */
  readonly bound: number;
  /** When the schedule sets out, seconds; 0 where left out. */
  readonly from?: number;
}

/** A schedule by the list that makes it. */
export interface SerialSchedule {
  readonly list: Int32Array;
  readonly look: number;
  readonly start: Float64Array;
  readonly finish: Float64Array;
  /** Last finish, seconds; infinite where something is left undone. */
  readonly end: number;
  readonly tried: number;
  /** Day → stops reached by dark, and 1 where more had been begun. */
  readonly reached: Int32Array;
  readonly between: Uint8Array;
}

/** The list by priority (higher first), then latest finish of the critical path, then index, each
 * task behind those that come before it. */
export function firstList(
  network: Network,
  planned: ArrayLike<number>,
  priority: ArrayLike<number>,
): Int32Array {
  const { latest } = criticalPath(network, planned);
  const sooner = (a: number, b: number): number =>
    priority[b] - priority[a] || latest[a] + planned[a] - latest[b] - planned[b] || a - b;
  const left = network.before.slice();
  const ready: number[] = [];
  const add = (i: number): void => {
    let at = ready.length;
    while (at > 0 && sooner(i, ready[at - 1]) > 0) at--;
    ready.splice(at, 0, i);
  };
  for (let i = 0; i < network.count; i++) if (left[i] === 0) add(i);
  const list = new Int32Array(network.count);
  for (let k = 0; k < network.count; k++) {
    const i = ready.pop() as number;
    list[k] = i;
    for (let e = network.start[i]; e < network.start[i + 1]; e++)
      if (--left[network.next[e]] === 0) add(network.next[e]);
  }
  return list;
}

/** The best schedule found with planned durations. Where no list finishes in the hours there are, the
 * one that leaves least undone. */
export function searchSchedule(
  tasks: SerialTasks,
  calendar: SerialCalendar,
  priority: ArrayLike<number>,
  options: SearchOptions,
): SerialSchedule {
  const { network, planned } = tasks;
  const random = seededRandom(options.seed);
  const reader = listReader(tasks, calendar, options.from ?? 0);
  const list = firstList(network, planned, priority);
  let best: Read = { list, look: options.look, value: reader.value(list, options.look) };
  const share = Math.max(1, Math.floor(options.tries / ROUNDS));
  for (let round = 0; round < ROUNDS; round++) {
    // A strict reading sets out from the order in which the best schedule begins its tasks.
    const look = round % 2 === 0 ? options.look : 1;
    const from = look === 1 ? reader.byStart(best) : best.list;
    best = annealed(network, reader, { from, look, best, share, bound: options.bound, random });
  }
  reader.value(best.list, best.look);
  const { start, finish, reached, between } = reader.work;
  const undone = best.value > calendar.slots * calendar.slot && !calendar.endless;
  return {
    list: best.list.slice(),
    look: best.look,
    start: start.slice(),
    finish: finish.slice(),
    end: undone ? Number.POSITIVE_INFINITY : best.value,
    tried: reader.tried(),
    reached: reached.slice(),
    between: between.slice(),
  };
}

const ROUNDS = 4;

/** A list, how it is read, and what comes out. */
interface Read {
  readonly list: Int32Array;
  readonly look: number;
  readonly value: number;
}

/** Reads lists: seconds to the finish, or the horizon and the seconds of what is left undone. */
function listReader(tasks: SerialTasks, calendar: SerialCalendar, from: number) {
  const { network, planned } = tasks;
  const work = serialWork(tasks, calendar.dark.length);
  const rank = new Int32Array(network.count);
  let tried = 0;
  const value = (list: Int32Array, look: number): number => {
    tried++;
    for (let k = 0; k < list.length; k++) rank[list[k]] = k;
    const end = runSerialInto(work, tasks, calendar, list, rank, planned, look, from);
    if (end !== Number.POSITIVE_INFINITY) return end;
    let undone = calendar.slots * calendar.slot;
    for (let j = 0; j < network.count; j++)
      if (work.finish[j] === Number.POSITIVE_INFINITY) undone += planned[j] + 1;
    return undone;
  };
  const byStart = ({ list, look }: Read): Int32Array => {
    value(list, look);
    return list
      .slice()
      .sort((a, b) => (work.start[a] < work.start[b] ? -1 : work.start[a] > work.start[b] ? 1 : 0));
  };
  return { work, value, byStart, tried: () => tried };
}

/** One round: the list changed step by step, worse ones kept less and less; the best met. */
function annealed(
  network: Network,
  reader: ReturnType<typeof listReader>,
  round: {
    readonly from: Int32Array;
    readonly look: number;
    readonly best: Read;
    readonly share: number;
    readonly bound: number;
    readonly random: Random;
  },
): Read {
  const { look, share, bound, random } = round;
  let list = round.from;
  let value = reader.value(list, look);
  let best = value < round.best.value ? { list, look, value } : round.best;
  const heat = HEAT * Math.max(1, value);
  for (let t = 0; t < share && best.value > bound + 1e-6; t++) {
    const moved = shifted(network, list, random.below(network.count), random.uniform());
    if (moved === null) continue;
    const now = reader.value(moved, look);
    const warm = heat * (1 - t / share) + 1e-12;
    if (now > value && random.uniform() >= Math.exp((value - now) / warm)) continue;
    list = moved;
    value = now;
    if (now < best.value) best = { list: moved, look, value: now };
  }
  return best;
}

/** A schedule longer by this part is kept about once in three at first. */
const HEAT = 0.01;

/** The list with the task at `k` elsewhere between what comes right before it and right after it; null
 * where it can't move. */
function shifted(
  { start, next, count }: Network,
  list: Int32Array,
  k: number,
  part: number,
): Int32Array | null {
  const task = list[k];
  let [first, last] = [k, k];
  const after = new Set<number>();
  for (let e = start[task]; e < start[task + 1]; e++) after.add(next[e]);
  while (last + 1 < count && !after.has(list[last + 1])) last++;
  const leads = (i: number): boolean => {
    for (let e = start[i]; e < start[i + 1]; e++) if (next[e] === task) return true;
    return false;
  };
  while (first > 0 && !leads(list[first - 1])) first--;
  if (first === last) return null;
  let to = first + Math.floor(part * (last - first));
  if (to >= k) to++;
  const out = list.slice();
  if (to > k) out.copyWithin(k, k + 1, to + 1);
  else out.copyWithin(to + 1, to, k);
  out[to] = task;
  return out;
}
