// Ten thousand runs of a plan: durations drawn from their ranges (triangles) with one pace of the crew
// for the whole run, helpers who do or do not come, gusts over or under the forecast, one factor a day.
// Numbers are drawn by run and by what they are for (a task's index, a person's name, a date), never in
// turn: two plans that differ in one thing meet the same luck in all others (common random numbers).
// Mixing: lowbias32 (C. Wellons, public domain).

import { TAU } from '../math/angle.ts';
import { NIGHT_MARGIN } from './common.ts';
import type { CompiledPlan } from './compile.ts';
import { type DayWays, waysWhileThere } from './night-ways.ts';
import { openHoursInto } from './open-hours.ts';
import { capacityInto, PEOPLE_RESOURCES } from './people.ts';
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
  const blow = openHoursInto(calendar, hours, plan.classes, plan.attended);
  const night = new NightOfRun(plan, paceSd);
  const tasksOfRun = { ...serial, night: night.rule };
  const tally = newTally(runs, days, stops, n);
  for (let run = 0; run < runs; run++) {
    const base = mixed((seed ^ Math.imul(run + 1, 0x9e3779b1)) | 0);
    const pace = Math.exp(paceSd * normalOf(base ^ PACE) - (paceSd * paceSd) / 2);
    drawInto(drawn, triangle, base, pace);
    if (noShows && names.length > 0) {
      for (let i = 0; i < names.length; i++)
        comes[i] = crew.people[i].sure || uniformOf(base ^ names[i]) >= crew.noShow ? 1 : 0;
      capacityInto(calendar.capacity, serial.resources, crew.people, presence, comes);
    }
    if (gusty) {
      for (let k = 0; k < days; k++)
        gustFactor[k] = Math.exp(crew.gustSd * normalOf(base ^ dates[k] ^ GUST));
      blow(gustFactor);
    }
    night.set(calendar, pace);
    const end = runSerialInto(work, tasksOfRun, calendar, list, rank, drawn, look, from);
    addRunInto(tally, run, end, work, drawn, calendar.dark);
  }
  return summary(tally, runs, n);
}

/** What the lead reckons with before work on the way to a stop point begins: the people who are there that
 * day, and the pace of this crew. Identity: it keeps the ways of crews that it met. */
class NightOfRun {
  readonly rule: CompiledPlan['serial']['night'];
  private readonly known = new Map<string, DayWays>();
  /** What the plan holds back beyond its own ways, seconds. */
  private readonly held: Float64Array;
  /** From when the first are there until dark, seconds, by day. */
  private readonly whole: Float64Array;
  private readonly unknownPace: number;
  /** The most that any task asks for, by what people are. */
  private readonly asked: Int32Array;
  /** Whether work that commits can be begun before any other is done. */
  private readonly isNew: boolean;

  constructor(
    private readonly plan: CompiledPlan,
    paceSd: number,
  ) {
    const { night } = plan.serial;
    this.rule = { ...night, toStop: night.toStop.slice(), way: night.way.slice() };
    this.unknownPace = Math.max(1, Math.exp(NINE_OF_TEN * paceSd) / NIGHT_MARGIN);
    const { before } = plan.serial.network;
    const { need, resources } = plan.serial;
    this.asked = new Int32Array(PEOPLE_RESOURCES);
    need.forEach((count, x) => {
      const r = x % resources;
      if (r < PEOPLE_RESOURCES) this.asked[r] = Math.max(this.asked[r], count);
    });
    this.isNew = [...night.commits].some((commits, i) => commits === 1 && before[i] === 0);
    const { slot, slotsPerDay, dark } = plan.calendar;
    this.whole = dark.map((at, k) => {
      const come = plan.attended.indexOf(1, k * slotsPerDay);
      return come < 0 ? 0 : Math.max(0, at - come * slot);
    });
    this.held = new Float64Array(night.toStop.length);
    this.eachDay(plan.calendar, ({ toStop }, x, s) => {
      const more = night.toStop[x] - toStop[s];
      this.held[x] = more > 0 && more < Number.POSITIVE_INFINITY ? more : 0;
    });
  }

  /** Once a stop point is reached, or stake-out and anchors are done, the lead knows how fast this crew is;
   * before any work it may be as slow as one in ten. A way that so, with its margin, is too long for the whole day is begun in the morning, if
   * it is likely to fit; later, or if it is not, nothing is begun. */
  set(calendar: SerialCalendar, pace: number): void {
    const { toStop, way } = this.rule;
    this.eachDay(calendar, (ways, x, s, k) => {
      way[x] = ways.way[s];
      toStop[x] = Number.POSITIVE_INFINITY;
      if (ways.toStop[s] === Number.POSITIVE_INFINITY) return;
      const closing = ways.toStop[s] - ways.way[s];
      const [wide, likely] = s === 0 && this.isNew ? [this.unknownPace, 1] : [pace, pace];
      const sure = closing + wide * ways.way[s] + this.held[x];
      const day = this.whole[k];
      const fits = closing + (likely * ways.way[s]) / NIGHT_MARGIN <= day;
      toStop[x] = sure > day && fits ? day : sure;
    });
  }

  /** Crews that differ in hardly anything count as one, the smaller: hands over twelve by twos, and of
   * climbers and leads no more than twice what any task asks for. */
  private roughly(most: Int32Array): Int32Array {
    if (most[0] > 12) most[0] -= most[0] % 2;
    for (let r = 1; r < PEOPLE_RESOURCES; r++) most[r] = Math.min(most[r], 2 * this.asked[r]);
    return most;
  }

  private eachDay(
    calendar: SerialCalendar,
    put: (ways: DayWays, x: number, s: number, k: number) => void,
  ): void {
    const { serial, hours, waysOf } = this.plan;
    const row = serial.night.stops + 1;
    for (let k = 0; k < hours.days.length; k++) {
      const ways = waysWhileThere(calendar, serial.resources, k, (day, most) => {
        const crew = this.roughly(most);
        const key = `${day} ${crew.join()}`;
        const kept = this.known.get(key) ?? waysOf(day, crew);
        this.known.set(key, kept);
        return kept;
      });
      for (let s = 0; s < row; s++) put(ways, k * row + s, s, k);
    }
  }
}

/** Nine of ten lie under this many standard deviations of a normal distribution. */
const NINE_OF_TEN = 1.2816;

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
