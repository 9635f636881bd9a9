// Daylight of a date at a site: sunrise, sunset and civil twilight around that date's solar noon, in
// seconds of the site's clock after that date's midnight (they may lie before 0 or after 86 400).
// Sunrise and sunset: the sun's middle 0.833° under the horizon (34′ refraction, 16′ half width); civil
// twilight: 6° under it. A level horizon at the site's height; hills and refraction of the day are not
// known. Right to a minute up to where the sun grazes the horizon.

import { clockTime, DAY, dayNumber } from './date.ts';
import { hourAngleDeg, solarAltitudeDeg } from './solar.ts';

/** Where the shell goes up, and what its clocks show. */
export interface Site {
  /** Degrees, north positive, −90 to 90. */
  readonly latitudeDeg: number;
  /** Degrees, east positive, −180 to 180. */
  readonly longitudeDeg: number;
  /** Hours that the site's clocks are ahead of UTC, summer time included. */
  readonly utcOffsetHours: number;
}

/** When the sun is over an altitude: from and to are null where it does not cross it on that side of
 * noon. `part`: it does, on at least one; `always` over it; `never` over it. */
export interface Above {
  readonly is: 'part' | 'always' | 'never';
  readonly from: number | null;
  readonly to: number | null;
}

/** The light of one date. */
export interface Light {
  readonly date: string;
  /** When the sun stands highest. */
  readonly noon: number;
  /** Sunrise and sunset. */
  readonly sun: Above;
  /** Civil dawn and dusk. */
  readonly civil: Above;
  /** In a sentence; polar day and night are named. */
  readonly words: string;
}

/** Altitudes of the sun's middle, degrees: at sunrise and sunset, and where civil twilight ends. */
const SUN_ALTITUDE_DEG = { rise: -0.833, civil: -6 } as const;

/** The light of a date (year-month-day) at a site. Throws RangeError on a date that is none, or a site
 * off the Earth. */
export function lightOn(site: Site, date: string): Light {
  const day = dayNumber(date);
  if (day === null) throw new RangeError(`date is ${date}, expected a date such as 2026-06-12`);
  assertSite(site);
  const midnight = day * DAY - site.utcOffsetHours * 3600;
  const altitude = (at: number): number =>
    solarAltitudeDeg(midnight + at, site.latitudeDeg, site.longitudeDeg);
  const transit = transitNear(midnight, site);
  const noon = extreme((at) => altitude(at), transit);
  const before = extreme((at) => -altitude(at), transit - DAY / 2);
  const after = extreme((at) => -altitude(at), transit + DAY / 2);
  const above = (least: number): Above => crossings(altitude, least, [before, noon, after]);
  const [sun, civil] = [above(SUN_ALTITUDE_DEG.rise), above(SUN_ALTITUDE_DEG.civil)];
  return { date, noon, sun, civil, words: lightWords(sun, civil) };
}

function assertSite({ latitudeDeg, longitudeDeg, utcOffsetHours }: Site): void {
  const check = (name: string, value: number, most: number): void => {
    if (!(Math.abs(value) <= most))
      throw new RangeError(`${name} is ${value}, expected −${most} to ${most}`);
  };
  check('latitude', latitudeDeg, 90);
  check('longitude', longitudeDeg, 180);
  check('offset from UTC in hours', utcOffsetHours, 15);
}

/** When the sun crosses the meridian on the date, nearest to 12:00 of the clock. */
function transitNear(midnight: number, site: Site): number {
  let at = DAY / 2;
  for (let turn = 0; turn < 4; turn++)
    at -= (hourAngleDeg(midnight + at, site.longitudeDeg) / 360) * DAY;
  return at;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Where `value` is largest within two hours of `middle`, to a second (golden section). */
function extreme(value: (at: number) => number, middle: number): number {
  let [low, high] = [middle - 7200, middle + 7200];
  while (high - low > 1) {
    const [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    if (value(a) >= value(b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}

function crossings(
  altitude: (at: number) => number,
  least: number,
  [before, noon, after]: readonly [number, number, number],
): Above {
  if (altitude(noon) < least) return { is: 'never', from: null, to: null };
  const from = altitude(before) < least ? bisected(altitude, least, before, noon) : null;
  const to = altitude(after) < least ? bisected(altitude, least, after, noon) : null;
  return { is: from === null && to === null ? 'always' : 'part', from, to };
}

/** Where the altitude passes `least` between a time under it and one over it, to a tenth of a second. */
function bisected(
  altitude: (at: number) => number,
  least: number,
  under: number,
  over: number,
): number {
  let [a, b] = [under, over];
  while (Math.abs(b - a) > 0.1) {
    const middle = (a + b) / 2;
    if (altitude(middle) < least) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

function lightWords(sun: Above, civil: Above): string {
  const time = (at: number | null): string => (at === null ? '—' : clockTime(at));
  const twilight = `civil twilight ${time(civil.from)} to ${time(civil.to)}`;
  if (civil.is === 'never') return 'Polar night: no daylight and no civil twilight on this date.';
  if (sun.is === 'never')
    return civil.is === 'always'
      ? 'The sun does not rise, and civil twilight lasts all day.'
      : `The sun does not rise: ${twilight} only.`;
  if (sun.is === 'always') return 'Polar day: the sun does not set.';
  const up = `Sunrise ${time(sun.from)}, sunset ${time(sun.to)}`;
  return civil.is === 'always' ? `${up}; it does not get dark.` : `${up}; ${twilight}.`;
}
