import { expect, test } from 'vitest';
import type { HourClass } from '../../src/crew/compile.ts';
import { type PlanHours, SLOTS_PER_DAY } from '../../src/crew/hours.ts';
import { openHoursInto } from '../../src/crew/open-hours.ts';
import { seededRandom } from '../../src/math/random.ts';

const DAYS = 4;
const SLOTS = DAYS * SLOTS_PER_DAY;
const classes: readonly HourClass[] = [
  { light: 'waits', gustLimit: Number.POSITIVE_INFINITY },
  { light: 'lamp', gustLimit: 12 },
  { light: 'daylight', gustLimit: Number.POSITIVE_INFINITY },
  { light: 'sun', gustLimit: 9 },
];

/** Open from one hour of each day to another. */
const between = (from: number, to: number): Uint8Array =>
  Uint8Array.from({ length: SLOTS }, (_, s) => {
    const hour = ((s % SLOTS_PER_DAY) * 24) / SLOTS_PER_DAY;
    return hour >= from && hour < to ? 1 : 0;
  });

/** Days that blow up to 3, 8, 11 and an unknown number of m/s. */
const hours: PlanHours = {
  days: [],
  slots: SLOTS,
  open: {
    waits: new Uint8Array(SLOTS).fill(1),
    lamp: new Uint8Array(SLOTS).fill(1),
    daylight: between(5, 21),
    sun: between(6, 20),
  },
  gust: Float64Array.from({ length: SLOTS }, (_, s) => {
    const day = Math.floor(s / SLOTS_PER_DAY);
    const most = [3, 8, 11, Number.NaN][day] as number;
    return most * (0.5 + 0.5 * Math.sin((Math.PI * (s % SLOTS_PER_DAY)) / SLOTS_PER_DAY));
  }),
  pace: new Float64Array(SLOTS).fill(1),
  assumed: [],
};

const calendar = () => ({
  slots: SLOTS,
  slotsPerDay: SLOTS_PER_DAY,
  until: new Int32Array(classes.length * SLOTS),
  next: new Int32Array(classes.length * SLOTS),
});

/** Slot by slot: when its work must stop, and when the next may begin. */
function plain(factor: Float64Array, attended: Uint8Array) {
  const { until, next } = calendar();
  classes.forEach(({ light, gustLimit }, c) => {
    const isOpen = Array.from({ length: SLOTS }, (_, s) => {
      const blows = (hours.gust[s] as number) * (factor[Math.floor(s / SLOTS_PER_DAY)] as number);
      return (
        hours.open[light][s] === 1 &&
        (light === 'waits' || attended[s] === 1) &&
        !(blows > gustLimit)
      );
    });
    for (let s = 0; s < SLOTS; s++) {
      const after = (want: boolean): number => {
        const at = isOpen.indexOf(want, s);
        return at < 0 ? SLOTS : at;
      };
      until[c * SLOTS + s] = after(false);
      next[c * SLOTS + s] = after(true);
    }
  });
  return { until, next };
}

test('fifty weathers one after the other open the same hours as each alone, slot by slot (seed 3)', () => {
  const random = seededRandom(3);
  const attended = between(8, 18);
  const kept = calendar();
  const blow = openHoursInto(kept, hours, classes, attended);
  let [held, other] = [0, 0];
  for (let i = 0; i < 50; i++) {
    const factor = Float64Array.from({ length: DAYS }, () =>
      Math.exp(0.5 * (2 * random.uniform() - 1)),
    );
    blow(factor);
    const { until, next } = plain(factor, attended);
    expect(kept.until).toEqual(until);
    expect(kept.next).toEqual(next);
    const calm = plain(new Float64Array(DAYS).fill(0.1), attended);
    if (calm.until.some((at, x) => at !== until[x])) held++;
    else other++;
  }
  // Some weathers hold work back and some do not.
  expect(Math.min(held, other)).toBeGreaterThan(5);
});
