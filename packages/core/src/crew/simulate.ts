// Ten thousand runs of a plan: durations drawn from their ranges (triangles) with one pace of the crew
// for the whole run, helpers who do or do not come, gusts over or under the forecast, one factor a day.
// Numbers are drawn by run and by what they are for (a task's index, a person's name, a date), never in
// turn: two plans that differ in one thing meet the same luck in all others (common random numbers).
// Mixing: lowbias32 (C. Wellons, public domain).

import { TAU } from '../math/angle.ts';
import { type CompiledPlan, openHoursInto } from './compile.ts';
import { capacityInto } from './people.ts';
import { runSerialInto, type SerialCalendar, type SerialWork, serialWork } from './serial.ts';

/** How to simulate. */
export interface SimulationOptions {
  readonly seed: number;
  readonly runs: number;
  /** The list that tasks are taken from, and how many waiting ones may be passed over. */
  readonly list: Int32Array;
  readonly look: number;
  /** Standard deviation of the logarithm of the crew's pace; its mean is 1. */
  readonly paceSd: number;
  /** When the plan sets out, seconds of the plan. */
  readonly from?: number;
  /** False: everybody comes who said so, as when they are there already. */
  readonly noShows?: boolean;
}

/** What the runs came to. */
export interface Simulation {
  readonly runs: number;
  /** Finish of each run, seconds of the plan; infinite where it was not done in these days. */
  readonly finish: Float64Array;
  /** Day → part of the runs that were done by dark. */
  readonly doneBy: Float64Array;
  /** Day × stops + 1 → part of the runs that had reached so many stop points by dark. */
  readonly reached: Float64Array;
  /** Day → part of the runs caught by dark between two stop points. */
  readonly caught: Float64Array;
  /** Task → part of the finished runs in which it was on the chain that made the finish. */
  readonly critical: Float64Array;
  /** Task → correlation of its duration with the finish, over the finished runs. */
  readonly correlation: Float64Array;
}

/** Runs a plan. The same seed gives the same answer. */
export function simulate(plan: CompiledPlan, options: SimulationOptions): Simulation {
  const { serial, hours, tasks, presence, crew } = plan;
  const { seed, runs, list, look, paceSd, from = 0, noShows = true } = options;
  const n = tasks.length;
  const days = hours.days.length;
  const stops = serial.night.stops + 1;
  const calendar: SerialCalendar = {
    ...plan.calendar,
    until: plan.calendar.until.slice(),
    next: plan.calendar.next.slice(),
    capacity: plan.calendar.capacity.slice(),
  };
  const work = serialWork(serial, days);
  const rank = new Int32Array(n);
  list.forEach((j, k) => {
    rank[j] = k;
  });
  const triangle = triangles(plan);
  const [names, dates] = [
    crew.people.map(({ name }) => textKey(name)),
    hours.days.map(({ day }) => Math.imul(day, 0x9e3779b1)),
  ];
  const drawn = new Float64Array(n);
  const comes = new Uint8Array(crew.people.length).fill(1);
  const gustFactor = new Float64Array(days).fill(1);
  const gusty = crew.gustSd > 0 && plan.classes.some(({ gustLimit }) => gustLimit < 100);
  const { toStop, way } = serial.night;
  const paced = toStop.slice();
  const tasksOfRun = { ...serial, night: { ...serial.night, toStop: paced } };
  const tally = newTally(runs, days, stops, n);
  for (let run = 0; run < runs; run++) {
    const base = mixed((seed ^ Math.imul(run + 1, 0x9e3779b1)) | 0);
    const pace = Math.exp(paceSd * normalOf(base ^ PACE) - (paceSd * paceSd) / 2);
    drawInto(drawn, triangle, base, pace);
    // Once a stop point is reached the lead knows how fast this crew is.
    for (let x = 0; x < paced.length; x++)
      if (x % stops !== 0) paced[x] = toStop[x] + (pace - 1) * way[x];
    if (noShows && names.length > 0) {
      for (let i = 0; i < names.length; i++)
        comes[i] = crew.people[i].sure || uniformOf(base ^ names[i]) >= crew.noShow ? 1 : 0;
      capacityInto(calendar.capacity, serial.resources, crew.people, presence, comes);
    }
    if (gusty) {
      for (let k = 0; k < days; k++)
        gustFactor[k] = Math.exp(crew.gustSd * normalOf(base ^ dates[k] ^ GUST));
      openHoursInto(calendar, hours, plan.classes, gustFactor, plan.attended);
    }
    const end = runSerialInto(work, tasksOfRun, calendar, list, rank, drawn, look, from);
    addRunInto(tally, run, end, work, drawn, calendar.dark);
  }
  return summary(tally, runs, n);
}

const PACE = 0x2c1b3c6d;
const GUST = 0x297a2d39;

