// Days, moments of the plan and odds as text.

import { clockTime, dayNumber, weekday } from '@shellraise/core';

const DAY = 86_400;

/** The weekday of a date. */
export const dayName = (date: string): string => weekday(dayNumber(date) ?? 0);

/** A moment of the plan, seconds, as weekday and time of day; null where it is not in these days. */
export function momentName(
  at: number | null,
  days: readonly { readonly weekday: string }[],
): string | null {
  if (at === null) return null;
  const k = Math.min(days.length - 1, Math.floor(at / DAY));
  const day = days[k];
  return day ? `${day.weekday} ${clockTime(at - k * DAY)}` : null;
}

/** Odds as whole percent; never quite none or certain. */
export function oddsText(odds: number): string {
  if (odds <= 0 || odds >= 1) return `${odds * 100} %`;
  if (odds < 0.01) return 'under 1 %';
  return odds > 0.99 ? 'over 99 %' : `${Math.round(odds * 100)} %`;
}

/** A gain in percent with its sign: `+12`, `−3`, `0`. */
export function gainText(gain: number): string {
  const percent = Math.round(gain * 100);
  return percent > 0 ? `+${percent}` : percent < 0 ? `−${-percent}` : '0';
}
