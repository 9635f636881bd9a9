// A whole person's tape that is off (a broken hook), known by kinds alone: where people measured
// different panels, the heap falls apart into kinds of one person and kinds of the others, alike but
// for one length on every side. Taken for the tape's fault only where several kinds agree on the
// length and chance would not make them.

import { fromOtherFace, nearestTurn } from './polygon.ts';
import { SHIFT_LOG_ODDS, SHIFT_REACH, SHIFT_Z } from './tolerances.ts';

/** A kind as it is compared: sides and deviations, metres. */
export interface ReadKind {
  readonly sides: readonly number[];
  readonly sds: readonly number[];
  /** Sides that may differ from each other. */
  readonly freeSides: number;
  /** Person (null: nobody noted) → number of readings. */
  readonly readings: ReadonlyMap<string | null, number>;
  /** Whether some reading's face is known. */
  readonly faceKnown: boolean;
}

/** What a person's tape adds to every length, as kinds tell. */
export interface KindShift {
  readonly by: string;
  /** Metres; positive: reads too long. */
  readonly shift: number;
  readonly sd: number;
  /** Pairs of kinds that agree on it. */
  readonly kinds: number;
}

/** Share of a person's readings that lie in kinds of theirs alone, and of these in kinds that agree
 * on the shift. */
const ALONE = 0.8;
const AGREE = 0.7;

/** The people whose tape is off, whoever read least first: of two the one who read more is taken to
 * be right. `people`: those to be judged. `sd`: noise of one side, metres. */
export function kindShifts(
  kinds: readonly ReadKind[],
  people: readonly string[],
  sd: number,
): KindShift[] {
  const read = (by: string): number =>
    kinds.reduce((sum, kind) => sum + (kind.readings.get(by) ?? 0), 0);
  const order = [...people].sort((a, b) => read(a) - read(b) || (a < b ? 1 : -1));
  const total = kinds.reduce((sum, kind) => sum + readingsOf(kind), 0);
  const out: KindShift[] = [];
  for (const by of order) {
    const wrong = new Set([...out.map((one) => one.by), by]);
    if (total - [...wrong].reduce((sum, who) => sum + read(who), 0) < read(by)) continue;
    const shift = shiftOf(kinds, by, wrong, sd);
    if (shift) out.push(shift);
  }
  return out;
}

const readingsOf = (kind: ReadKind): number =>
  [...kind.readings.values()].reduce((sum, n) => sum + n, 0);

interface Pair {
  readonly own: ReadKind;
  readonly shift: number;
  readonly variance: number;
}

function shiftOf(
  kinds: readonly ReadKind[],
  by: string,
  wrong: ReadonlySet<string>,
  sd: number,
): KindShift | null {
  const mine = kinds.filter((kind) => (kind.readings.get(by) ?? 0) > 0);
  const alone = mine.filter((kind) => isAlone(kind, by));
  const count = (list: readonly ReadKind[]): number =>
    list.reduce((sum, kind) => sum + (kind.readings.get(by) ?? 0), 0);
  if (alone.length < 2 || count(alone) < ALONE * count(mine)) return null;
  const others = kinds.filter((kind) => {
    const all = readingsOf(kind);
    const theirs = [...kind.readings].reduce(
      (n, [who, m]) => (wrong.has(who ?? '') ? n + m : n),
      0,
    );
    return all > 0 && theirs < all / 2;
  });
  const pairs = alone.flatMap((own) => others.flatMap((other) => pairsOf(own, other)));
  let best: { pairs: Pair[]; read: number } | null = null;
  for (const pair of pairs) {
    const agreeing = alone.flatMap((own) => nearestTo(pair, pairs, own));
    const found = { pairs: agreeing, read: count(agreeing.map(({ own }) => own)) };
    if (!best || found.read > best.read) best = found;
  }
  if (!best || best.pairs.length < 2 || best.read < AGREE * count(alone)) return null;
  const needed = haveMixed(others) ? SHIFT_LOG_ODDS.mixed : SHIFT_LOG_ODDS.sharedOut;
  if (logOdds(best.pairs, others, sd) < needed) return null;
  const weight = best.pairs.reduce((sum, { variance }) => sum + 1 / variance, 0);
  const shift = best.pairs.reduce((sum, one) => sum + one.shift / one.variance, 0) / weight;
  if (Math.abs(shift) < SHIFT_Z * sd) return null;
  return { by, shift, sd: 1 / Math.sqrt(weight), kinds: best.pairs.length };
}

