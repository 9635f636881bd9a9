import { describe, expect, test } from 'vitest';
import { readForecast } from '../../src/crew/forecast-text.ts';
import { paceAt, planHours, SLOTS_PER_DAY } from '../../src/crew/hours.ts';
import { forecastOf, gustBetween } from '../../src/crew/wind.ts';
import { DATES, weekend } from './weekend.ts';

const hours = (text: string, date?: string) => {
  const read = readForecast(text, date);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
};
const faults = (text: string, date?: string): string[] => {
  const read = readForecast(text, date);
  return read.ok
    ? []
    : read.faults.map(({ path, found, expected }) => `${path}: ${found}; ${expected}`);
};

describe('a pasted forecast', () => {
  test('lines of time, mean and gust, the date before them', () => {
    const { hours: read, told } = hours(
      'Fri 2026-06-12\n09:00 5 9 m/s\n10:00 18 km/h 36 km/h 31 °C\n',
    );
    expect(read).toEqual([
      { at: '2026-06-12T09:00', mean: 5, gust: 9, temperatureC: null },
      { at: '2026-06-12T10:00', mean: 5, gust: 10, temperatureC: 31 },
    ]);
    expect(told).toEqual([]);
  });
  test('a table with units in its header, columns in any order', () => {
    const text =
      'time;direction;gust mph;wind mph;temp °C\n2026-06-12 09:00;SW;20;10;17\n2026-06-12 10:00;W;22;11;18';
    expect(hours(text).hours.map(({ gust }) => gust)).toEqual([20 * 0.44704, 22 * 0.44704]);
    expect(hours(text).hours[1]?.temperatureC).toBe(18);
  });
  test('times without a date take the one given; order does not matter', () => {
    const a = hours('14:00 5 9 m/s\n13:00 4 8 m/s', '2026-06-12').hours;
    expect(a.map(({ at }) => at)).toEqual(['2026-06-12T13:00', '2026-06-12T14:00']);
  });
  test.each([
    ['no unit', '2026-06-12 09:00 5 9', /line 1: mean "5.*; a unit/],
    ['no date', '09:00 5 9 m/s', /a time without a date/],
    ['the gust first', '2026-06-12 09:00 9 5 m/s', /a gust of 5.0 m\/s with a mean of 9.0 m\/s/],
    ['kilometres taken for metres', '2026-06-12 09:00 35 60 m/s', /were km\/h, mph or knots meant/],
    ['Fahrenheit taken for Celsius', '2026-06-12 09:00 3 6 m/s 72 °C', /was °F meant/],
    ['no such date', '2026-02-30 09:00 3 6 m/s', /2026-02-30/],
    ['no such time', '2026-06-12 29:00 3 6 m/s', /a time of day/],
    ['two for one hour', '2026-06-12 09:00 3 6 m/s\n2026-06-12 09:00 4 6 m/s', /another forecast/],
    ['words', 'fresh breeze', /a time, the mean and the gust/],
    ['nothing', '  \n', /no line with a time/],
    ['a table without means', 'time,gust mph\n2026-06-12 09:00,5', /without a column of mean wind/],
  ])('%s is refused', (_what, text, expected) => {
    expect(faults(text)[0] ?? '').toMatch(expected);
  });
  test('gaps and jumps are told', () => {
    const { told } = hours('2026-06-12 09:00 3 5 m/s\n10:00 10 18 m/s\n18:00 8 12 m/s');
    expect(told[0]).toMatch(/goes from 5.0 to 18.0 m\/s .*is its unit the same/);
    expect(told[1]).toBe('Nothing is forecast from 2026-06-12 10:00 to 2026-06-12 18:00, 8 hours.');
  });
});

describe('the forecast along the days', () => {
  const forecast = forecastOf(
    hours('2026-06-12 09:00 3 5 m/s\n10:00 4 8 m/s\n18:00 8 12 m/s').hours,
  );
  const at = (clock: number): number => 20_616 * 86_400 + clock * 3600;
  test('between two hours the greater gust counts, in a gap and beyond the ends nothing is known', () => {
    expect(gustBetween(forecast, at(9), at(9.5))).toBe(8);
    expect(gustBetween(forecast, at(9), at(9))).toBe(5);
    expect(gustBetween(forecast, at(10.5), at(11))).toBeNaN();
    expect(gustBetween(forecast, at(8), at(9.5))).toBeNaN();
    expect(gustBetween(forecast, at(18), at(19))).toBe(12);
    expect(gustBetween(forecast, at(18), at(19.5))).toBeNaN();
  });
  test('work in heat is slower, from 35 °C by rests as well', () => {
    expect(paceAt(Number.NaN)).toBe(1);
    expect(paceAt(29.9)).toBe(1);
    expect(paceAt(30)).toBe(0.75);
    expect(paceAt(36)).toBeCloseTo((0.75 * 110) / 120, 12);
  });
  test('slots are shut by dark and breaks, and what nobody forecast is told', () => {
    const plan = planHours(
      weekend({ forecast: hours('2026-06-12 09:00 3 5 m/s\n10:00 4 8 m/s').hours }),
    );
    const slot = (clock: number): number => clock * 12;
    expect(plan.open.daylight[slot(3)]).toBe(0);
    expect(plan.open.daylight[slot(12)]).toBe(1);
    expect(plan.open.daylight[slot(12.5)]).toBe(0);
    expect(plan.open.lamp[slot(3)]).toBe(1);
    expect(plan.open.waits[slot(12.5)]).toBe(1);
    // Sunrise 04:48, civil dawn 04:01 at this site.
    expect(plan.open.sun[slot(4.5)]).toBe(0);
    expect(plan.open.daylight[slot(4.5)]).toBe(1);
    expect(plan.slots).toBe(3 * SLOTS_PER_DAY);
    expect(plan.assumed.length).toBe(3);
    expect(plan.assumed[1]).toMatch(/^Saturday 2026-06-13: no forecast/);
    expect(planHours(weekend()).assumed[0]).toMatch(/^No wind is forecast/);
    expect(planHours(weekend({ site: null })).assumed[0]).toMatch(
      /daylight is supposed from 08:00/,
    );
  });
  test('the gust of the night is that from dusk to dawn, null where it is not all forecast', () => {
    const all = Array.from({ length: 40 }, (_, h) => ({
      at: `${h < 24 ? DATES[0] : DATES[1]}T${String(h % 24).padStart(2, '0')}:00`,
      mean: 3,
      gust: h === 27 ? 17 : 6,
    }));
    const { days } = planHours(weekend({ forecast: all }));
    expect(days.map(({ nightGust }) => nightGust)).toEqual([17, null, null]);
  });
});
