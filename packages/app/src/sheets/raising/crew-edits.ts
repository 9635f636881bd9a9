// Changes to the crew as they are typed: times of day, shifts, breaks, dates. Pure; null is a fault.

import { clockTime, dayNumber, type Person, secondsOfDay } from '@shellraise/core';

/** From and to as typed. */
export interface SpanTyped {
  readonly from: string;
  readonly to: string;
}

/** A span as typed, `undefined` where both are empty, null where it is none. */
export function spanTyped({ from, to }: SpanTyped): SpanTyped | undefined | null {
  const [a, b] = [from.trim(), to.trim()];
  if (a === '' && b === '') return undefined;
  const [first, last] = [secondsOfDay(a), secondsOfDay(b)];
  if (first === null || last === null || first >= last) return null;
  return { from: clockTime(first), to: clockTime(last) };
}

/** Shifts with the one on a date as typed; null where it can't be read. */
export function shiftsWith(
  shifts: Person['shifts'],
  date: string,
  typed: SpanTyped,
): Person['shifts'] | null {
  const span = spanTyped(typed);
  if (span === null) return null;
  const rest = shifts.filter((one) => one.date !== date);
  if (span === undefined) return rest;
  return [...rest, { date, ...span }].sort((a, b) => a.date.localeCompare(b.date));
}

/** Breaks as `10:30-10:45, 12:30-13:15`; null where they can't be read. */
export function breaksTyped(text: string): SpanTyped[] | null {
  const parts = text
    .split(/[,;]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  const spans = parts.map((part) => {
    const [from, to, ...more] = part.split(/[-–]/);
    return more.length > 0 ? null : spanTyped({ from: from ?? '', to: to ?? '' });
  });
  return spans.some((span) => span === null || span === undefined)
    ? null
    : (spans as SpanTyped[]).sort((a, b) => a.from.localeCompare(b.from));
}

/** Breaks as text. */
export const breaksText = (breaks: readonly SpanTyped[]): string =>
  breaks.map(({ from, to }) => `${from}-${to}`).join(', ');

/** Dates with one more; null where it is none or there already. */
export const datesWith = (dates: readonly string[], date: string): string[] | null =>
  dayNumber(date) === null || dates.includes(date) ? null : [...dates, date].sort();

/** The hours of somebody who is written down: those of the last one, else eight to six each day. */
export function firstShifts(people: readonly Person[], dates: readonly string[]): Person['shifts'] {
  const last = people.at(-1);
  const own = last?.shifts.filter(({ date }) => dates.includes(date)) ?? [];
  return own.length > 0 ? own : dates.map((date) => ({ date, from: '08:00', to: '18:00' }));
}