/** Thirty-two well mixed bits of a whole number. */
function mixed(x: number): number {
  let h = x | 0;
  h = Math.imul(h ^ (h >>> 16), 0x21f0aaad);
  h = Math.imul(h ^ (h >>> 15), 0x735a2d97);
  return h ^ (h >>> 15);
}

const uniformOf = (key: number): number => ((mixed(key) >>> 0) + 0.5) / 4294967296;

const normalOf = (key: number): number =>
  Math.sqrt(-2 * Math.log(uniformOf(key))) * Math.cos(TAU * uniformOf(key ^ 0x5bd1e995));

/** A key of a text (FNV-1a). */
function textKey(text: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return h | 0;
}

interface Triangles {
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** Part of the triangle under its likeliest, and the two factors under the root. */
  readonly turn: Float64Array;
  readonly up: Float64Array;
  readonly down: Float64Array;
}

function triangles({ tasks }: CompiledPlan): Triangles {
  const of = (f: (low: number, likely: number, high: number) => number): Float64Array =>
    Float64Array.from(tasks, ({ duration: { low, likely, high } }) => f(low, likely, high));
  return {
    low: of((low) => low),
    high: of((_, __, high) => high),
    turn: of((low, likely, high) => (high > low ? (likely - low) / (high - low) : 1)),
    up: of((low, likely, high) => (high - low) * (likely - low)),
    down: of((low, likely, high) => (high - low) * (high - likely)),
  };
}

function drawInto(
  drawn: Float64Array,
  { low, high, turn, up, down }: Triangles,
  base: number,
  pace: number,
): void {
  for (let j = 0; j < drawn.length; j++) {
    const u = uniformOf(base ^ Math.imul(j + 1, 0x85ebca6b));
    drawn[j] =
      pace * (u < turn[j] ? low[j] + Math.sqrt(u * up[j]) : high[j] - Math.sqrt((1 - u) * down[j]));
  }
}

interface Tally {
  readonly finish: Float64Array;
  readonly doneBy: Float64Array;
  readonly reached: Float64Array;
  readonly caught: Float64Array;
  readonly critical: Float64Array;
  readonly sum: Float64Array;
  readonly squares: Float64Array;
  readonly products: Float64Array;
  /** Of finishes: how many, their sum and the sum of squares. */
  readonly ends: Float64Array;
  readonly stops: number;
}

const newTally = (runs: number, days: number, stops: number, n: number): Tally => ({
  finish: new Float64Array(runs),
  doneBy: new Float64Array(days),
  reached: new Float64Array(days * stops),
  caught: new Float64Array(days),
  critical: new Float64Array(n),
  sum: new Float64Array(n),
  squares: new Float64Array(n),
  products: new Float64Array(n),
  ends: new Float64Array(3),
  stops,
});

function addRunInto(
  tally: Tally,
  run: number,
  end: number,
  { reached, between, finish, cause }: SerialWork,
  drawn: Float64Array,
  dark: Float64Array,
): void {
  tally.finish[run] = end;
  for (let k = 0; k < dark.length; k++) {
    if (end <= dark[k]) tally.doneBy[k]++;
    tally.reached[k * tally.stops + reached[k]]++;
    if (between[k] === 1) tally.caught[k]++;
  }
  if (end === Number.POSITIVE_INFINITY) return;
  tally.ends[0]++;
  tally.ends[1] += end;
  tally.ends[2] += end * end;
  let last = -1;
  for (let j = 0; j < drawn.length; j++) {
    const x = drawn[j];
    tally.sum[j] += x;
    tally.squares[j] += x * x;
    tally.products[j] += x * end;
    if (finish[j] === end) last = j;
  }
  for (let j = last; j >= 0; j = cause[j]) tally.critical[j]++;
}

function summary(tally: Tally, runs: number, n: number): Simulation {
  const [count, total, squares] = tally.ends;
  const spread = Math.sqrt(Math.max(0, squares / count - (total / count) ** 2));
  const part = (x: Float64Array): Float64Array => x.map((value) => value / runs);
  const correlation = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    const mean = tally.sum[j] / count;
    const own = Math.sqrt(Math.max(0, tally.squares[j] / count - mean * mean));
    const joint = tally.products[j] / count - mean * (total / count);
    // Sure durations, or no finished run, go with nothing.
    const known = own > 1e-9 * Math.max(1, mean) && spread > 1e-9 * Math.max(1, total / count);
    correlation[j] = known ? joint / (own * spread) : 0;
  }
  return {
    runs,
    finish: tally.finish,
    doneBy: part(tally.doneBy),
    reached: part(tally.reached),
    caught: part(tally.caught),
    critical: tally.critical.map((value) => (count === 0 ? 0 : value / count)),
    correlation,
  };
}
