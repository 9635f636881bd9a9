// Where the sun stands: apparent place of low precision (0.01°) and its altitude over the horizon.
// Source: J. Meeus, Astronomical Algorithms, 2nd ed. 1998, chapters 12 (sidereal time), 13 and 25
// (solar coordinates, lower accuracy); from memory, held to his example 25.a and to another program.
// Neglected: the difference of terrestrial and universal time (70 s: 0.0003° of declination).

import { asin, toDegrees, toRadians } from '../math/angle.ts';

/** The sun as seen from the Earth's centre, degrees, apparent equator and equinox of date. */
export interface SolarPlace {
  readonly rightAscensionDeg: number;
  readonly declinationDeg: number;
  /** Apparent ecliptic longitude. */
  readonly longitudeDeg: number;
}

/** Julian day of 1970-01-01 00:00 UTC. */
const UNIX_EPOCH = 2_440_587.5;
const J2000 = 2_451_545;

/** The sun's apparent place at a time, seconds after 1970-01-01 00:00 UTC. Good to 0.01° from 1800 to
 * 2200. */
export function solarPlace(time: number): SolarPlace {
  const t = (UNIX_EPOCH + time / 86_400 - J2000) / 36_525;
  const meanLongitude = 280.46646 + 36_000.76983 * t + 0.0003032 * t * t;
  const anomaly = toRadians(357.52911 + 35_999.05029 * t - 0.0001537 * t * t);
  const centre =
    (1.914602 - 0.004817 * t - 0.000014 * t * t) * Math.sin(anomaly) +
    (0.019993 - 0.000101 * t) * Math.sin(2 * anomaly) +
    0.000289 * Math.sin(3 * anomaly);
  const node = nodeOf(t);
  const longitude = meanLongitude + centre - 0.00569 - 0.00478 * Math.sin(node);
  const tilt = obliquity(t) + toRadians(0.00256 * Math.cos(node));
  const l = toRadians(longitude);
  return {
    rightAscensionDeg: degrees360(toDegrees(Math.atan2(Math.cos(tilt) * Math.sin(l), Math.cos(l)))),
    declinationDeg: toDegrees(asin(Math.sin(tilt) * Math.sin(l))),
    longitudeDeg: degrees360(longitude),
  };
}

/** The sun's hour angle, degrees from −180 to 180, west positive, at a longitude (degrees, east
 * positive). 0 when it crosses the meridian. */
export function hourAngleDeg(time: number, longitudeDeg: number, place = solarPlace(time)): number {
  const days = UNIX_EPOCH + time / 86_400 - J2000;
  const t = days / 36_525;
  const nutation = -0.00478 * Math.sin(nodeOf(t)) * Math.cos(obliquity(t));
  const sidereal =
    280.46061837 + 360.98564736629 * days + 0.000387933 * t * t + nutation + longitudeDeg;
  return degrees360(sidereal - place.rightAscensionDeg + 180) - 180;
}

/** The altitude of the sun's middle over the level horizon, degrees, no refraction, seen from latitude
 * (north positive) and longitude (east positive), degrees. Parallax (0.0024°) is neglected. */
export function solarAltitudeDeg(time: number, latitudeDeg: number, longitudeDeg: number): number {
  const place = solarPlace(time);
  const [phi, delta] = [toRadians(latitudeDeg), toRadians(place.declinationDeg)];
  const hour = toRadians(hourAngleDeg(time, longitudeDeg, place));
  return toDegrees(
    asin(Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.cos(hour)),
  );
}

/** The Moon's ascending node, radians: for nutation. */
const nodeOf = (t: number): number => toRadians(125.04 - 1934.136 * t);

/** Mean obliquity of the ecliptic, radians. */
const obliquity = (t: number): number =>
  toRadians(23 + (26 + (21.448 - 46.815 * t - 0.00059 * t * t + 0.001813 * t ** 3) / 60) / 60);

const degrees360 = (x: number): number => x - 360 * Math.floor(x / 360);
