// Who is here and what stands, as typed on the spot, with what is likeliest filled in first.

import { type CrewSettings, type Here, secondsOfDay } from '@shellraise/core';
import { within } from '../ground/edits.ts';

/** What is typed. */
export type HereKey = 'people' | 'climb' | 'lead' | 'stage' | 'lifts' | 'light' | 'gust';
/** As text. */
export type HereTyped = Readonly<Record<HereKey, string>>;
/** Date and time of day by the clock. */
export interface Moment {
  readonly date: string;
  readonly time: string;
}

/** What is likeliest: those who are written down for this hour, else for any day; the stages before the
 * one on show; light and gusts by sun and forecast. */
export function hereFirst(crew: CrewSettings | undefined, done: number, now: Moment): HereTyped {
  const at = secondsOfDay(now.time) ?? 0;
  const all = crew?.people ?? [];
  const present = all.filter(({ shifts }) =>
    shifts.some(
      ({ date, from, to }) =>
        date === now.date && (secondsOfDay(from) ?? 0) <= at && at < (secondsOfDay(to) ?? 0),
    ),
  );
  const people = present.length > 0 ? present : all;
  return {
    people: String(people.length),
    climb: String(people.filter(({ climbs }) => climbs).length),
    lead: String(people.filter(({ leads }) => leads).length),
    stage: String(done),
    lifts: '0',
    light: '',
    gust: '',
  };
}

/** What was typed; null where a number is none. */
export function hereTyped(typed: HereTyped, now: Moment): Here | null {
  const number = (key: HereKey, most: number): number | null | undefined => {
    const read = within(typed[key], 0, most);
    return read.ok ? read.value : null;
  };
  const [people, climb, lead] = [number('people', 200), number('climb', 200), number('lead', 200)];
  const [stage, lifts] = [number('stage', 1000), number('lifts', 100)];
  const [light, gust] = [number('light', 24), number('gust', 60)];
  if (light === null || gust === null) return null;
  const whole = [people, climb, lead, stage, lifts].map((n) => (Number.isInteger(n) ? n : null));
  if (whole.some((n) => n === null)) return null;
  const [p, c, l, s, f] = whole as number[];
  return {
    ...now,
    people: p as number,
    climb: c as number,
    lead: l as number,
    stage: s as number,
    lifts: f as number,
    lightHours: light ?? null,
    gust: gust ?? null,
  };
}
