// The weekend: a raising plan with the people who come, the light and the forecast, as tasks in a
// schedule; the odds of ten thousand seeded runs; where each evening ends and whether that stands in the
// night's wind; what one more pair of hands or more hours would buy. Plain data throughout, times in
// seconds of the plan: day k begins at k × 86 400. An estimate and no word on safety: the wind on site,
// local rules and a licensed engineer or rigger decide.

import type { Provenance } from '../loads/provenance.ts';
import type { Read } from '../measure/fault.ts';
import type { RaisingStage } from '../raise/plan.ts';
import { CLOSE_DOWN_STEPS, type CloseDownCard, closeDownCard } from './close-down.ts';
import { DAY, weekday } from './date.ts';
import { paceSd } from './durations.ts';
import { gearCounts } from './gear-counts.ts';
import { heavyTroubles } from './heavy-troubles.ts';
import { SLOT, SLOTS_PER_DAY } from './hours.ts';
import { type CrewOdds, crewOdds } from './odds.ts';
import { PEOPLE_RESOURCES } from './people.ts';
import { type CrewPlan, type CrewQuestion, crewPlan, type Standing } from './plan.ts';
import type { RaiseFacts, RaiseTaskSort } from './raise-task.ts';
import { type RaiseTasks, raiseTasks } from './raise-tasks.ts';
import { RATE_SOURCES } from './rates.ts';
import { crewRates } from './recorded-rates.ts';
import type { CrewSettings } from './schema.ts';
import type { Trouble } from './troubles.ts';
import { type CrewChange, dayBefore, type WhatIf, whatIf } from './what-if.ts';

/** What a weekend is planned from. */
export type WeekendQuestion = RaiseFacts;

/** How a weekend is planned. */
export interface WeekendOptions {
  /** 1 where left out. */
  readonly seed?: number;
  /** Lists that the search for a schedule tries; 400 where left out. */
  readonly tries?: number;
  /** Simulated runs, 10,000 where left out; and for each change. */
  readonly runs?: number;
  readonly whatIfRuns?: number;
  /** Changes that are asked about; `usualChanges` where left out. */
  readonly changes?: readonly CrewChange[];
  /** Told how far it is, 0 to 1. */
  readonly onProgress?: (done: number) => void;
  /** Told a first weekend as soon as it is planned: its odds by FIRST_RUNS runs, no change asked about. */
  readonly onFirst?: (first: Weekend) => void;
}

/** Runs that the first odds rest on: within six points of the final ones, 19 times in 20. */
export const FIRST_RUNS = 300;

/** A task as planned. */
export interface WeekendTask {
  readonly id: string;
  readonly what: string;
  readonly sort: RaiseTaskSort;
  readonly stage: number;
  readonly lift: number | null;
  readonly places: readonly number[];
  /** Null: not in these days. */
  readonly start: number | null;
  readonly finish: number | null;
  /** People that it needs, how many of them climb, and how many lead. */
  readonly people: number;
  readonly climbers: number;
  readonly leads: number;
  /** Ladders, towers, machines by name. */
  readonly gear: Readonly<Record<string, number>>;
  /** Gust over which it is not begun, m/s; null: none. */
  readonly gustLimit: number | null;
  /** Seconds: nine of ten lie in this range, the crew's own pace left out. */
  readonly duration: { readonly low: number; readonly likely: number; readonly high: number };
  /** Part of the finished runs in which it was on the chain that made the finish, and how its duration
   * goes with the finish (correlation). */
  readonly critical: number;
  readonly correlation: number;
}

/** One day. */
export interface WeekendDay {
  readonly date: string;
  readonly weekday: string;
  /** Twilight or better, and sun, seconds of the day; null: never, or nobody said where the site is. */
  readonly daylight: readonly [from: number, to: number] | null;
  readonly sun: readonly [from: number, to: number] | null;
  /** When it must be closed down, seconds of the day. */
  readonly dark: number;
  /** By the hour: people planned with, of whom climb; gust forecast, m/s, null: not known. */
  readonly hours: readonly {
    readonly hour: number;
    readonly people: number;
    readonly climbers: number;
    readonly gust: number | null;
  }[];
  /** Where the plan has the shell at dark. */
  readonly evening: {
    readonly stage: number | null;
    readonly verdict: 'nothing stands' | 'holds' | 'gives way' | 'unknown' | 'between';
    /** Gust forecast for the night and gust that the stage stands in, m/s; null: not known. */
    readonly nightGust: number | null;
    readonly allowedGust: number | null;
    readonly words: string;
  };
  /** Null where nothing stands. */
  readonly closeDown: CloseDownCard | null;
  readonly odds: {
    /** Of being done by dark. */
    readonly done: number;
    /** Of each stop point being the last one reached; null: none yet. */
    readonly at: readonly { readonly stage: number | null; readonly odds: number }[];
    /** Of being caught by dark between two stop points. */
    readonly caught: number;
  };
}

