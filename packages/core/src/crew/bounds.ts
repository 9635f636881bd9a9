// Lower bounds of the finish: no schedule, however clever, is done before. By the critical path (each
// task in its own open hours, people without number) and by each resource (the work that it has to do
// against all that there is of it).

import type { SerialCalendar, SerialTasks } from './serial.ts';

/** The bounds, seconds; infinite where the hours do not suffice whatever is done. */
export interface FinishBounds {
  readonly path: number;
  /** By resource. */
  readonly resource: readonly number[];
  /** The greatest of them. */
  readonly finish: number;
}

/** Lower bounds for durations by task (as planned, or as drawn in a run). */
export function finishBounds(
  tasks: SerialTasks,
  calendar: SerialCalendar,
  duration: ArrayLike<number>,
): FinishBounds {
  const path = pathBound(tasks, calendar, duration);
  const resource = Array.from({ length: tasks.resources }, (_, r) =>
    resourceBound(tasks, calendar, duration, r),
  );
  return { path, resource, finish: Math.max(path, ...resource) };
}

function pathBound(
  { network, need, extra, shared, resources, classOf, pauses }: SerialTasks,
  { slot, slots, next, until, endless }: SerialCalendar,
  duration: ArrayLike<number>,
): number {
  const from = new Float64Array(network.count);
  let end = 0;
  for (const i of network.order) {
    const people = need[i * resources];
    const most = people + extra[i];
    const least = duration[i] * (most === 0 ? 1 : 1 - shared[i] + (shared[i] * people) / most);
    const here = Math.min(slots - 1, Math.floor(from[i] / slot));
    const row = classOf[i] * slots;
    const open = next[row + here];
    const start = open >= slots ? Number.POSITIVE_INFINITY : Math.max(from[i], open * slot);
    let done = start + least;
    if (pauses[i] === 1 && start < Number.POSITIVE_INFINITY) {
      // At best the rest of this run, and then the hours that follow.
      const run = until[row + open];
      if (done > run * slot && !(endless && run === slots)) done = Math.max(run * slot, start);
    }
    end = Math.max(end, done);
    for (let e = network.start[i]; e < network.start[i + 1]; e++)
      from[network.next[e]] = Math.max(from[network.next[e]], done);
  }
  return end;
}

function resourceBound(
  { network, need, resources, classOf }: SerialTasks,
  { slot, slots, until, pieceOf, capacity, endless }: SerialCalendar,
  duration: ArrayLike<number>,
  r: number,
): number {
  let work = 0;
  for (let i = 0; i < network.count; i++) work += need[i * resources + r] * duration[i];
  if (work === 0) return 0;
  // A slot counts where it is open to any task; what is begun may run on past its end.
  const rows = [...new Set(classOf)];
  let last = 0;
  for (let s = 0; s < slots; s++) {
    const size = capacity[pieceOf[s] * resources + r];
    if (size === 0 || !rows.some((c) => until[c * slots + s] > s)) continue;
    const rest = work / size;
    if (rest <= slot || (endless && s === slots - 1)) return s * slot + rest;
    work -= size * slot;
    last = s;
  }
  return (last + 1) * slot;
}
