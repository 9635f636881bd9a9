// What a clause asks of its numbers before it reckons: finite and within its range.

/** Throws RangeError where a number is not finite or not from `least` to `most`; the message names
 * it, its value and what is allowed.
 * Source: none, limits are the caller's. */
export function assertBetween(
  name: string,
  value: number,
  least: number,
  most: number,
  unit = '',
): void {
  if (value >= least && value <= most) return;
  const tail = unit === '' ? '' : ` ${unit}`;
  throw new RangeError(`${name} is ${value}${tail}, expected ${least} to ${most}${tail}`);
}

/** The strongest gust taken, m/s: the strongest ever measured near the ground was 113 m/s (Barrow
 * Island, 1996, from memory). */
export const MOST_WIND = 115;

/** The weakest wind that a load is reckoned for, m/s: below it there is no wind to speak of, and a
 * design wind of 0 is a slip. */
export const LEAST_WIND = 0.5;

/** Throws RangeError where a wind is no speed to reckon with.
 * Source: none, limits catch slips. */
export const assertWind = (name: string, speed: number): void =>
  assertBetween(name, speed, LEAST_WIND, MOST_WIND, 'm/s');

/** Lowest and highest ground, metres above the sea: the Dead Sea's shore and above any village. */
export const ALTITUDE = { least: -450, most: 6000 } as const;

/** Largest radius of a shell and tallest point above the ground that loads are reckoned for, m. */
export const MOST_LENGTH = 100;
