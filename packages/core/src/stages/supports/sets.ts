// Which lines are tried on a hub, and in which order.

import { dot, normalize, pointAt, subtract, type Vec3 } from '../../math/vector.ts';
import { MOST_LINE_SETS } from '../tolerances.ts';
import type { Line } from './gear.ts';

/** Sets of lines to try on a hub: each by itself, that which pulls most along `force` first; then
 * pairs and threes that pull against each other (a hub that can go one way is held by two whatever
 * pushes, one that can go two ways by three), those whose level parts come nearest to balance first. */
export function choices(hubs: Float64Array, lines: readonly Line[], force: Vec3): Line[][] {
  const ways = lines.map(({ to, hub }) => normalize(subtract(to, pointAt(hubs, hub))));
  const way = (k: number): Vec3 => ways[k] as Vec3;
  const sorted = [...lines.keys()].sort((a, b) => dot(way(b), force) - dot(way(a), force));
  const after = (k: number): number[] => sorted.slice(sorted.indexOf(k) + 1);
  const off = (set: readonly number[]): number =>
    Math.hypot(...[0, 1].map((x) => set.reduce((sum, k) => sum + (way(k)[x] as number), 0)));
  const best = (sets: number[][]): number[][] =>
    sets
      .map((set) => ({ set, off: off(set) }))
      .sort((a, b) => a.off - b.off)
      .slice(0, MOST_LINE_SETS)
      .map(({ set }) => set);
  const pairs = sorted.flatMap((a) => after(a).map((b) => [a, b]));
  const against = pairs.filter(([a, b]) => level(way(a as number), way(b as number)) < 0);
  const threes = pairs.flatMap(([a, b]) =>
    after(b as number).map((c) => [a as number, b as number, c]),
  );
  return [...sorted.map((k) => [k]), ...best(against), ...best(threes)].map((set) =>
    set.map((k) => lines[k] as Line),
  );
}

const level = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1];
