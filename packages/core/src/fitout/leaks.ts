// Where a leak comes from. Water gets in somewhere above and runs down along seams inside until it drips:
// of the seam where it shows, every seam that leads down to it may be the one. Nearest first; where
// several leaks are told, first those that can be behind the most of them.

import type { Shell } from '../shell/shell.ts';
import { type LyingSeam, lyingSeams } from './seams.ts';

/** A seam that may be where water gets in. */
export interface LeakPath {
  readonly seam: number;
  /** Indices of the leaks that it may feed. */
  readonly leaks: readonly number[];
  /** Metres down along seams to the middle of the nearest of them; 0 for the seam where water shows. */
  readonly along: number;
}

/** Seams from which water can run down along seams to leaks seen at seams; a level seam leads both ways.
 * RangeError for a seam that the shell has not. */
export function leakPaths(shell: Shell, seenAt: readonly number[]): LeakPath[] {
  const seams = lyingSeams(shell);
  const best = new Map<number, { leaks: number[]; along: number }>();
  seenAt.forEach((seam, leak) => {
    if (seams[seam] === undefined)
      throw new RangeError(`leak at seam ${seam}, the shell has ${seams.length} seams`);
    for (const [source, along] of uphill(seams, seam, shell.radius)) {
      const known = best.get(source);
      if (known === undefined) best.set(source, { leaks: [leak], along });
      else {
        known.leaks.push(leak);
        known.along = Math.min(known.along, along);
      }
    }
  });
  return [...best]
    .map(([seam, { leaks, along }]) => ({ seam, leaks, along }))
    .sort((a, b) => b.leaks.length - a.leaks.length || a.along - b.along || a.seam - b.seam);
}

/** A rise under this share of the radius is level. */
const LEVEL = 1e-9;

/** Seam → shortest way down along seams to where water shows. */
function uphill(seams: readonly LyingSeam[], seen: number, radius: number): Map<number, number> {
  const feeding = new Map<number, LyingSeam[]>();
  const add = (hub: number, seam: LyingSeam): void => {
    feeding.set(hub, [...(feeding.get(hub) ?? []), seam]);
  };
  for (const seam of seams) {
    add(seam.low, seam);
    if (seam.rise <= LEVEL * radius) add(seam.high, seam);
  }
  const way = new Map<number, number>([[seen, 0]]);
  const reached = new Map<number, number>();
  const front: { hub: number; along: number }[] = entries(seams[seen], radius).map((hub) => ({
    hub,
    along: seams[seen].length / 2,
  }));
  while (front.length > 0) {
    front.sort((a, b) => b.along - a.along);
    const { hub, along } = front.pop() as { hub: number; along: number };
    if (reached.has(hub)) continue;
    reached.set(hub, along);
    for (const seam of feeding.get(hub) ?? []) {
      if (!way.has(seam.seam)) way.set(seam.seam, along);
      const far = seam.low === hub ? seam.high : seam.low;
      front.push({ hub: far, along: along + seam.length });
    }
  }
  return way;
}

/** The hubs that water on a seam may have come by. */
const entries = ({ low, high, rise }: LyingSeam, radius: number): number[] =>
  rise <= LEVEL * radius ? [low, high] : [high];
