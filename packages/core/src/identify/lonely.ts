// What cannot be met: sides that no other side is as long as, kinds of which there are hardly any,
// kinds of another scale. It says where to look first for what is wrong with a pile.

import type { Kind } from '../pile/kind.ts';
import { FINEST_SD } from './side-belief.ts';

/** A side of a kind, both by index. */
export interface KindSide {
  readonly kind: number;
  readonly side: number;
}

/** Two sides may be of one length within this many deviations of their difference. */
const MEET = 3.5;

/** The sides that no other side of any kind is as long as, the shortest first. A true one may meet its
 * like in another panel of its own kind. */
export function lonelySides(kinds: readonly Kind[]): KindSide[] {
  const all = kinds.flatMap((one, kind) => one.sides.map((_, side) => ({ kind, side })));
  const lengthOf = ({ kind, side }: KindSide): number => kinds[kind]?.sides[side] as number;
  return all
    .filter((a) => !all.some((b) => b !== a && mayMeet(kinds, a, b)))
    .sort((a, b) => lengthOf(a) - lengthOf(b));
}

function mayMeet(kinds: readonly Kind[], a: KindSide, b: KindSide): boolean {
  const [p, q] = [kinds[a.kind] as Kind, kinds[b.kind] as Kind];
  const off = (p.sides[a.side] as number) - (q.sides[b.side] as number);
  return Math.abs(off) <= MEET * Math.hypot(sdOf(p, a.side), sdOf(q, b.side));
}

const sdOf = (kind: Kind, side: number): number =>
  Math.max(kind.sideSds[side] as number, FINEST_SD);

/** A kind is hardly there with so many panels or fewer, where half of all kinds have this many times
 * as many: whatever turns a ball, no kind of it is so rare. */
const HARDLY = 5;
const TIMES = 4;

/** Kinds (by index) that are hardly there, by their counts. */
export const rareKinds = (kinds: readonly Kind[]): number[] => scarcerThan(kinds, TIMES);

/** Kinds (by index) of which there is less than half of what is usual, and but a few: where little was
 * read of each kind, those may be slips. */
export const fewKinds = (kinds: readonly Kind[]): number[] => scarcerThan(kinds, 2.01);

function scarcerThan(kinds: readonly Kind[], times: number): number[] {
  const counted = kinds.filter((kind) => kind.counted);
  if (counted.length < 2) return [];
  // Odd panels may be as many kinds as the ball has: the usual count is that of the larger half.
  const counts = counted.map(countOf).sort((a, b) => b - a);
  const usual = median(counts.slice(0, Math.ceil(counts.length / 2)));
  return kinds.flatMap((kind, k) =>
    kind.counted && countOf(kind) <= HARDLY && times * countOf(kind) <= usual ? [k] : [],
  );
}

const countOf = ({ good, repair, scrap }: Kind): number => good + repair + scrap;

/** Factors between what was read and what was written down. */
const UNITS = [2.54, 1 / 2.54, 10, 0.1, 0.3048, 1 / 0.3048, 25.4, 1 / 25.4, 12, 1 / 12];
/** Panels of one shell differ by less than this factor in their mean side. */
const LIKE = 1.7;

/** The sides of a kind in the unit that makes it a panel like the others; null where it is one. */
export function inUnitOfOthers(kinds: readonly Kind[], k: number): number[] | null {
  const usual = median(kinds.map(meanSide));
  const kind = kinds[k] as Kind;
  const ratio = usual / meanSide(kind);
  if (ratio < LIKE && ratio > 1 / LIKE) return null;
  const found = UNITS.filter((unit) => ratio / unit < LIKE && ratio / unit > 1 / LIKE);
  const best = found
    .map((unit) => ({ unit, met: sidesMet(kinds, k, unit) }))
    .sort((a, b) => b.met - a.met)[0];
  return best ? kind.sides.map((x) => x * best.unit) : null;
}

const meanSide = ({ sides }: Kind): number => sides.reduce((sum, x) => sum + x, 0) / sides.length;

/** How many of a kind's sides others are as long as when it is read in another unit. */
function sidesMet(kinds: readonly Kind[], k: number, unit: number): number {
  const changed = kinds.map((kind, i) =>
    i === k ? { ...kind, sides: kind.sides.map((x) => x * unit) } : kind,
  );
  const own = changed[k] as Kind;
  return own.sides.length - lonelySides(changed).filter(({ kind }) => kind === k).length;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const high = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? high : (high + (sorted[middle - 1] ?? high)) / 2;
}