/** A weekend. */
export interface Weekend {
  readonly seed: number;
  readonly runs: number;
  /** In order of start; those not done in these days last. */
  readonly tasks: readonly WeekendTask[];
  readonly days: readonly WeekendDay[];
  /** Planned finish; finish that 10, 50 and 90 % of the runs keep; null: not in these days. */
  readonly end: number | null;
  readonly finish: {
    readonly p10: number | null;
    readonly p50: number | null;
    readonly p90: number | null;
  };
  /** No plan with these people and hours ends before, by planned durations. */
  readonly bound: number | null;
  /** Work of all tasks at the likeliest, person-seconds. */
  readonly work: number;
  /** Ids of the tasks that matter most, most first; ten at most. */
  readonly matter: readonly string[];
  readonly whatIfs: readonly WhatIf[];
  /** What keeps it from being done, each with the least change that helps. */
  readonly troubles: readonly Trouble[];
  readonly assumed: readonly string[];
  readonly flags: readonly Provenance[];
  readonly cautions: readonly string[];
}

/** What every weekend must carry. */
export const WEEKEND_CAUTION =
  'Times and odds are estimates from ranges, no promise and no word on safety. Stop for the wind on site whatever the plan says; local rules and a licensed engineer or rigger decide.';

/** The weekend of a raising plan, or the faults that keep it from being planned: no day of work, a person
 * twice. */
export function weekendPlan(
  question: WeekendQuestion,
  options: WeekendOptions = {},
): Read<Weekend> {
  return weekendFrom(question, raiseTasks(question), options);
}

/** The same from tasks that are left: `from`, seconds of the plan, is when they set out. */
export function weekendFrom(
  question: WeekendQuestion,
  made: RaiseTasks,
  options: WeekendOptions & { readonly from?: number; readonly standing?: Standing | null } = {},
): Read<Weekend> {
  const { seed = 1, tries = 400, runs = 10_000, onProgress, from = 0, standing = null } = options;
  const { crew } = question;
  const amounts = made.tasks.flatMap(({ amount }) => (amount === null ? [] : [amount]));
  const pace = paceSd(crewRates(crew, question.observed), amounts);
  const asked: CrewQuestion = {
    tasks: made.tasks,
    crew,
    gear: gearCounts(question.gear),
    seed,
    tries,
    from,
    standing,
  };
  const planned = crewPlan(asked);
  if (!planned.ok) return planned;
  const plan = planned.value;
  onProgress?.(0.2);
  if (options.onFirst && runs > FIRST_RUNS) {
    const early = crewOdds(plan, { seed, runs: FIRST_RUNS, paceSd: pace, from });
    const none = { plan, whatIfs: [], seed, standing };
    options.onFirst(weekendOf(question, made, { ...none, odds: early }));
  }
  const odds = crewOdds(plan, { seed, runs, paceSd: pace, from });
  onProgress?.(0.5);
  const changes = options.changes ?? usualChanges(crew);
  const whatIfs = changes.flatMap((change, i): WhatIf[] => {
    const found = whatIf({ question: asked, plan, odds }, change, {
      seed,
      paceSd: pace,
      from,
      runs: options.whatIfRuns ?? 2000,
      tries: Math.min(tries, 60),
    });
    onProgress?.(0.5 + (0.5 * (i + 1)) / changes.length);
    return found ? [found] : [];
  });
  return { ok: true, value: weekendOf(question, made, { plan, odds, whatIfs, seed, standing }) };
}

/** Changes that are asked about where nobody says: one more pair of hands, one more who climbs, four
 * more hours on the day before the first, or on the first where people come on it for less than a day. */
export function usualChanges(crew: CrewSettings): CrewChange[] {
  const [first] = [...crew.dates].sort();
  if (first === undefined) return [];
  const friday = weekday(Math.floor(Date.parse(first) / 86_400_000)) === 'Friday';
  return [
    { what: 'one more', climbs: false, leads: false },
    { what: 'one more', climbs: true, leads: true },
    { what: 'more hours', date: friday ? first : dayBefore(first), hours: 4 },
  ];
}

interface Found {
  readonly plan: CrewPlan;
  readonly odds: CrewOdds;
  readonly whatIfs: readonly WhatIf[];
  readonly seed: number;
  readonly standing: Standing | null;
}

