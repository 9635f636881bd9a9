// Which way up: turns a shell about its centre so that a hub, a seam or a place is the crown.

import { assertNumber } from '../math/doors.ts';
import {
  add,
  cross,
  dot,
  normalize,
  pointAt,
  rotateAbout,
  scale,
  subtract,
  type Vec3,
} from '../math/vector.ts';
import { endHubAt, hubPoint, placeNormal } from './geometry.ts';
import type { HubId, PlaceId, SeamId, SideId } from './ids.ts';
import { hubAt, hubCount, type Shell } from './shell.ts';

/** What is uppermost, named by one side, which also says where the datum lies: the hub that the
 * side starts from, datum along the side; the seam of the side, datum along it; or the place of
 * the side, datum towards the middle of the side. */
export interface Crown {
  readonly at: 'hub' | 'seam' | 'place';
  readonly side: SideId;
  /** Absent: what is named is uppermost. Else the shell leans, and what is uppermost lies off it. */
  readonly lean?: Lean;
}

/** How far off its crown a shell is up. */
export interface Lean {
  /** Angle from the crown named to what is uppermost, radians, 0 … a quarter turn. */
  readonly by: number;
  /** Which way that lies from the crown, radians anticlockwise seen from above from its datum. */
  readonly towards: number;
}

/** The crown at a hub, datum along the lowest side that starts there. Throws for a loose hub. */
export function crownAtHub(shell: Shell, hub: HubId): Crown {
  const side = shell.sideHub.indexOf(hub);
  if (side < 0) throw new Error(`hub ${hub} has no place`);
  return { at: 'hub', side: side as SideId };
}

/** The crown at the middle of a seam, datum along its lower side. */
export const crownAtSeam = (shell: Shell, seam: SeamId): Crown => ({
  at: 'seam',
  side: shell.seams[2 * seam] as SideId,
});

/** The crown at a place, which then lies level, datum towards its first side. */
export const crownAtPlace = (shell: Shell, place: PlaceId): Crown => ({
  at: 'place',
  side: shell.placeStart[place] as SideId,
});

/** The shell turned so that the crown is up (+z) and the datum towards +x. `datumTurn` moves the
 * datum on from the crown's own by that angle, radians, anticlockwise seen from above; RangeError
 * where it is no number. */
export function orientShell(shell: Shell, crown: Crown, datumTurn = 0): Shell {
  assertNumber('datumTurn', datumTurn);
  const { up, datum } = crownAxes(shell, crown);
  const x = rotateAbout(datum, up, datumTurn);
  return { ...shell, hubs: inAxes(shell, x, cross(up, x), up) };
}

/** Where a crown's way up and its datum lie in the shell as it is: unit vectors at right angles. Of a crown
 * that leans the datum is the crown's own, made level; it must not be what comes up. */
export function crownAxes(shell: Shell, crown: Crown): { readonly up: Vec3; readonly datum: Vec3 } {
  const from = hubPoint(shell, hubAt(shell, crown.side));
  const to = hubPoint(shell, endHubAt(shell, crown.side));
  const middle = scale(add(from, to), 0.5);
  const place = shell.sidePlace[crown.side] as PlaceId;
  const up =
    crown.at === 'hub'
      ? normalize(from)
      : crown.at === 'seam'
        ? normalize(middle)
        : placeNormal(shell, place);
  const towards = crown.at === 'place' ? middle : subtract(to, from);
  const datum = level(towards, up);
  if (!crown.lean) return { up, datum };
  const { by, towards: turn } = crown.lean;
  const aside = rotateAbout(datum, up, turn);
  const leaned = add(scale(up, Math.cos(by)), scale(aside, Math.sin(by)));
  return { up: leaned, datum: level(datum, leaned) };
}

/** The part of a direction that is square to `up`, as a unit vector. */
const level = (way: Vec3, up: Vec3): Vec3 => normalize(subtract(way, scale(up, dot(way, up))));

/** Hub positions in the frame of three unit axes. */
function inAxes(shell: Shell, x: Vec3, y: Vec3, z: Vec3): Float64Array {
  const out = new Float64Array(shell.hubs.length);
  for (let h = 0; h < hubCount(shell); h++) {
    const p = pointAt(shell.hubs, h);
    out[3 * h] = dot(p, x);
    out[3 * h + 1] = dot(p, y);
    out[3 * h + 2] = dot(p, z);
  }
  return out;
}
