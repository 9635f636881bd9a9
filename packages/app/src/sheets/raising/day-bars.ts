// A day as chart data: tasks as bars in lanes by what they are, people and gusts by the hour, light.

import type { WeekendDay, WeekendTask } from '@shellraise/core';

const DAY = 86_400;

/** Lanes from above, those that only mark a point left out. */
const LANES = ['stake out', 'anchors', 'make up', 'lift', 'bolts', 'tighten', 'plates'] as const;

/** A lane. */
export type Lane = (typeof LANES)[number];

/** A bar: parts of the width. */
export interface TaskBar {
  readonly id: string;
  readonly what: string;
  readonly x: number;
  readonly width: number;
}

/** The day's data; x goes from `from` to `to`, whole hours. */
export interface DayBars {
  readonly from: number;
  readonly to: number;
  readonly lanes: readonly { readonly lane: Lane; readonly bars: readonly TaskBar[] }[];
  readonly tasks: number;
  readonly hours: WeekendDay['hours'];
  /** Where along the width it is light, null where it never is or nobody said; and where it is dark. */
  readonly light: readonly [number, number] | null;
  readonly dark: number;
}

/** The data of day k of a weekend. */
export function dayBars(
  tasks: readonly WeekendTask[],
  days: readonly WeekendDay[],
  k: number,
): DayBars | null {
  const day = days[k];
  if (!day) return null;
  const all = days.flatMap((one) =>
    one.hours.filter(({ people }) => people > 0).map(({ hour }) => hour),
  );
  const from = Math.max(0, Math.min(8, ...all));
  const to = Math.min(24, Math.max(18, ...all.map((hour) => hour + 1)));
  const x = (seconds: number): number =>
    Math.max(0, Math.min(1, (seconds / 3600 - from) / (to - from)));
  const today = tasks.filter(
    ({ start, finish }) =>
      start !== null && finish !== null && start < (k + 1) * DAY && finish > k * DAY,
  );
  const lanes = LANES.flatMap((lane) => {
    const bars = today
      .filter(({ sort }) => sort === lane)
      .map(({ id, what, start, finish }): TaskBar => {
        const left = x((start as number) - k * DAY);
        return { id, what, x: left, width: x((finish as number) - k * DAY) - left };
      });
    return bars.length > 0 ? [{ lane, bars }] : [];
  });
  return {
    from,
    to,
    lanes,
    tasks: today.filter(({ sort }) => sort !== 'stop point').length,
    hours: day.hours.filter(({ hour }) => hour >= from && hour < to),
    light: day.daylight && [x(day.daylight[0]), x(day.daylight[1])],
    dark: x(day.dark),
  };
}
