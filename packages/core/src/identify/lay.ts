// Lays a net whose topology is known on its sphere: the first place anywhere, every other against
// a seam of one that lies already.

import { add, dot, normalize, pointAt, scale, subtract, type Vec3 } from '../math/vector.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import {
  hubAt,
  kindSide,
  mateOf,
  nextSide,
  placeAt,
  placeCount,
  type Shell,
  sidesOf,
} from '../shell/shell.ts';
import { chordToArc } from '../sphere/chord.ts';
import { placeCorners } from '../sphere/place.ts';

/** The shell laid anew with these sides (kind → lengths) and radius, metres; null where a panel
 * can't be laid. Places not reached across seams keep their hubs. */
export function layShell(
  shell: Shell,
  sides: readonly (readonly number[])[],
  radius: number,
): Shell | null {
  const hubs = Float64Array.from(shell.hubs, (x) => (x * radius) / shell.radius);
  const known = new Uint8Array(hubs.length / 3);
  const laid = new Uint8Array(placeCount(shell));
  const queue: SideId[] = [];
  const put = (hub: number, point: Vec3): void => {
    if (known[hub]) return;
    known[hub] = 1;
    hubs.set(point, 3 * hub);
  };
  const lay = (entry: SideId): boolean => {
    const place = placeAt(shell, entry);
    if (laid[place]) return true;
    laid[place] = 1;
    const round = roundFrom(shell, entry);
    const own = sides[shell.kind[place] as number] as readonly number[];
    const corners = placeCorners(
      pointAt(hubs, hubAt(shell, entry)),
      pointAt(hubs, hubAt(shell, nextSide(shell, entry))),
      round.map((side) => own[kindSide(shell, side)] as number),
      radius,
    );
    if (!corners.ok) return false;
    for (const [i, side] of round.entries()) put(hubAt(shell, side), corners.corners[i] as Vec3);
    queue.push(...round);
    return true;
  };
  const [start] = sidesOf(shell, 0 as PlaceId) as [SideId];
  const length = (sides[shell.kind[0] as number] as readonly number[])[kindSide(shell, start)];
  const [from, to] = [hubAt(shell, start), hubAt(shell, nextSide(shell, start))];
  hubs.set(alongArc(pointAt(hubs, from), pointAt(hubs, to), length as number, radius), 3 * to);
  if (!lay(start)) return null;
  for (let i = 0; i < queue.length; i++) {
    const mate = mateOf(shell, queue[i] as SideId);
    if (mate !== null && !lay(mate)) return null;
  }
  return { ...shell, radius, hubs };
}

function roundFrom(shell: Shell, entry: SideId): SideId[] {
  const round: SideId[] = [entry];
  for (let s = nextSide(shell, entry); s !== entry; s = nextSide(shell, s)) round.push(s);
  return round;
}

/** The point on the sphere from `from` towards `to`, a chord away. */
function alongArc(from: Vec3, to: Vec3, chord: number, radius: number): Vec3 {
  const up = normalize(from);
  const along = normalize(subtract(to, scale(up, dot(up, to))));
  const arc = chordToArc(chord, radius);
  return add(scale(up, radius * Math.cos(arc)), scale(along, radius * Math.sin(arc)));
}
