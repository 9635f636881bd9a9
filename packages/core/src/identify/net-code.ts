// When two nets are one: sides are sorted into classes by what is seen from them, first their own
// label and the number of corners around their hub, then round by round what their neighbours saw,
// until no class splits any more. On a sphere two sides end in one class exactly where a rotation lays
// one on the other, within a net or between two: laying a neighbourhood on its like goes on around
// every hub, as their corners are as many, and a sphere has no way round. So the classes with their
// sizes are a complete code.

import type { SideId } from '../shell/ids.ts';
import { nextSide, type Shell } from '../shell/shell.ts';

/** Classes of sides that see the same net. */
export interface NetCode {
  /** Equal for two nets exactly where one can be laid on the other with its labels. */
  readonly code: string;
  /** Side → the lowest side of its class. */
  readonly leader: Int32Array;
}

/** The code of a closed net under labels of its sides (whole numbers). Hashes of 64 bits stand for
 * the classes: two that differ meet in one by chance once in 10¹². */
export const netCode = (shell: Shell, labels: ArrayLike<number>): NetCode =>
  sidesCode({
    next: Int32Array.from(shell.mate, (_, s) => nextSide(shell, s as SideId)),
    mate: shell.mate,
    labels,
  });

/** Sides of a whole or folded net: side → the next of its panel, its mate (−1 where open), label. */
export interface LinkedSides {
  readonly next: ArrayLike<number>;
  readonly mate: ArrayLike<number>;
  readonly labels: ArrayLike<number>;
  /** Side → how often the corners at its hub go round when unfolded; absent: once everywhere. */
  readonly hubAxis?: ArrayLike<number>;
}

/** The code of a closed net by its sides alone. A folded net has the classes of the whole one. */
export function sidesCode(sides: LinkedSides): NetCode {
  const labels = cornersAround(sides).map((corners, s) => mix(corners, sides.labels[s] as number));
  let high: Int32Array = labels.map((label) => mix(label, 0x2545f491));
  let low: Int32Array = labels.map((label) => mix(label, 0x1b873593));
  let classes = 0;
  for (let settled = false; !settled; ) {
    high = looked(high, sides, 0x85ebca6b);
    low = looked(low, sides, 0xc2b2ae35);
    const count = new Set(Array.from(high, (h, s) => keyOf(h, low[s] as number))).size;
    settled = count === classes;
    classes = count;
  }
  return summary(high, low);
}

/** Side → number of corners around the hub where it starts, 0 where its run is open. */
function cornersAround({ next, mate, hubAxis }: LinkedSides): Int32Array {
  const corners = new Int32Array(mate.length).fill(-1);
  for (let start = 0; start < corners.length; start++) {
    if ((corners[start] as number) >= 0) continue;
    const run: number[] = [];
    let side = start;
    do {
      run.push(side);
      const across = mate[side] as number;
      side = across < 0 ? -1 : (next[across] as number);
    } while (side >= 0 && side !== start);
    const closed = side === start;
    for (const s of run) corners[s] = closed ? run.length * (hubAxis?.[start] ?? 1) : 0;
  }
  return corners;
}

/** What each side sees: itself, the next side and its mate. */
function looked(seen: Int32Array, { next, mate }: LinkedSides, salt: number): Int32Array {
  return seen.map((own, s) => {
    const across = (mate[s] as number) < 0 ? 0x3c6ef372 : (seen[mate[s] as number] as number);
    return mix(mix(mix(salt, own), seen[next[s] as number] as number), across);
  });
}

/** One step of a multiply-and-shift hash (constants of MurmurHash3, A. Appleby, public domain). */
function mix(state: number, value: number): number {
  let h = Math.imul(state ^ Math.imul(value, 0xcc9e2d51), 0x85ebca6b);
  h ^= h >>> 13;
  h = Math.imul(h, 0xc2b2ae35);
  return h ^ (h >>> 16);
}

const keyOf = (high: number, low: number): number => (high >>> 0) * 0x200000 + (low >>> 11);

function summary(high: Int32Array, low: Int32Array): NetCode {
  const first = new Map<number, number>();
  const sizes = new Map<number, number>();
  const leader = high.map((h, s) => {
    const key = keyOf(h, low[s] as number);
    if (!first.has(key)) first.set(key, s);
    sizes.set(key, (sizes.get(key) ?? 0) + 1);
    return first.get(key) as number;
  });
  const rows = [...sizes].sort(([a], [b]) => a - b);
  return { code: rows.map(([key, size]) => `${key}:${size}`).join(' '), leader };
}
