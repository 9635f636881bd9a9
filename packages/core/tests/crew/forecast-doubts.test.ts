import { describe, expect, test } from 'vitest';
import { inUnit, spansText, unitDoubt } from '../../src/crew/forecast-doubts.ts';
import { planHours } from '../../src/crew/hours.ts';
import { DATES, weekend } from './weekend.ts';

const hours = (mean: number, only: (hour: number) => boolean = () => true) =>
  [...DATES, '2026-06-15'].flatMap((date) =>
    Array.from({ length: 24 }, (_, hour) => hour)
      .filter(only)
      .map((hour) => ({
        at: `${date}T${String(hour).padStart(2, '0')}:00`,
        mean,
        gust: 2 * mean,
        temperatureC: null,
      })),
  );

describe('a forecast typed in another unit', () => {
  test('is asked about, with what it would be and what to do; an ordinary one is not', () => {
    expect(unitDoubt(hours(5))).toBeNull();
    expect(unitDoubt([])).toBeNull();
    const asked = unitDoubt(hours(18)) as string;
    expect(asked).toMatch(/gusts up to 36 m\/s: are these m\/s\?/);
    expect(asked).toMatch(/10\.0 m\/s if they are km\/h, 18\.5 m\/s if they are kn/);
    expect(asked).toMatch(/--wind-unit km\/h/);
  });
  test('is asked about in the plan of the hours, and not once it is read in its unit', () => {
    const typed = hours(18);
    expect(planHours(weekend({ forecast: typed })).assumed.join()).toMatch(/are these m\/s/);
    const read = inUnit(typed, 'km/h');
    expect(read[0]?.gust).toBeCloseTo(10, 12);
    expect(planHours(weekend({ forecast: read })).assumed.join()).not.toMatch(/are these m\/s/);
  });
});

describe('a forecast with gaps', () => {
  test('names each hour of daylight that it lacks', () => {
    const { assumed } = planHours(weekend({ forecast: hours(4, (h) => h < 10 || h > 14) }));
    expect(assumed[0]).toMatch(
      /^Friday 2026-06-12: no forecast from 09:00 to 12:30 and 13:15 to 15:00,/,
    );
  });
  test('names none before the first comes and after the last is gone', () => {
    const people = weekend().people.map((one) => ({
      ...one,
      shifts: one.shifts.map((shift) => ({ ...shift, from: '09:00', to: '17:00' })),
    }));
    const lacking = (from: number): string =>
      planHours(
        weekend({ people, forecast: hours(4, (h) => h >= from && h <= 17) }),
      ).assumed.join();
    expect(lacking(9)).not.toMatch(/no forecast/);
    expect(lacking(11)).toMatch(/no forecast from 09:00 to/);
  });
  test('tells spans apart, and joins what follows each other', () => {
    expect(spansText([0, 300, 900], 300)).toBe('00:00 to 00:10 and 00:15 to 00:20');
    expect(spansText([36_000], 3600)).toBe('10:00 to 11:00');
    expect(spansText([], 300)).toBe('');
  });
});
