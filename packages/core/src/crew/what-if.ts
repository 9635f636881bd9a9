// What a change to the crew would buy: one more pair of hands, somebody less, more hours on a day. Plans
// are compared under the same luck run by run, so that a small gain shows.

import { clockTime, DAY, dateOf, dayNumber, secondsOfDay, weekday } from './date.ts';
import { lightOn } from './light.ts';
import { type CrewOdds, crewOdds, type OddsOptions } from './odds.ts';
import { type CrewPlan, type CrewQuestion, crewPlan } from './plan.ts';
import type { CrewSettings, Person } from './schema.ts';

/** A change to the crew that is asked about. */
export type CrewChange =
  | { readonly what: 'one more'; readonly climbs: boolean; readonly leads: boolean }
  | { readonly what: 'without'; readonly name: string }
  | { readonly what: 'more hours'; readonly date: string; readonly hours: number };

/** What a change gains by one evening: odds of being done by it, and their standard error over the runs,
 * which share their luck. */
export interface EveningGain {
  readonly date: string;
  readonly odds: number;
  readonly gain: number;
  readonly error: number;
}

/** What a change buys. */
export interface WhatIf {
  readonly change: CrewChange;
  readonly words: string;
  /** By evening, in order; days that the change adds too. */
  readonly gain: readonly EveningGain[];
  /** Finish that half of the runs keep, seconds of the changed plan; null: not in these days. */
  readonly p50: number | null;
}

/** A plan with its odds, to set changes against. */
export interface AgainstPlan {
  readonly question: CrewQuestion;
  readonly plan: CrewPlan;
  readonly odds: CrewOdds;
}

/** What a change gains against a plan, over the first `runs` of its runs; null where the changed plan can't
 * be made. */
export function whatIf(
  { question, plan, odds }: AgainstPlan,
  change: CrewChange,
  options: OddsOptions & { readonly tries?: number },
): WhatIf | null {
  const crew = changedCrew(question.crew, change);
  const tries = options.tries ?? question.tries;
  const made = crewPlan({ ...question, crew, ...(tries !== undefined && { tries }) });
  if (!made.ok) return null;
  const runs = Math.min(options.runs ?? odds.runs, odds.runs);
  // The order of cards found anew, or the one that was good before: whichever is done more often.
  const own = crewOdds(made.value, { ...options, runs });
  const { list, look } = plan.schedule;
  const kept = {
    ...made.value,
    schedule: { ...made.value.schedule, list, look, start: plan.schedule.start },
  };
  const before = crewOdds(kept, { ...options, runs });
  const better = sumOf(before) > sumOf(own) ? before : own;
  // Who is one too many may look on: what comes on top never makes a plan worse.
  const isMore =
    change.what !== 'without' && made.value.compiled.hours.days.length === odds.evenings.length;
  const unchanged = isMore ? doneIn(odds, plan, runs) : -1;
  const changed = unchanged > doneIn(better, made.value, runs) ? odds : better;
  const gain = made.value.compiled.hours.days.map(({ date }) => {
    const [was, is] = [darkOf(plan, date), darkOf(made.value, date)];
    let [sum, squares, done] = [0, 0, 0];
    for (let run = 0; run < runs; run++) {
      const y = (changed.simulation.finish[run] as number) <= is ? 1 : 0;
      const x = (odds.simulation.finish[run] as number) <= was ? 1 : 0;
      done += y;
      sum += y - x;
      squares += (y - x) ** 2;
    }
    const mean = sum / runs;
    const error = Math.sqrt(Math.max(0, squares / runs - mean * mean) / runs);
    return { date, odds: done / runs, gain: mean, error };
  });
  return { change, words: changeWords(change), gain, p50: changed.finish.p50 };
}

