// Seeded heaps of panels for tests: kinds with their true sides, turned at random, read with noise.

import { turned } from '../../src/math/cyclic.ts';
import { seededRandom } from '../../src/math/random.ts';
import { describeFault } from '../../src/measure/fault.ts';
import { readPile } from '../../src/pile/check.ts';
import { fromOtherFace } from '../../src/pile/polygon.ts';
import type { Pile } from '../../src/pile/schema.ts';

/** A true kind: its sides anticlockwise from outside, metres, and its number of panels. */
export type True = readonly [sides: readonly number[], count: number];

export interface HeapOptions {
  readonly seed: number;
  /** Noise of one side, metres; what the file states unless `stated` is given. */
  readonly sd: number;
  readonly stated?: number;
  /** Share of readings from inside, and of readings whose face nobody noted. */
  readonly inside?: number;
  readonly unknown?: number;
  /** Share of readings with one side an inch off. */
  readonly blunders?: number;
}

/** A pile and, for each of its readings, the index of its true kind. */
export interface Heap {
  readonly pile: Pile;
  readonly truth: readonly number[];
}

/** The pile of a raw section that must be without fault. */
export function pileOf(raw: object): Pile {
  const read = readPile(raw);
  if (!read.ok) throw new Error(read.faults.map(describeFault).join('\n'));
  return read.value;
}

/** One reading a panel, in random order. */
export function heapOf(kinds: readonly True[], options: HeapOptions): Heap {
  const random = seededRandom(options.seed);
  const rows = kinds.flatMap(([sides, count], kind) =>
    Array.from({ length: count }, () => {
      const read = turned(sides, random.below(sides.length)).map(
        (x) => x + options.sd * random.normal(),
      );
      if (random.uniform() < (options.blunders ?? 0)) {
        const side = random.below(sides.length);
        read[side] = (read[side] as number) + 0.0254;
      }
      const face = random.uniform();
      const unknown = face < (options.unknown ?? 0);
      const inside = unknown
        ? random.uniform() < 0.5
        : face < (options.unknown ?? 0) + (options.inside ?? 0);
      const seenFrom = unknown ? 'unknown' : inside ? 'inside' : 'outside';
      return { kind, row: { sides: inside ? fromOtherFace(read) : read, seenFrom } };
    }),
  );
  const order = random.shuffle(rows);
  return {
    pile: pileOf({
      readingSd: options.stated ?? options.sd,
      readings: order.map(({ row }) => row),
    }),
    truth: order.map(({ kind }) => kind),
  };
}

/** Kinds of an invented ball of radius 4 m whose sides 1.181 and 1.1781 are 0.24 % apart. */
export const nearEqual: readonly True[] = [
  [[1.0127, 1.0127, 1.181], 60],
  [[1.181, 1.181, 1.1781], 60],
  [[1.2515, 1.2515, 1.1781], 60],
  [[1.2997, 1.2997, 1.2997], 20],
  [[1.2515, 1.2997, 1.1944], 60],
  [[1.1944, 1.2997, 1.2515], 60],
  [[1.2515, 1.2515, 1.181], 60],
  [[1.1944, 1.1944, 1.2515], 60],
  [[1.0127, 1.181, 1.1781], 60],
  [[1.0127, 1.1781, 1.181], 60],
  [[1.1944, 1.1944, 1.1944], 20],
];
