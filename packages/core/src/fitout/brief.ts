// What the fit-out's answers take from elsewhere in the project, and the frame that they share.

import type { ForecastHour } from '../crew/schema.ts';
import { type Read, refuse } from '../measure/fault.ts';
import { hubPoint } from '../shell/geometry.ts';
import type { HubId } from '../shell/ids.ts';
import { baseRing } from '../shell/rims.ts';
import { hubCount, type Shell } from '../shell/shell.ts';
import type { Mount } from './dish.ts';
import type { FitoutSettings } from './schema.ts';

/** What the answer takes from elsewhere in the project. */
export interface FitoutBrief {
  readonly shell: Shell;
  /** Numbers of the places. */
  readonly numbers: readonly string[];
  /** The order in which places are filled. */
  readonly order: readonly number[];
  /** Where the wind mostly comes from, radians from the datum. */
  readonly windFrom: number;
  /** Snow on the ground that the snow check was made for, pascals; null: none. */
  readonly snow: number | null;
  readonly stepDeg: number;
  /** The project's forecast, for hours to seal in where the fit-out has no weather of its own. */
  readonly forecast?: readonly ForecastHour[];
}

/** Height of the floor: the lowest hub of the base ring, or of all. */
export function floorOf(shell: Shell): number {
  const ring = baseRing(shell);
  if (ring !== null) return ring.z.min;
  let least = Number.POSITIVE_INFINITY;
  for (let h = 0; h < hubCount(shell); h++) least = Math.min(least, hubPoint(shell, h as HubId)[2]);
  return least;
}

/** Degrees as radians. */
export const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** The mount of the settings, in radians. */
export const mountOf = ({ mount }: FitoutSettings): Mount => ({
  kind: mount.kind,
  height: mount.height,
  aside: mount.aside,
  lowest: radians(Math.min(mount.lowestDeg, mount.highestDeg)),
  highest: radians(Math.max(mount.lowestDeg, mount.highestDeg)),
  azimuth: radians(mount.azimuthDeg),
  latitude: radians(mount.latitudeDeg),
  hourAngle: radians(mount.hourAngleDeg),
});

/** Places left open: those that a decision leaves out and those of the fit-out's door, ascending; or the
 * numbers of the door that no place has. */
export function openPlaces(
  numbers: readonly string[],
  leftOut: readonly number[],
  { door }: Pick<FitoutSettings, 'door'>,
): Read<number[]> {
  const missing = door.filter((number) => !numbers.includes(number));
  if (missing.length > 0)
    return refuse('fitout.door', missing.join(', '), 'numbers of places that stand');
  const own = door.map((number) => numbers.indexOf(number));
  return { ok: true, value: [...new Set([...leftOut, ...own])].sort((a, b) => a - b) };
}
