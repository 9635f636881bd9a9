import { describe, expect, test } from 'vitest';
import { clockTime, dateOf, dayNumber, secondsOfDay, weekday } from '../../src/crew/date.ts';
import { lightOn } from '../../src/crew/light.ts';

const at = (latitudeDeg: number, longitudeDeg = 0, utcOffsetHours = 0) => ({
  latitudeDeg,
  longitudeDeg,
  utcOffsetHours,
});

describe('dates and clock times', () => {
  test('a date is its days from 1970 and back, with its weekday', () => {
    expect(dayNumber('1970-01-01')).toBe(0);
    expect(dateOf(dayNumber('2028-02-29') as number)).toBe('2028-02-29');
    expect(weekday(dayNumber('2026-06-12') as number)).toBe('Friday');
    expect(weekday(-1)).toBe('Wednesday');
  });
  test.each(['2027-02-29', '2026-13-01', '12.6.2026', '1599-01-01', ''])(
    '%s is no date',
    (text) => {
      expect(dayNumber(text)).toBeNull();
    },
  );
  test.each([
    ['08:30', 30_600],
    ['8.30', 30_600],
    ['8 am', 28_800],
    ['12:15am', 900],
    ['12 pm', 43_200],
    ['24:00', 86_400],
  ])('%s is a time of day', (text, seconds) => {
    expect(secondsOfDay(text)).toBe(seconds);
  });
  test.each(['8', '25:00', '8:75', '13 pm', 'noon', '24:30'])('%s is none', (text) => {
    expect(secondsOfDay(text)).toBeNull();
  });
  test('a time past midnight says by how many days', () => {
    expect(clockTime(30_629)).toBe('08:30');
    expect(clockTime(90_600)).toBe('01:10 (+1 day)');
    expect(clockTime(-600)).toBe('23:50 (−1 day)');
  });
});

describe('light', () => {
  test('at the equator day and night are alike all the year', () => {
    for (const date of ['2026-01-05', '2026-04-05', '2026-07-05', '2026-10-05']) {
      const { sun } = lightOn(at(0), date);
      expect(Math.abs((sun.to as number) - (sun.from as number) - 12 * 3600)).toBeLessThan(600);
    }
  });
  test('the site’s clock moves every time by its offset', () => {
    const [a, b] = [lightOn(at(50, 15, 0), '2026-06-12'), lightOn(at(50, 15, 2), '2026-06-12')];
    expect((b.sun.from as number) - (a.sun.from as number)).toBeCloseTo(7200, 0);
  });
  test('polar day and polar night are said plainly', () => {
    expect(lightOn(at(78), '2026-06-12').words).toBe('Polar day: the sun does not set.');
    expect(lightOn(at(82), '2026-12-12').words).toContain('Polar night: no daylight');
    expect(lightOn(at(70), '2026-12-12').words).toMatch(/^The sun does not rise: civil twilight/);
    expect(lightOn(at(63), '2026-06-21').words).toMatch(/^Sunrise .*; it does not get dark/);
  });
  test('a date that is none and a site off the Earth are refused', () => {
    expect(() => lightOn(at(50), '2026-02-30')).toThrow('date is 2026-02-30');
    expect(() => lightOn(at(91), '2026-02-03')).toThrow('latitude is 91');
    expect(() => lightOn(at(Number.NaN), '2026-02-03')).toThrow('latitude is NaN');
    expect(() => lightOn(at(0, 0, 20), '2026-02-03')).toThrow('offset');
  });
});
