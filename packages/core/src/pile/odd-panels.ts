// One or two panels that fit no kind: whether each of their readings is a slip of one and the same
// kind.

import type { Item, Seed, Variants } from './mixture.ts';
import { fromOtherFace, nearestTurn } from './polygon.ts';
import {
  type HeapHabits,
  isLikelySlip,
  type Remedy,
  remediesFor,
  type Slip,
  type Target,
} from './slips.ts';
import { LONE_SIDE_Z } from './tolerances.ts';

/** Panels that are alike and unlike all others. */
export interface OddPanels {
  readonly seed: Seed;
  readonly items: readonly Item[];
}

/** A kind of which enough was read, metres, and its number of panels. */
export interface Established {
  readonly sides: readonly number[];
  readonly panels: number;
}

/** A reading of known face has a way for each side, another has two. */
export const isFaceKnown = ({ sides, ways }: Variants): boolean => sides.length === ways * ways;

/** The sides of a reading as the measurer saw them, seen from outside where the face is known. */
export function sidesAsSeen(reading: Variants): number[] {
  return Array.from(reading.sides.subarray(0, reading.sides.length / reading.ways));
}

/** What an odd panel is held against. */
export interface Heap {
  /** Most panels first. */
  readonly established: readonly Established[];
  readonly odd: readonly OddPanels[];
  /** Noise of one side, metres. */
  readonly sd: number;
  readonly habits: Habits;
  /** Mean side of the kind in the middle, metres. */
  readonly middle: number;
}

/** A heap with what it says of itself. */
export const heapOf = (
  kinds: readonly Established[],
  odd: readonly OddPanels[],
  sd: number,
): Heap => {
  const established = [...kinds].sort((a, b) => b.panels - a.panels);
  const middle = medianLength([...established, ...odd.map(({ seed }) => seed)]);
  return { established, odd, sd, habits: habitsOf(established, sd), middle };
};

/** The remedy of every reading of odd panels, or null where they are rather a kind of their own. Of
 * these sorts of slip the first that explains them. Two readings of one panel that agree are no slip,
 * but for a wrong unit, which one person keeps to. */
export function remediesOfOdd(
  odd: OddPanels,
  heap: Heap,
  sorts: readonly Slip[],
): Map<Variants, Remedy> | null {
  for (const sort of sorts) {
    const targets =
      sort === 'unit' ? [...heap.established, ...nearer(odd, heap)] : heap.established;
    for (const target of targets) {
      const found = remediesAgainst(odd, target, sort, heap.sd);
      const isLikely = (remedy: Remedy, reading: Variants): boolean =>
        isLikelySlip(remedy, heap.habits(odd, target, remedy, sidesAsSeen(reading)));
      if (found && [...found].every(([reading, remedy]) => isLikely(remedy, reading))) return found;
    }
  }
  return null;
}

/** Other odd panels, of a size more like the others': what these may be an inch reading of. */
function nearer(odd: OddPanels, { odd: all, middle }: Heap): Established[] {
  const far = ({ seed }: OddPanels): number => Math.abs(Math.log(meanOf(seed.sides) / middle));
  return all
    .filter((other) => far(other) < far(odd) - INCH_APART)
    .map(({ seed, items }) => ({ sides: seed.sides, panels: items.length }));
}

/** Inches for centimetres in one side of a few change the mean side by more than this, natural
 * logarithm. */
const INCH_APART = 0.08;

/** Whether the odd panels are the other hand of a kind to the millimetre: then they are that, or a
 * slip of just that sort. */
export const isTurnedOver = (odd: OddPanels, { established, sd }: Heap): boolean =>
  established.some((target) => remediesAgainst(odd, target, 'face', sd) !== null);

type Habits = (
  odd: OddPanels,
  target: Established,
  remedy: Remedy,
  reading: readonly number[],
) => HeapHabits;

/** The likeliest remedy of this sort for every reading of the odd panels, or null where one has
 * none. */
function remediesAgainst(
  { items }: OddPanels,
  target: Established,
  sort: Slip,
  sd: number,
): Map<Variants, Remedy> | null {
  const out = new Map<Variants, Remedy>();
  const own = sd / Math.sqrt(target.panels);
  const held: Target = { sides: target.sides, sds: target.sides.map(() => own) };
  for (const { readings } of items)
    for (const reading of readings) {
      const remedy = remediesFor(
        sidesAsSeen(reading),
        isFaceKnown(reading),
        held,
        sd,
        reading.bias,
        sort,
      ).find(({ slip }) => slip === 'unit' || readings.length === 1);
      if (!remedy) return null;
      out.set(reading, remedy);
    }
  return out;
}

function habitsOf(established: readonly Established[], sd: number): Habits {
  const counts = established.map(({ panels }) => panels).sort((a, b) => a - b);
  const typical = counts[counts.length >> 1] ?? 1;
  const isMirror = (a: Established, b: Established): boolean =>
    nearestTurn(fromOtherFace(a.sides), b.sides).cost < MIRROR_Z ** 2 * sd ** 2;
  const handed = established.filter((kind) => !isMirror(kind, kind));
  const hasPair = handed.map((kind) => handed.some((other) => isMirror(kind, other)));
  return (odd, target, remedy, reading) => {
    const isOther = (_: unknown, k: number): boolean => handed[k] !== target;
    const others = hasPair.filter(isOther);
    return {
      target: target.panels,
      own: odd.items.length,
      typical,
      others: established.filter((kind) => kind !== target).length,
      paired: others.filter(Boolean).length,
      unpaired: others.filter((pair) => !pair).length,
      loneSides: remedy.factors.filter((factor, i) => {
        const side = reading[remedy.order[i] as number] as number;
        const near = (kind: Established): boolean =>
          kind.sides.some((x) => Math.abs(x - side) < LONE_SIDE_Z * sd);
        return Number.isNaN(factor) && !established.some(near);
      }).length,
    };
  };
}

/** A kind as near as this to another's mirror image (root of the sum of squares, in standard
 * deviations of one reading) is its other hand. */
const MIRROR_Z = 3;

function medianLength(kinds: readonly { readonly sides: readonly number[] }[]): number {
  const means = kinds.map(({ sides }) => meanOf(sides)).sort((a, b) => a - b);
  return means[means.length >> 1] ?? 1;
}

const meanOf = (sides: readonly number[]): number =>
  sides.reduce((sum, x) => sum + x, 0) / sides.length;