/** Evenings by which so many of the first runs are done, over all days. */
const doneIn = ({ simulation }: CrewOdds, { compiled }: CrewPlan, runs: number): number =>
  [...compiled.calendar.dark].reduce(
    (sum, dark) => sum + simulation.finish.slice(0, runs).filter((end) => end <= dark).length,
    0,
  );

/** Evenings by which it is done, over all runs and days. */
const sumOf = ({ evenings }: CrewOdds): number => evenings.reduce((sum, { done }) => sum + done, 0);

/** Dark of a date in a plan; on a date before its days nothing is done, after them the last day counts. */
function darkOf({ compiled: { hours, calendar } }: CrewPlan, date: string): number {
  const k = hours.days.findLastIndex((day) => day.date <= date);
  return k < 0 ? -1 : (calendar.dark[k] as number);
}

/** A change in words. */
export function changeWords(change: CrewChange): string {
  if (change.what === 'without') return `without ${change.name}`;
  if (change.what === 'more hours')
    return `${change.hours} hours more on ${weekdayOf(change.date)} ${change.date}`;
  const skills = [...(change.climbs ? ['climbs'] : []), ...(change.leads ? ['can lead'] : [])];
  return `one more pair of hands${skills.length > 0 ? `, who ${skills.join(' and ')}` : ''}`;
}

const weekdayOf = (date: string): string => weekday(dayNumber(date) ?? 0);

/** The crew with a change: one more who comes for certain, in the hours of the one who is there longest;
 * somebody less; or so many hours more on a date: everybody comes earlier, not before dawn, and stays for
 * what is left of them; on a date that was no day of work, until dusk. */
export function changedCrew(crew: CrewSettings, change: CrewChange): CrewSettings {
  if (change.what === 'without')
    return { ...crew, people: crew.people.filter(({ name }) => name !== change.name) };
  if (change.what === 'one more') {
    const longest = [...crew.people].sort((a, b) => hoursOf(b) - hoursOf(a))[0];
    const person: Person = {
      name: 'one more',
      climbs: change.climbs,
      leads: change.leads,
      sure: true,
      shifts: longest?.shifts ?? [],
    };
    return { ...crew, people: [...crew.people, person] };
  }
  return moreHours(crew, change.date, change.hours);
}

const hoursOf = ({ shifts }: Person): number =>
  shifts.reduce(
    (sum, { from, to }) => sum + (secondsOfDay(to) ?? 0) - (secondsOfDay(from) ?? 0),
    0,
  );

function moreHours(crew: CrewSettings, date: string, hours: number): CrewSettings {
  const civil = crew.site === null ? null : lightOn(crew.site, date).civil;
  const dawn = Math.max(0, civil?.from ?? 6 * 3600);
  const dusk = Math.min(DAY, civil?.to ?? 20 * 3600);
  const isNew = !crew.dates.includes(date);
  const longer = (from: number, to: number): { from: string; to: string } => {
    const early = Math.max(0, Math.min(hours * 3600, from - dawn));
    return {
      from: clockTime(60 * Math.ceil((from - early) / 60)),
      to: clockTime(60 * Math.floor(Math.min(DAY, to + hours * 3600 - early) / 60)),
    };
  };
  const people = crew.people.map((person) => ({
    ...person,
    shifts: isNew
      ? [
          ...person.shifts,
          {
            date,
            from: clockTime(60 * Math.ceil(Math.max(dawn, dusk - hours * 3600) / 60)),
            to: clockTime(60 * Math.floor(dusk / 60)),
          },
        ]
      : person.shifts.map((shift) =>
          shift.date === date
            ? { date, ...longer(secondsOfDay(shift.from) ?? 0, secondsOfDay(shift.to) ?? 0) }
            : shift,
        ),
  }));
  return { ...crew, people, dates: [...new Set([...crew.dates, date])].sort() };
}

/** The day before a date: "four more hours on Friday" of a weekend that begins on Saturday. */
export const dayBefore = (date: string): string => dateOf((dayNumber(date) ?? 0) - 1);
