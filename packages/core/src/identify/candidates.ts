// All nets that may be the answer, from the kinds alone: nets with the rotations of a solid first,
// then with fewer; when none fits, with one side taken as mis-measured; when still none does, with
// kinds left out.

import { chiSquareTail } from '../math/statistics.ts';
import type { Fold } from './fold.ts';
import { solidFolds } from './fold-starts.ts';
import { type FittedNet, foldNets } from './folding.ts';
import type { FoldedPart } from './grown.ts';
import { type SideBelief, unusedKinds } from './side-belief.ts';

/** A net that may be the answer. */
export interface Candidate extends FittedNet {
  /** The readings it was fitted to: as stated, or with one side free to be wrong. */
  readonly readings: SideBelief;
  /** Kinds it has no place for. */
  readonly unused: readonly number[];
  /** The rotations that it was found by. */
  readonly fold: Fold;
}

/** What the search found. */
export interface Candidates {
  readonly nets: readonly Candidate[];
  readonly complete: boolean;
  /** Places of the largest part that stood together. */
  readonly deepest: number;
  /** The largest part that stood together with the sides as they were read; null where none did. */
  readonly grown: Grown | null;
  /** Parts that were the largest yet when they stood, and up to MOST_ENDS of each size that stuck;
   * the largest first, of one size the stuck ones first. */
  readonly ends: readonly Grown[];
}

/** A part that stood, and its size. */
export interface Grown {
  /** Places when folded out. */
  readonly placed: number;
  /** Sides of its pieces that were glued. */
  readonly glued: number;
  readonly part: FoldedPart;
}

/** Called often with the largest part so far (places), the share of foreseen work done, and the
 * part where there is a new one to show; false stops the search. */
export type Watch = (placed: number, done: number, grown?: Grown | null) => boolean;

/** How hard a pile is looked at: `asRead`: all kinds, sides as they were read; `quick`: the same, but
 * only nets with the rotations of a solid, and less work; `soon`: as `quick`, and nothing where a net
 * was not found or the work was not enough; `last`: one side doubted or kinds left out. */
export type Effort = 'soon' | 'quick' | 'asRead' | 'last';

/** A net whose misfit true readings would exceed with less than this probability does not fit. */
const LEAST_TAIL = 1e-4;
/** A mis-measured side is taken to be off by this much, metres: one standard deviation. */
const BLUNDER_SD = 0.03;
/** Work that one start of a fold may take, and all of a stage together, in tries (see FoldSearch):
 * some 40 000 a second. */
const TRIES = {
  solid: { start: 60000, stage: 300000 },
  axis: { start: 8000, stage: 80000 },
  alone: { start: 8000, stage: 40000 },
  doubted: { start: 4000, stage: 40000 },
  spare: { start: 6000, stage: 30000 },
};

/** Groups with one main axis: with two-fold axes across it, and without. */
const axisFolds: readonly Fold[] = [6, 5, 4, 3, 2].flatMap((n): Fold[] => [
  { name: `${n}-fold with crosswise axes`, order: 2 * n, axes: [n, 2, 2] },
  { name: `${n}-fold`, order: n, axes: [n, n] },
]);

/** No rotation at all: every place of the net is a piece of its own. */
const noFold: Fold = { name: 'no rotation', order: 1, axes: [] };

/** Whether readings with the errors they are said to have would often fit a net as badly. */
export const fitsWell = (net: FittedNet): boolean =>
  chiSquareTail(net.fit.chi2, net.fit.conditions) >= LEAST_TAIL;

/** The candidates for these readings, not yet sorted. */
export function candidatesFor(
  readings: SideBelief,
  watch: Watch,
  effort: Effort | 'all' = 'all',
): Candidates {
  const search = new CandidateSearch(readings, watch);
  if (readings.sides.length === 0) return search;
  if (effort === 'quick' || effort === 'soon') search.withSolidFolds(QUICK);
  else if (effort !== 'last') search.withAllKinds();
  if (effort === 'soon' && !(search.settled && search.complete))
    return new CandidateSearch(readings, watch);
  if (effort === 'quick' || effort === 'soon' || effort === 'asRead') return search;
  if (!search.settled) search.withOneSideDoubted();
  if (!search.settled) search.withKindsLeftOut();
  return search;
}

const STAGES = 5;

/** Work of a start and of all together. */
interface Most {
  readonly start: number;
  readonly stage: number;
}

/** The work for one supposition of many. */
const QUICK: Most = { start: 12000, stage: 24000 };

class CandidateSearch implements Candidates {
  nets: Candidate[] = [];
  complete = true;
  deepest = 0;
  grown: Grown | null = null;
  private readonly found: Grown[] = [];
  private readonly seen = new Map<number, number>();
  private stopped = false;
  private stage = 0;
  private done = 0;
  private work = 0;

