// The hours of a plan: its days cut into slots of five minutes, which of them have light, are breaks, are
// forecast to gust or to be hot; when it is dark, and how hard it blows in the night after. Days follow
// each other without those between: time is seconds, day k begins at k × 86 400.

import { FORECAST_GAP, HEAT, UNKNOWN_LIGHT } from './common.ts';
import { clockTime, DAY, dayNumber, secondsOfDay, weekday } from './date.ts';
import { spansText, unitDoubt } from './forecast-doubts.ts';
import { type Light, lightOn } from './light.ts';
import type { CrewSettings } from './schema.ts';
import { type Forecast, forecastOf, gustBetween, temperatureBetween } from './wind.ts';

/** Seconds in a slot. */
export const SLOT = 300;

/** Slots in a day. */
export const SLOTS_PER_DAY = DAY / SLOT;

/** What light work needs: it only waits (curing), works by lamp, by daylight or twilight, or at height by
 * the sun. */
export const LIGHT_NEEDS = ['waits', 'lamp', 'daylight', 'sun'] as const;

/** One of {@link LIGHT_NEEDS}. */
export type LightNeed = (typeof LIGHT_NEEDS)[number];

/** One day of work. */
export interface WorkDay {
  readonly date: string;
  /** Days from 1970-01-01. */
  readonly day: number;
  /** Null where nobody said where the site is. */
  readonly light: Light | null;
  /** Seconds of the plan when civil twilight ends, at most the day's end. */
  readonly dusk: number;
  /** Greatest gust from dusk to the next dawn, m/s; null: not forecast. */
  readonly nightGust: number | null;
}

/** The hours of a plan. */
export interface PlanHours {
  readonly days: readonly WorkDay[];
  readonly slots: number;
  /** By need of light: 1 where a slot is open. */
  readonly open: Readonly<Record<LightNeed, Uint8Array>>;
  /** Slot → gust forecast, m/s; NaN: not known. */
  readonly gust: Float64Array;
  /** Slot → speed of work, 1 or less. */
  readonly pace: Float64Array;
  /** What had to be supposed, a sentence each. */
  readonly assumed: readonly string[];
}

/** The hours of the days of work in the project, each date once, in order. */
export function planHours(crew: CrewSettings): PlanHours {
  const dates = [...new Set(crew.dates)].sort();
  const forecast = forecastOf(crew.forecast);
  const days = dates.map((date, k) => workDay(crew, date, k, forecast));
  const slots = days.length * SLOTS_PER_DAY;
  const open = {
    waits: new Uint8Array(slots).fill(1),
    lamp: new Uint8Array(slots),
    daylight: new Uint8Array(slots),
    sun: new Uint8Array(slots),
  };
  const gust = new Float64Array(slots);
  const pace = new Float64Array(slots).fill(1);
  const breaks = crew.breaks.map(({ from, to }) => [
    secondsOfDay(from) ?? 0,
    secondsOfDay(to) ?? 0,
  ]);
  days.forEach((day, k) => {
    const [civil, sun] = spansOf(day.light);
    for (let s = 0; s < SLOTS_PER_DAY; s++) {
      const [at, from, to] = [k * SLOTS_PER_DAY + s, s * SLOT, (s + 1) * SLOT];
      const paused = breaks.some(([a, b]) => from < (b as number) && to > (a as number));
      const within = ([a, b]: readonly [number, number]): number =>
        !paused && from >= a && to <= b ? 1 : 0;
      open.lamp[at] = paused ? 0 : 1;
      open.daylight[at] = within(civil);
      open.sun[at] = within(sun);
      const time = day.day * DAY + from;
      gust[at] = gustBetween(forecast, time, time + SLOT);
      pace[at] = paceAt(temperatureBetween(forecast, time, time + SLOT));
    }
  });
  return { days, slots, open, gust, pace, assumed: assumptions(crew, days, gust, open.daylight) };
}

/** Speed of work at a temperature, °C: 1 where it is not known. */
export function paceAt(temperatureC: number): number {
  if (!(temperatureC >= HEAT.warm)) return 1;
  return temperatureC >= HEAT.hot ? HEAT.warmPace * (1 - HEAT.hotRest) : HEAT.warmPace;
}

function workDay(crew: CrewSettings, date: string, k: number, forecast: Forecast): WorkDay {
  const day = dayNumber(date) as number;
  const light = crew.site === null ? null : lightOn(crew.site, date);
  const [[, end]] = spansOf(light);
  const next = crew.site === null ? null : lightOn(crew.site, nextDate(day));
  const [[dawn]] = spansOf(next);
  const dusk = Math.min(DAY, Math.max(0, end));
  const night = gustBetween(forecast, day * DAY + dusk, (day + 1) * DAY + Math.max(0, dawn));
  return { date, day, light, dusk: k * DAY + dusk, nightGust: Number.isNaN(night) ? null : night };
}

const nextDate = (day: number): string =>
  new Date((day + 1) * DAY * 1000).toISOString().slice(0, 10);

/** From when to when there is twilight or better, and the sun is up, seconds of the day; an empty span
 * where there is none. */
function spansOf(light: Light | null): [readonly [number, number], readonly [number, number]] {
  if (light === null) {
    const { from, to } = UNKNOWN_LIGHT;
    return [
      [from, to],
      [from, to],
    ];
  }
  const span = ({ is, from, to }: Light['sun']): readonly [number, number] =>
    is === 'never' ? [DAY / 2, DAY / 2] : [from ?? 0, to ?? DAY];
  return [span(light.civil), span(light.sun)];
}

function assumptions(
  { site, forecast, people }: CrewSettings,
  days: readonly WorkDay[],
  gust: Float64Array,
  daylight: Uint8Array,
): string[] {
  const out: string[] = [];
  if (site === null && days.length > 0)
    out.push(
      `Nobody said where the site is: daylight is supposed from ${clockTime(UNKNOWN_LIGHT.from)} to ${clockTime(UNKNOWN_LIGHT.to)}.`,
    );
  if (forecast.length === 0) {
    if (days.length > 0)
      out.push('No wind is forecast: no hold for wind is planned. Measure the gusts on site.');
    return out;
  }
  const doubt = unitDoubt(forecast);
  if (doubt !== null) out.push(doubt);
  days.forEach(({ day, date }, k) => {
    const unknown: number[] = [];
    // Before the first comes and after the last is gone nothing hangs on the wind.
    const shifts = people.flatMap((one) => one.shifts.filter((shift) => shift.date === date));
    const from = Math.min(...shifts.map((shift) => secondsOfDay(shift.from) ?? 0));
    const to = Math.max(...shifts.map((shift) => secondsOfDay(shift.to) ?? DAY));
    for (let s = 0; s < SLOTS_PER_DAY; s++) {
      const at = k * SLOTS_PER_DAY + s;
      const there = (s + 1) * SLOT > from && s * SLOT < to;
      if (there && daylight[at] === 1 && Number.isNaN(gust[at])) unknown.push(s * SLOT);
    }
    if (unknown.length > 0)
      out.push(
        `${weekday(day)} ${date}: no forecast from ${spansText(unknown, SLOT)}, by daylight (hours over ${FORECAST_GAP / 3600} apart leave a gap); no hold for wind is planned there. Least change that helps: a line for each of these hours.`,
      );
  });
  return out;
}
