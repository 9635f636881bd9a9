// Rows of `kinds` as a person would write them: each kind of a shell from any of its sides on, read
// once from outside with an error, to the tenth of a millimetre. Every row keeps what is true.

import { turned } from '../../src/math/cyclic.ts';
import type { Random } from '../../src/math/random.ts';
import { describeFault } from '../../src/measure/fault.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import { readPile } from '../../src/pile/check.ts';
import type { Pile } from '../../src/pile/schema.ts';
import type { Base } from './bases.ts';

/** A kind as written and as it is. Sides in the order of the row, as if seen from outside. */
export interface Written {
  readonly id: string;
  readonly sides: readonly number[];
  readonly truth: readonly number[];
  /** Index in the shell's kinds, −1 where it belongs to none. */
  readonly kind: number;
  /** Which side of that kind the first of these is. */
  readonly from: number;
  /** Panels good, or null where nobody counted. */
  readonly good: number | null;
}

/** Lengths to a tenth of a millimetre. */
export const written = (length: number): number => Number(length.toFixed(4));

/** Every kind of a shell once, in random order, ids `k1`, `k2` …; counts as given by kind. */
export function rowsOf(
  { net, sd }: Pick<Base, 'net' | 'sd'>,
  random: Random,
  counts: readonly number[] | null,
  letter = 'k',
): Written[] {
  const order = random.shuffle(net.kinds.map((_, k) => k));
  return order.map((kind, i) => {
    const own = (net.kinds[kind] as NetShell['kinds'][number]).sides;
    const from = random.below(own.length);
    const truth = turned(own, from);
    const sides = truth.map((side) => written(side + sd * random.normal()));
    const good = counts ? (counts[kind] as number) : null;
    return { id: `${letter}${i + 1}`, sides, truth, kind, from, good };
  });
}

/** A row of the file. */
export const rowOf = ({ id, sides, good }: Written) => ({
  id,
  sides: [...sides],
  seenFrom: 'outside' as const,
  ...(good === null ? {} : { good }),
});

/** Counts of the whole shell in half of the piles, none in the others. */
export const maybeCounts = (net: NetShell, random: Random): number[] | null =>
  random.uniform() < 0.5 ? net.kinds.map(({ count }) => count) : null;

/** The pile of a raw section; throws its faults, of which a generator must make none. */
export function pileOf(raw: object): Pile {
  const read = readPile(raw);
  if (!read.ok) throw new Error(read.faults.map(describeFault).join('\n'));
  return read.value;
}
