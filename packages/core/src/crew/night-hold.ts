// Every planned evening ends at a stop point. What the way to the next one takes is estimated before work
// on it begins; where a plan shows the estimate to be too short (hands at other cards, breaks, wind), work
// on that stretch is held back that day, by a quarter of an hour more than would have been enough, and the
// plan is made anew.

import type { CompiledPlan } from './compile.ts';
import { DAY } from './date.ts';
import type { SerialSchedule } from './search.ts';

/** By how much a stretch is held back beyond what the plan had, seconds. */
const STEP = 900;

/** The plan with the stretch held back on whose way its first bad evening falls; null where every evening
 * ends at a stop point. */
export function heldBack(plan: CompiledPlan, schedule: SerialSchedule): CompiledPlan | null {
  const k = schedule.between.indexOf(1);
  if (k < 0) return null;
  const { serial, calendar } = plan;
  const { night } = serial;
  const stop = schedule.reached[k] as number;
  const row = night.stops + 1;
  const starts = [...schedule.start]
    .filter((start, i) => night.commits[i] === 1 && start < Number.POSITIVE_INFINITY)
    .sort((a, b) => a - b);
  const begun = starts[night.begunBefore[stop] as number] as number;
  const day = Math.min(k, Math.floor(begun / DAY));
  const toStop = night.toStop.slice();
  const at = day * row + stop;
  toStop[at] = Math.max(toStop[at] as number, (calendar.dark[day] as number) - begun) + STEP;
  return { ...plan, serial: { ...serial, night: { ...night, toStop } } };
}

/** What was not begun before a night, since no stop point beyond would have been reached. */
export interface Held {
  /** The next stop point, by its task. */
  readonly next: string;
  /** When work on the way to it could have begun, seconds of the plan. */
  readonly from: number;
  /** What is missing until dark, seconds; infinite where no stop point beyond stands in the night's wind,
   * or can be reached with the people of the day. */
  readonly missing: number;
}

/** What a day's evening held back; null where nothing was: all is done, or what is next waits for something
 * else than the night. */
export function heldAt(plan: CompiledPlan, schedule: SerialSchedule, k: number): Held | null {
  const { serial, calendar, stops, tasks, attended } = plan;
  const { night, network } = serial;
  const stop = schedule.reached[k] as number;
  if (stop >= night.stops || schedule.between[k] === 1) return null;
  const dark = calendar.dark[k] as number;
  const slots = attended.slice(0, Math.ceil(dark / calendar.slot));
  const come = attended.indexOf(1, k * calendar.slotsPerDay);
  if (come < 0 || come >= slots.length) return null;
  const readyAt = new Float64Array(network.count);
  for (const i of network.order)
    for (let e = network.start[i] as number; e < (network.start[i + 1] as number); e++) {
      const next = network.next[e] as number;
      readyAt[next] = Math.max(readyAt[next] as number, schedule.finish[i] as number);
    }
  let from = Number.POSITIVE_INFINITY;
  tasks.forEach(({ commits }, i) => {
    if (commits && (schedule.start[i] as number) >= dark)
      from = Math.min(from, readyAt[i] as number);
  });
  from = Math.max(from, come * calendar.slot);
  const toStop = night.toStop[k * (night.stops + 1) + stop] as number;
  if (!(from < dark) || from + toStop <= dark + 1e-6) return null;
  const next = tasks[stops[stop] as number]?.id as string;
  return { next, from, missing: from + toStop - dark };
}