function weekendOf(question: WeekendQuestion, made: RaiseTasks, found: Found): Weekend {
  const { plan, odds, whatIfs, seed } = found;
  const weight = new Map(odds.matter.map((one) => [one.id, one]));
  const tasks = made.tasks.map((task, i): WeekendTask => {
    const { start, finish } = plan.schedule;
    const { critical = 0, correlation = 0 } = weight.get(task.id) ?? {};
    return {
      id: task.id,
      what: task.what,
      sort: task.sort,
      stage: task.stage,
      lift: task.lift,
      places: task.places,
      start: orNull(start[i] as number),
      finish: orNull(finish[i] as number),
      people: task.people,
      climbers: task.climbers,
      leads: task.leads,
      gear: task.gear,
      gustLimit: task.gustLimit,
      duration: task.duration,
      critical,
      correlation,
    };
  });
  const own = new Set(made.tasks.flatMap(({ id, people }) => (people > 0 ? [id] : [])));
  return {
    seed,
    runs: odds.runs,
    tasks: tasks.sort(
      (a, b) => (a.start ?? 1e12) - (b.start ?? 1e12) || (a.finish ?? 1e12) - (b.finish ?? 1e12),
    ),
    days: plan.compiled.hours.days.map((_, k) => dayOf(question, found, k)),
    end: plan.end,
    finish: odds.finish,
    bound: orNull(plan.bounds.finish),
    work: made.tasks.reduce((sum, { people, duration }) => sum + people * duration.likely, 0),
    matter: odds.matter
      .filter(({ id, critical }) => own.has(id) && critical > 0)
      .slice(0, 10)
      .map(({ id }) => id),
    whatIfs,
    troubles: [...heavyTroubles(made.tooHeavy), ...plan.troubles],
    assumed: [...supposed(made, question), ...plan.assumed],
    flags: [...RATE_SOURCES, CLOSE_DOWN_STEPS, ...plan.flags],
    cautions: [WEEKEND_CAUTION],
  };
}

const orNull = (x: number): number | null => (Number.isFinite(x) ? x : null);

const stageNumber = (id: string | null): number | null =>
  id === null ? null : Number(id.replace('stage ', ''));

function dayOf(
  { plan: { stages }, crew }: WeekendQuestion,
  { plan, odds, standing }: Found,
  k: number,
): WeekendDay {
  const { hours, calendar, serial } = plan.compiled;
  const { date, day, light } = hours.days[k] as (typeof hours.days)[number];
  const evening = plan.evenings[k] as (typeof plan.evenings)[number];
  const stage = stageNumber(evening.stopPoint);
  const left = stages.find(({ number }) => number === stage);
  const own = odds.evenings[k] as (typeof odds.evenings)[number];
  return {
    date,
    weekday: weekday(day),
    daylight: light && spanOf(light.civil),
    sun: light && spanOf(light.sun),
    dark: evening.dark - k * DAY,
    hours: Array.from({ length: 24 }, (_, hour) => {
      const slot = k * SLOTS_PER_DAY + (hour * 3600) / SLOT;
      const piece = (calendar.pieceOf[slot] as number) * serial.resources;
      return {
        hour,
        people: calendar.capacity[piece] as number,
        climbers: PEOPLE_RESOURCES > 1 ? (calendar.capacity[piece + 1] as number) : 0,
        gust: gustOfHour(hours.gust, slot),
      };
    }),
    evening: {
      stage,
      verdict: evening.verdict,
      nightGust: evening.nightGust,
      allowedGust: evening.allowedGust,
      words: evening.words,
    },
    closeDown: left ? cardOf(left, evening.allowedGust, crew) : null,
    odds: {
      done: own.done,
      at: own.at.map(({ stopPoint, odds: at }) => ({
        stage: stageNumber(stopPoint ?? standing?.id ?? null),
        odds: at,
      })),
      caught: own.caught,
    },
  };
}

const cardOf = (stage: RaisingStage, leave: number | null, crew: CrewSettings): CloseDownCard =>
  closeDownCard(stage, leave, crew.closeDown);

function spanOf({
  is,
  from,
  to,
}: {
  readonly is: string;
  readonly from: number | null;
  readonly to: number | null;
}): readonly [number, number] | null {
  return is === 'never' ? null : [Math.max(0, from ?? 0), Math.min(DAY, to ?? DAY)];
}

function gustOfHour(gust: Float64Array, slot: number): number | null {
  let most = Number.NEGATIVE_INFINITY;
  for (let s = slot; s < slot + 3600 / SLOT; s++)
    if (!Number.isNaN(gust[s])) most = Math.max(most, gust[s] as number);
  return orNull(most);
}

function supposed(
  { unweighed, boltsSupposed }: RaiseTasks,
  { observed = [] }: WeekendQuestion,
): string[] {
  return [
    'Lifts follow each other as the raising plan has them; bolts, tightening and plates go on beside them.',
    'The lead sees who has come and, from stake-out and anchors, how fast this crew is; nothing is begun of which the stop point is not reached before dark with a quarter to spare (in the morning: if it is likely to be reached). A run is caught between two where a stage takes longer than that, or wind holds it up.',
    ...(observed.length > 0
      ? [
          `The rates are corrected by ${observed.length} pieces of work in the record of this crew, learning too.`,
        ]
      : []),
    ...(unweighed > 0
      ? [
          `Nobody weighed ${unweighed} of the panels: two people are reckoned at each of their lifts. Weigh one of each kind.`,
        ]
      : []),
    ...(boltsSupposed === null
      ? []
      : [`Seams of which nobody knows the holes count with ${boltsSupposed} bolts each.`]),
  ];
}
