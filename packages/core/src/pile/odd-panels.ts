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

/** The remedy of every reading of odd panels, or null where they are rather a kind of their own. Two
 * readings of one panel that agree are no slip, but for a wrong unit, which one person keeps to.
 * `others`: all odd panels; one of them may be what another is an inch reading of. */
export function remediesOfOdd(
  odd: OddPanels,
  established: readonly Established[],
  others: readonly OddPanels[],
  sd: number,
  sorts: readonly Slip[],
): Map<Variants, Remedy> | null {
  const middle = medianLength([...established, ...others.map(({ seed }) => seed)]);
  const far = ({ sides }: { sides: readonly number[] }): number =>
    Math.abs(Math.log(meanOf(sides) / middle));
  const nearer = others
    .filter((other) => other !== odd && far(other.seed) < far(odd.seed))
    .map(({ seed, items }) => ({ sides: seed.sides, panels: items.length }));
  const habits = habitsOf(odd, established, sd);
  const targets = [...established, ...nearer].sort((a, b) => b.panels - a.panels);
  for (const sort of sorts) {
    const likely = targets
      .flatMap((target) => remediesAgainst(odd, target, sort, sd) ?? [])
      .find((remedies) =>
        [...remedies].every(([reading, { remedy, target }]) =>
          isLikelySlip(remedy, habits(target, remedy, sidesAsSeen(reading))),
        ),
      );
    if (likely) return new Map([...likely].map(([reading, { remedy }]) => [reading, remedy]));
  }
  return null;
}

/** Whether the odd panels are the other hand of a kind to the millimetre: then they are that, or a
 * slip of just that sort. */
export const isTurnedOver = (
  odd: OddPanels,
  established: readonly Established[],
  sd: number,
): boolean => established.some((target) => remediesAgainst(odd, target, 'face', sd) !== null);

type Habits = (target: Established, remedy: Remedy, reading: readonly number[]) => HeapHabits;

interface Against {
  readonly remedy: Remedy;
  readonly target: Established;
}

/** The likeliest remedy of this sort for every reading of the odd panels, or null where one has
 * none. */
function remediesAgainst(
  { items }: OddPanels,
  target: Established,
  sort: Slip,
  sd: number,
): Map<Variants, Against> | null {
  const out = new Map<Variants, Against>();
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
      ).find(({ slip }) => slip === sort && (slip === 'unit' || readings.length === 1));
      if (!remedy) return null;
      out.set(reading, { remedy, target });
    }
  return out;
}

function habitsOf(odd: OddPanels, established: readonly Established[], sd: number): Habits {
  const counts = established.map(({ panels }) => panels).sort((a, b) => a - b);
  const typical = counts[counts.length >> 1] ?? 1;
  const isMirror = (a: Established, b: Established): boolean =>
    nearestTurn(fromOtherFace(a.sides), b.sides).cost < MIRROR_Z ** 2 * sd ** 2;
  const handed = established.filter((kind) => !isMirror(kind, kind));
  const hasPair = handed.map((kind) => handed.some((other) => isMirror(kind, other)));
  return (target, remedy, reading) => {
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
