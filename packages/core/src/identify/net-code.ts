// When two nets are one: sides are sorted into classes by what is seen from them, first their own
// label, then round by round what their neighbours saw, until no class splits any more. On a closed
// surface without holes two sides end in one class exactly where a rotation lays one on the other,
// within a net or between two, so the classes with their sizes are a complete code.

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
}

/** The code of a closed net by its sides alone. A folded net has the classes of the whole one. */
export function sidesCode(sides: LinkedSides): NetCode {
  const labels = Int32Array.from(sides.labels);
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
