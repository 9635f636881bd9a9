// astronomy-engine 2.1.19 (npm, MIT; general astronomy, VSOP87): sunrise, sunset, civil dawn and dusk
// and solar noon for 160 seeded dates from 2000 to 2060 at places from 65° S to 65° N, and whether the
// sun rises at all up to 89°. J. Meeus, Astronomical Algorithms, example 25.a (1992 October 13.0; from
// memory, reckoned again). Seven places and dates on which four programs agree within 5 s (own NOAA
// equations, PyEphem 4.1.4, astronomy-engine, suncalc 2; clock times, reckoned).

import { Body, Observer, SearchAltitude, SearchHourAngle, SearchRiseSet } from 'astronomy-engine';
import { describe, expect, test } from 'vitest';
import { DAY, dateOf, dayNumber, secondsOfDay } from '../../src/crew/date.ts';
import { type Light, lightOn, type Site } from '../../src/crew/light.ts';
import { solarPlace } from '../../src/crew/solar.ts';
import { seededRandom } from '../../src/math/random.ts';
import { checked } from './data/checked.ts';

const MINUTE = 60;

test('Meeus, example 25.a: apparent longitude, right ascension and declination', () => {
  const place = solarPlace((dayNumber('1992-10-13') as number) * DAY);
  checked({ got: place.longitudeDeg, expected: 199.90894, within: 5e-5 });
  checked({ got: place.rightAscensionDeg, expected: 198.38083, within: 5e-5 });
  checked({ got: place.declinationDeg, expected: -7.78507, within: 5e-5 });
});

const printed: readonly (readonly [string, number, number, string, number, string])[] = [
  ['Boston', 42.36, -71.06, '2024-06-20', -4, '04:32:36 05:07:26 12:45:59 20:24:32 20:59:22'],
  ['Boston', 42.36, -71.06, '2024-12-21', -5, '06:38:21 07:10:20 11:42:40 16:14:55 16:46:54'],
  ['Boston', 42.36, -71.06, '2024-10-12', -4, '06:26:01 06:54:15 12:30:32 18:06:11 18:34:22'],
  ['Greenwich', 51.4779, 0, '2024-03-20', 0, '05:28:33 06:01:47 12:07:17 18:13:49 18:47:10'],
  ['40° N 105° W', 40, -105, '2010-06-21', -6, '04:58:27 05:31:21 13:01:49 20:32:17 21:05:12'],
  ['50.5° N 30.5° E', 50.5, 30.5, '2013-03-05', 0, '04:00:54 04:33:29 10:09:28 15:46:16 16:18:56'],
  [
    '38.4° N 79.8° W',
    38.4331,
    -79.8398,
    '2025-09-13',
    -4,
    '06:32:52 06:59:30 13:15:08 19:30:05 19:56:39',
  ],
];

test.each(printed)(
  '%s (%d, %d) on %s',
  (_place, latitudeDeg, longitudeDeg, date, offset, times) => {
    const light = lightOn({ latitudeDeg, longitudeDeg, utcOffsetHours: offset }, date);
    const expected = times.split(' ').map((time) => {
      const [h, m, s] = time.split(':').map(Number) as [number, number, number];
      return h * 3600 + m * 60 + s;
    });
    // Noon here is the highest sun, theirs the meridian: up to half a minute apart.
    const { from, to } = light.civil;
    checked({
      what: 'dawn, sunrise, noon, sunset, dusk, s',
      got: [from, light.sun.from, light.noon, light.sun.to, to] as number[],
      expected,
      within: MINUTE,
    });
    expect(secondsOfDay(times.slice(0, 5))).toBe(
      (expected[0] as number) - ((expected[0] as number) % 60),
    );
  },
);

const theirs = (site: Site, date: string): number[] => {
  const midnight = ((dayNumber(date) as number) * DAY - site.utcOffsetHours * 3600) * 1000;
  const observer = new Observer(site.latitudeDeg, site.longitudeDeg, 0);
  const start = new Date(midnight + DAY * 500 - DAY * 250);
  const noon = SearchHourAngle(Body.Sun, observer, 0, start, 1).time.date.getTime();
  const from = new Date(noon - DAY * 500);
  const after = new Date(noon);
  return [
    SearchAltitude(Body.Sun, observer, 1, from, 0.6, -6),
    SearchRiseSet(Body.Sun, observer, 1, from, 0.6),
    SearchRiseSet(Body.Sun, observer, -1, after, 0.6),
    SearchAltitude(Body.Sun, observer, -1, after, 0.6, -6),
  ].map((time) => (time === null ? Number.NaN : (time.date.getTime() - midnight) / 1000));
};

const ours = ({ civil, sun }: Light): number[] =>
  [civil.from, sun.from, sun.to, civil.to].map((time) => time ?? Number.NaN);

/** A seeded place and date; the clock is that of its longitude. */
function somewhere(seed: number, most: number): { site: Site; date: string } {
  const random = seededRandom(seed);
  const longitudeDeg = 360 * random.uniform() - 180;
  return {
    site: {
      latitudeDeg: most * (2 * random.uniform() - 1),
      longitudeDeg,
      utcOffsetHours: Math.round(longitudeDeg / 15),
    },
    date: dateOf((dayNumber('2000-01-01') as number) + random.below(60 * 365)),
  };
}

describe('against astronomy-engine', () => {
  const cases = Array.from({ length: 160 }, (_, seed) => somewhere(seed, 65));
  test('dawn, sunrise, sunset and dusk of 160 places and dates, to 60 s', () => {
    const pairs = cases
      .map(({ site, date }) => [ours(lightOn(site, date)), theirs(site, date)] as const)
      .flatMap(([a, b]) => a.map((x, i) => [x, b[i] as number] as const))
      .filter(([a, b]) => !Number.isNaN(a) || !Number.isNaN(b));
    expect(pairs.length).toBeGreaterThan(600);
    checked({
      got: pairs.map(([a]) => a),
      expected: pairs.map(([, b]) => b),
      within: MINUTE,
    });
  });
  test('a site 2.5° of longitude (ten minutes of time) off is told', () => {
    const off = cases.slice(0, 20).map(({ site, date }) => {
      const east = { ...site, longitudeDeg: Math.min(180, site.longitudeDeg + 2.5) };
      return Math.abs((ours(lightOn(east, date))[1] as number) - (theirs(site, date)[1] as number));
    });
    expect(Math.min(...off.filter((x) => !Number.isNaN(x)))).toBeGreaterThan(MINUTE);
  });
  test('whether the sun rises and sets, up to 89° north and south, 300 places and dates', () => {
    let polar = 0;
    for (let seed = 1000; seed < 1300; seed++) {
      const { site, date } = somewhere(seed, 89);
      const [a, b] = [ours(lightOn(site, date)), theirs(site, date)];
      expect(a.map(Number.isNaN), `${date} at ${site.latitudeDeg}`).toEqual(b.map(Number.isNaN));
      if (a.some(Number.isNaN)) polar++;
    }
    expect(polar).toBeGreaterThan(30);
  });
});
