// Calendar dates and times of day as people write them in a project: 2026-06-12 and 08:30, in the
// site's own clock time (one offset from UTC for all dates of a plan). Gregorian calendar.

/** Seconds in a day. */
export const DAY = 86_400;

/** Days from 1970-01-01 to a date written year-month-day; null where there is no such date or it is
 * written otherwise. Years 1800 to 2199. */
export function dayNumber(date: string): number | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (!match) return null;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  if (year < 1800 || year > 2199) return null;
  const at = Date.UTC(year, month - 1, day);
  return dateOf(at / (DAY * 1000)) === date ? at / (DAY * 1000) : null;
}

/** The date that is so many days after 1970-01-01, as year-month-day. Whole days only. */
export const dateOf = (day: number): string =>
  new Date(day * DAY * 1000).toISOString().slice(0, 10);

const WEEK = ['Thursday', 'Friday', 'Saturday', 'Sunday', 'Monday', 'Tuesday', 'Wednesday'];

/** The name of the weekday of a day counted from 1970-01-01 (a Thursday). */
export const weekday = (day: number): string => WEEK[((day % 7) + 7) % 7] as string;

/** Seconds after midnight of a time of day: `08:30`, `8:30`, `17.30`, `8 am`, `12:15pm`, `24:00`; null
 * where it is none. A bare number is none: it could be a count. */
export function secondsOfDay(text: string): number | null {
  const match = /^(\d{1,2})(?:[:.h](\d{2}))?\s*(am|pm)?$/i.exec(text.trim());
  if (!match || (match[2] === undefined && match[3] === undefined)) return null;
  const [hour, minute] = [Number(match[1]), Number(match[2] ?? 0)];
  if (minute > 59) return null;
  const half = match[3]?.toLowerCase();
  if (half !== undefined && (hour < 1 || hour > 12)) return null;
  const whole = half === undefined ? hour : (hour % 12) + (half === 'pm' ? 12 : 0);
  const seconds = whole * 3600 + minute * 60;
  return seconds <= DAY ? seconds : null;
}

/** A time of day as hours and minutes, rounded to the minute; past midnight with the days that it is
 * off: `01:10 (+1 day)`. */
export function clockTime(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  const days = Math.floor(minutes / 1440);
  const rest = minutes - days * 1440;
  const text = `${pad(Math.floor(rest / 60))}:${pad(rest % 60)}`;
  if (days === 0) return text;
  return `${text} (${days > 0 ? '+' : '−'}${Math.abs(days)} day${Math.abs(days) > 1 ? 's' : ''})`;
}

const pad = (n: number): string => String(n).padStart(2, '0');
