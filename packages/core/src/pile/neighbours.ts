// Panels near each other in every side, in some turn: what is not linked so, noise cannot mix up, and
// it is looked at by itself.

import { joinInto, rootInto, singletons } from '../math/sets.ts';
import type { Item, Seed } from './mixture.ts';
import { NEIGHBOUR_Z } from './tolerances.ts';

/** Panels and stated kinds that noise may mix up. */
export interface Component {
  readonly items: Item[];
  /** Indices of the stated kinds among them, in order. */
  readonly stated: number[];
}

/** Items and stated kinds linked by nearness in every side; the readings of a panel are linked. */
export function components(
  items: readonly Item[],
  stated: readonly Seed[],
  sd: number,
): Component[] {
  const nodes = [
    ...items.flatMap((item, p) => item.readings.map((reading) => ({ owner: p, reading }))),
    ...stated.map((seed, s) => ({
      owner: items.length + s,
      reading: { sides: Float64Array.from(seed.sides), ways: 1, bias: 0 },
    })),
  ].map((node) => ({ ...node, first: firstWay(node.reading.sides, node.reading.ways) }));
  nodes.sort((a, b) => a.first.sum - b.first.sum || a.owner - b.owner);
  const linked = singletons(items.length + stated.length);
  const reach = NEIGHBOUR_Z * sd;
  nodes.forEach((a, i) => {
    for (let j = i + 1; j < nodes.length; j++) {
      const b = nodes[j] as typeof a;
      if (b.first.sum - a.first.sum > reach * a.first.sides.length) break;
      if (rootInto(linked, a.owner) === rootInto(linked, b.owner)) continue;
      const near =
        a.reading.ways === 1
          ? nearAnyWay(b.reading, a.first.sides, reach)
          : nearAnyWay(a.reading, b.first.sides, reach) ||
            nearAnyWay(b.reading, a.first.sides, reach);
      if (near) joinInto(linked, a.owner, b.owner);
    }
  });
  const parts = new Map<number, Component>();
  const part = (i: number): Component => {
    const at = rootInto(linked, i);
    const known = parts.get(at) ?? { items: [], stated: [] };
    parts.set(at, known);
    return known;
  };
  items.forEach((item, p) => {
    part(p).items.push(item);
  });
  stated.forEach((_, s) => {
    part(items.length + s).stated.push(s);
  });
  return [...parts.values()];
}

/** The first way of a reading (as it was written), or the only one of a stated kind, and its sum. */
export function firstWay(all: Float64Array, ways: number): { sides: Float64Array; sum: number } {
  // A stated kind has one way, its own; a reading has a turn for each side and perhaps a mirror.
  const n = ways === 1 ? all.length : all.length / ways;
  const sides = all.subarray(0, n);
  return { sides, sum: sides.reduce((sum, x) => sum + x, 0) };
}

function nearAnyWay(
  reading: { sides: Float64Array; ways: number },
  other: Float64Array,
  reach: number,
): boolean {
  const n = other.length;
  for (let way = 0; way < reading.ways; way++) {
    let near = true;
    for (let i = 0; near && i < n; i++)
      near = Math.abs((reading.sides[way * n + i] as number) - (other[i] as number)) <= reach;
    if (near) return true;
  }
  return false;
}
