// The seams of a standing shell as water meets them: length, how high, which of its two panels is the
// upper one, and what is kept of them. Frame of the shell, metres.

import { norm, subtract } from '../math/vector.ts';
import { endHubAt, hubPoint, placeCentre } from '../shell/geometry.ts';
import type { HubId, PlaceId, SideId } from '../shell/ids.ts';
import { hubAt, placeAt, type Shell, seamCount } from '../shell/shell.ts';

/** A seam as it lies on the standing shell. */
export interface LyingSeam {
  readonly seam: number;
  readonly length: number;
  /** Its hubs, the lower first (of level ones the lower index). */
  readonly low: number;
  readonly high: number;
  /** Height of the middle, and rise from the lower hub to the higher. */
  readonly middle: number;
  readonly rise: number;
  /** The two places, the one that laps over (whose middle is higher) first. */
  readonly over: number;
  readonly under: number;
}

/** All seams, in their order. */
export function lyingSeams(shell: Shell): LyingSeam[] {
  return Array.from({ length: seamCount(shell) }, (_, seam): LyingSeam => {
    const [a, b] = [shell.seams[2 * seam] as SideId, shell.seams[2 * seam + 1] as SideId];
    const ends: [HubId, HubId] = [hubAt(shell, a), endHubAt(shell, a)];
    const [low, high] = byHeight(shell, ends);
    const [from, to] = [hubPoint(shell, low), hubPoint(shell, high)];
    const places = [placeAt(shell, a), placeAt(shell, b)];
    const z = places.map((place) => placeCentre(shell, place as PlaceId)[2]);
    const upper = z[0] >= z[1] ? 0 : 1;
    return {
      seam,
      length: norm(subtract(to, from)),
      low,
      high,
      middle: (from[2] + to[2]) / 2,
      rise: to[2] - from[2],
      over: places[upper],
      under: places[1 - upper],
    };
  });
}

/** Heights nearer than this share of the radius are one: rounding. */
const LEVEL = 1e-9;

function byHeight(shell: Shell, [a, b]: [HubId, HubId]): [HubId, HubId] {
  const rise = hubPoint(shell, b)[2] - hubPoint(shell, a)[2];
  if (Math.abs(rise) > LEVEL * shell.radius) return rise > 0 ? [a, b] : [b, a];
  return a < b ? [a, b] : [b, a];
}

/** The order in which strips go on outside so that upper ones lap over lower ones: seams from the lowest
 * middle up. Where two strips meet at a hub the one that comes from further down goes under: its middle
 * is the lower one. Level with each other: by index. */
export const shingleOrder = (shell: Shell): number[] =>
  lyingSeams(shell)
    .sort((a, b) =>
      Math.abs(a.middle - b.middle) > LEVEL * shell.radius ? a.middle - b.middle : a.seam - b.seam,
    )
    .map(({ seam }) => seam);

/** A pair of strips that lap the wrong way at a hub: water that runs down `upper` gets behind `lower`. */
export interface WrongLap {
  readonly hub: number;
  readonly upper: number;
  readonly lower: number;
}

/** The laps of an order of strips that are the wrong way: at each hub, a strip from above that went on
 * before one that leads down. Seams not in the order are passed over. */
export function wrongLaps(shell: Shell, order: readonly number[]): WrongLap[] {
  const at = new Map(order.map((seam, i) => [seam, i]));
  const from = new Map<number, LyingSeam[]>();
  for (const seam of lyingSeams(shell))
    if (at.has(seam.seam) && seam.rise > LEVEL * shell.radius)
      for (const hub of [seam.low, seam.high]) from.set(hub, [...(from.get(hub) ?? []), seam]);
  const wrong: WrongLap[] = [];
  for (const [hub, seams] of [...from].sort(([a], [b]) => a - b))
    for (const upper of seams.filter(({ low }) => low === hub))
      for (const lower of seams.filter(({ high }) => high === hub))
        if ((at.get(upper.seam) as number) < (at.get(lower.seam) as number))
          wrong.push({ hub, upper: upper.seam, lower: lower.seam });
  return wrong;
}