  constructor(
    private readonly readings: SideBelief,
    private readonly watch: Watch,
  ) {}

  /** True when a net fits, or the search was stopped. */
  get settled(): boolean {
    return this.stopped || this.nets.some(fitsWell);
  }

  withAllKinds(): void {
    for (const [stage, folds, most] of [
      [0, solidFolds, TRIES.solid],
      [1, axisFolds, TRIES.axis],
      [2, [noFold], TRIES.alone],
    ] as const) {
      this.begin(stage);
      for (const [i, fold] of folds.entries()) {
        if (this.settled) return;
        this.done = i / folds.length;
        this.fold(this.readings, fold, most, 0);
      }
    }
  }

  /** Nets with the rotations of a solid alone. */
  withSolidFolds(most: Most): void {
    this.begin(0);
    for (const [i, fold] of solidFolds.slice(0, 2).entries()) {
      if (this.settled) return;
      this.done = i / 2;
      this.fold(this.readings, fold, most, 0);
    }
  }

  withOneSideDoubted(): void {
    this.begin(3);
    const sides = this.readings.variances.flat().length;
    for (const fold of solidFolds) {
      for (let s = 0; s < sides && !this.stopped; s++) {
        this.done = s / sides;
        this.fold(doubting(this.readings, s), fold, TRIES.doubted, 0);
      }
      if (this.settled) return;
    }
  }

  withKindsLeftOut(): void {
    this.begin(4);
    const spare = Math.floor(this.readings.sides.length / 2);
    for (const [i, fold] of solidFolds.entries()) {
      if (this.settled) return;
      this.done = i / solidFolds.length;
      this.fold(this.readings, fold, TRIES.spare, spare);
    }
  }

  private begin(stage: number): void {
    this.stage = stage;
    this.done = 0;
    this.work = 0;
  }

  private fold(readings: SideBelief, fold: Fold, most: Most, spareKinds: number): void {
    if (this.work >= most.stage) {
      this.complete = false;
      return;
    }
    const outcome = foldNets(readings, fold, {
      maxTries: most.start,
      spareKinds,
      radius: null,
      periods: readings.sides.map((own) => own.length),
      labels: readings.sides.flat().map((_, s) => s),
      onTry: (pieces, work) => {
        this.work += work;
        this.deepest = Math.max(this.deepest, pieces * fold.order);
        const done = (this.stage + this.done) / STAGES;
        if (!this.watch(this.deepest, done, this.grown)) this.stopped = true;
        return !this.stopped && this.work < most.stage;
      },
      goOn: () => {
        if (!this.watch(this.deepest, (this.stage + this.done) / STAGES)) this.stopped = true;
        return !this.stopped;
      },
      // With a side doubted, what stands is a guess.
      ...(readings === this.readings && {
        onPart: (pieces, stuck, copy) => this.see(pieces * fold.order, stuck, copy),
      }),
    });
    this.complete &&= outcome.complete && !this.stopped;
    for (const net of outcome.nets) {
      const used = new Set(net.shell.kind);
      const kinds = readings.sides.length;
      const unused = unusedKinds(kinds, (k) => used.has(k), readings.bothWays);
      this.nets.push({ ...net, readings, unused, fold });
    }
  }

  /** Keeps the part if it is larger than any, or stuck and one of the first of its size. */
  private see(placed: number, stuck: boolean, copy: () => FoldedPart): void {
    const larger = placed > (this.grown?.placed ?? 0);
    if (!larger && !stuck) return;
    const known = this.seen.get(placed) ?? 0;
    if (!larger && known >= MOST_ENDS) return;
    const part = copy();
    const one = { placed, glued: part.mate.filter((mate) => mate >= 0).length, part };
    if (larger) this.grown = one;
    if (stuck) this.seen.set(placed, known + 1);
    this.found.push(one);
  }

  get ends(): readonly Grown[] {
    const isStuck = ({ part }: Grown): number => (part.stuckAt === null ? 0 : 1);
    return [...this.found].sort(
      (a, b) => b.placed - a.placed || isStuck(b) - isStuck(a) || b.glued - a.glued,
    );
  }
}

/** Stuck parts of one size that are kept. */
const MOST_ENDS = 20;

/** The readings with one side free to be wrong. */
function doubting(readings: SideBelief, kindSide: number): SideBelief {
  let s = 0;
  const variances = readings.variances.map((own) =>
    own.map((variance) => (s++ === kindSide ? BLUNDER_SD ** 2 : variance)),
  );
  return { ...readings, variances };
}
