// What a worked-up pile lets one say: which readings disagree with their kind, which two kinds may
// be one, which kind may be two, which mark covers several kinds, where readings are too few.

import { nearestTurn } from './polygon.ts';
import { MAYBE_ONE_Z, MAYBE_TWO_Z } from './tolerances.ts';

/** A side that does not fit: of a reading, or of a row of `kinds` (then `reading` is null). */
export interface SuspectReading {
  /** Index in the pile's list of readings, or null. */
  readonly reading: number | null;
  readonly tag: string | null;
  readonly by: string | null;
  readonly kind: string;
  /** Which of the sides as written, from 0. */
  readonly side: number;
  /** As written, metres. */
  readonly measured: number;
  /** What the other readings of the kind say this side should read, metres. */
  readonly expected: number;
  /** Measured less expected, in standard deviations of that difference. */
  readonly z: number;
}

/** Two kinds whose difference is no more than their noise. */
export interface MaybeOne {
  readonly kinds: readonly [string, string];
  /** Largest difference of a side, metres. */
  readonly difference: number;
  /** Normal deviate of the difference; small: as good as equal. */
  readonly z: number;
}

/** A kind whose panels differ more than noise does. */
export interface MaybeTwo {
  readonly kind: string;
  /** Standard deviation of its readings, metres. */
  readonly spread: number;
  /** Normal deviate of the excess. */
  readonly z: number;
}

/** A mark that is on panels of more than one kind. */
export interface MixedMark {
  readonly mark: string;
  /** Kinds with the number of their panels that carry it (0: only the file's row says so), most
   * first. A stray is a kind on so few of them that it was likely painted on by mistake. */
  readonly kinds: readonly {
    readonly kind: string;
    readonly panels: number;
    readonly stray: boolean;
  }[];
}

/** Where readings are too few to tell. */
export interface TooFew {
  /** `pile.readings[7]` or the kind. */
  readonly path: string;
  /** The kinds in question; one alone where it rests on one reading or its other hand may be it. */
  readonly kinds: readonly string[];
  readonly why: 'one reading' | 'face unknown' | 'two kinds fit';
}

/** What is compared of a kind: in measured lengths. */
export interface Compared {
  readonly id: string;
  readonly sides: readonly number[];
  readonly sds: readonly number[];
  /** Side → what as many readings say instead, or null. */
  readonly rivals: readonly (number | null)[];
  /** Whether it is in the file, and how many readings pull on it. */
  readonly stated: boolean;
  readonly readings: number;
  readonly scatter: { readonly chiSquare: number; readonly freedom: number };
}

/** The normal deviate of a chi-square value (Wilson & Hilferty 1931); good to 0.1 up to z = 6. */
export function chiSquareDeviate(chiSquare: number, freedom: number): number {
  const spread = 2 / (9 * freedom);
  return (Math.cbrt(chiSquare / freedom) - (1 - spread)) / Math.sqrt(spread);
}

/** Pairs of kinds of one number of sides that may be one, nearest first. */
export function maybeOneOf(kinds: readonly Compared[]): MaybeOne[] {
  const pairs: MaybeOne[] = [];
  kinds.forEach((a, i) => {
    for (const b of kinds.slice(i + 1)) {
      if (a.sides.length !== b.sides.length) continue;
      const fit = nearestTurn(
        a.sides,
        b.sides,
        (m, n) => 1 / ((a.sds[m] as number) ** 2 + (b.sds[n] as number) ** 2),
      );
      const z = chiSquareDeviate(fit.cost, a.sides.length);
      if (z > MAYBE_ONE_Z) continue;
      const off = b.sides.map((x, n) =>
        Math.abs((a.sides[(n + fit.turn) % a.sides.length] as number) - x),
      );
      pairs.push({ kinds: [a.id, b.id], difference: Math.max(...off), z });
    }
  });
  return pairs.sort((a, b) => a.z - b.z);
}

/** Kinds whose panels scatter more than readings do. `sd` in metres. */
export function maybeTwoOf(kinds: readonly Compared[], sd: number): MaybeTwo[] {
  return kinds.flatMap(({ id, scatter }) => {
    if (scatter.freedom < 1) return [];
    const z = chiSquareDeviate(scatter.chiSquare, scatter.freedom);
    if (z < MAYBE_TWO_Z) return [];
    return [{ kind: id, spread: sd * Math.sqrt(scatter.chiSquare / scatter.freedom), z }];
  });
}