/** Whether a kind is this person's but for a stray reading that fits nothing. */
function isAlone(kind: ReadKind, by: string): boolean {
  const own = kind.readings.get(by) ?? 0;
  const strays = readingsOf(kind) - own;
  return strays <= Math.max(own >= 4 ? 1 : 0, 0.1 * own);
}

/** Whether the other people did not share out the kinds among themselves: most was read of kinds that
 * several of them read. */
function haveMixed(others: readonly ReadKind[]): boolean {
  const count = (list: readonly ReadKind[]): number =>
    list.reduce((sum, kind) => sum + readingsOf(kind), 0);
  return count(others.filter((kind) => kind.readings.size > 1)) > MIXED * count(others);
}

/** Share of the readings that is most of them. */
const MIXED = 0.8;

/** The ways in which a kind is another but for one length on every side. */
function pairsOf(own: ReadKind, other: ReadKind): Pair[] {
  const n = own.sides.length;
  if (other.sides.length !== n) return [];
  const faces = own.faceKnown && other.faceKnown ? [false] : [false, true];
  return faces.flatMap((back) => {
    const [sides, sds] = back
      ? [fromOtherFace(own.sides), fromOtherFace(own.sds)]
      : [own.sides, own.sds];
    const mean = (list: readonly number[]): number => list.reduce((sum, x) => sum + x, 0) / n;
    const shift = mean(sides) - mean(other.sides);
    if (Math.abs(shift) > SHIFT_REACH) return [];
    const { cost } = nearestTurn(
      sides,
      other.sides.map((x) => x + shift),
      (i, j) => 1 / ((sds[i] as number) ** 2 + (other.sds[j] as number) ** 2),
    );
    if (cost > FITS * (n - 1) + FITS) return [];
    const variance =
      mean(sds.map((x) => x ** 2)) / own.freeSides +
      mean(other.sds.map((x) => x ** 2)) / own.freeSides;
    return [{ own, shift, variance }];
  });
}

/** Chi-square that a side may cost. */
const FITS = 5;

/** This kind's pair whose shift is that of the given one, if any. */
function nearestTo(to: Pair, pairs: readonly Pair[], own: ReadKind): Pair[] {
  const near = pairs.filter(
    (pair) =>
      pair.own === own &&
      (pair.shift - to.shift) ** 2 < AGREEING ** 2 * (pair.variance + to.variance),
  );
  near.sort((a, b) => Math.abs(a.shift - to.shift) - Math.abs(b.shift - to.shift));
  return near.slice(0, 1);
}

const AGREEING = 4;

/** Log of how seldom kinds that have nothing to do with each other would agree so: each side within
 * the noise of where the shift puts it, anywhere in the range of sides, for any of the other kinds in
 * any turn; one length is free. */
function logOdds(pairs: readonly Pair[], others: readonly ReadKind[], sd: number): number {
  const lengths = others.flatMap(({ sides }) => sides);
  const range = Math.max(Math.max(...lengths) - Math.min(...lengths), 20 * sd);
  const side = Math.log(range / (6 * sd));
  const sum = pairs.reduce(
    (log, { own }) => log + own.freeSides * side - Math.log(others.length * own.freeSides),
    0,
  );
  return sum - Math.log((2 * SHIFT_REACH) / (6 * sd));
}
