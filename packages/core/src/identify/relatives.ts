// Relatives of a net: other nets of the very same panels that close just as well, with fewer
// rotations. In even class I nets half the ball can be turned by a step; other nets have other ways,
// and none is looked for by name: the panels are folded again by groups with one main axis, now at
// the sides and radius that the first net has taught, or at the exact sides of its name where it has
// one; wrong stars no longer close there.

import type { SideId } from '../shell/ids.ts';
import { kindSide, placeAt } from '../shell/shell.ts';
import type { Candidate, Watch } from './candidates.ts';
import { firstSides } from './corner-model.ts';
import { conditionsOf, fitNet, type NetConditions, sideSd } from './fit.ts';
import type { Fold } from './fold.ts';
import { foldNets } from './folding.ts';
import { makeOf, type SideJoint } from './joints.ts';
import { nameNet } from './name-net.ts';
import type { SideBelief } from './side-belief.ts';

/** How well the sides are known once a net is fitted: as a share of their length at least, and of the
 * deviation of their readings. Wrong by more, and a true relative is missed; by less, and wrong stars
 * close again. */
const LEARNED = { length: 2e-4, reading: 0.5 };
/** Sides of a fitted net this near to each other (share of their length) are one length. */
const SAME = 1e-7;
/** Work for one start (see FoldSearch). */
const TRIES = 8000;
/** Evidence that equal mirror images may cost before they are given up (natural logarithm). */
const MIRROR_COST = 3;
/** Groups without crosswise axes are tried on nets up to this many places; all relatives of larger
 * named nets have such axes. */
const SMALL_NET = 400;

/** Gives the net's relatives to `take`, fitted to its readings, until that answers false; the net
 * itself may be among them. Lengths nearer than `noise` metres may be one; `labels`: kind-side →
 * label, alike sides sharing one. False where it was cut short: there may be more. */
export function relativesOf(
  net: Candidate,
  noise: number,
  labels: ArrayLike<number>,
  watch: Watch,
  take: (relative: Candidate) => boolean,
): boolean {
  const learned = namedSides(net) ?? learnedSides(net, (a, b) => Math.abs(a - b) <= noise);
  let complete = true;
  let wanted = true;
  const { joints } = learned.readings;
  const periods = learned.sides.map((own, k) => periodOf(own, joints?.[k] ?? null));
  for (const fold of lowerFolds(net)) {
    const outcome = foldNets(learned.readings, fold, {
      maxTries: TRIES,
      spareKinds: net.unused.length,
      radius: learned.radius,
      periods,
      labels,
      onTry: () => watch(net.shell.kind.length, 1),
      goOn: () => watch(net.shell.kind.length, 1),
      take: ({ shell, fit }) => {
        wanted = take({ ...net, shell, fit, fold });
        return wanted;
      },
    });
    complete &&= outcome.complete;
    if (!wanted) break;
  }
  return complete;
}

/** Groups with one main axis among the rotations that the net was found by. */
function lowerFolds({ fold, shell }: Candidate): Fold[] {
  const orders = [...new Set(fold.axes)];
  const crosswise = orders.map(
    (n): Fold => ({ name: `${n}-fold with crosswise axes`, order: 2 * n, axes: [n, 2, 2] }),
  );
  if (shell.kind.length > SMALL_NET) return crosswise;
  return [
    ...crosswise,
    ...orders.map((n): Fold => ({ name: `${n}-fold`, order: n, axes: [n, n] })),
  ];
}

interface Learned {
  readonly sides: readonly (readonly number[])[];
  readonly readings: SideBelief;
  readonly radius: number;
}

/** The exact sides of the name that the net goes by, at the fitted size; null where it has none. */
function namedSides({ readings, fit, shell }: Candidate): Learned | null {
  const named = nameNet(shell, sideSd(fit));
  if (!named) return null;
  const sides = readings.sides.map((own) => [...own]);
  named.lengths.forEach((length, s) => {
    const kind = shell.kind[placeAt(shell, s as SideId)] as number;
    (sides[kind] as number[])[kindSide(shell, s as SideId)] = length;
  });
  const variances = sides.map((own) => own.map((length) => (LEARNED.length * length) ** 2));
  return {
    sides,
    radius: fit.radius,
    readings: { ...readings, sides, variances, sharedVariance: 0 },
  };
}

/** The fitted sides, with mirror images made equal where the readings allow it. */
function learnedSides(net: Candidate, alike: (a: number, b: number) => boolean): Learned {
  const { readings, fit, shell } = net;
  const first = firstSides(readings.sides);
  const own = conditionsOf(shell, first);
  const equal: NetConditions = {
    ...own,
    seams: [...own.seams, ...mirrorPairs(fit.sides, first, alike)],
  };
  const mirrored = fitNet(readings, equal, fit.radius);
  const best = mirrored && mirrored.evidence > fit.evidence - MIRROR_COST ? mirrored : fit;
  const variances = best.sides.map((sides, k) =>
    sides.map((length, i) => {
      const reading = Math.sqrt((readings.variances[k] as readonly number[])[i] as number);
      return Math.max(LEARNED.length * length, LEARNED.reading * reading) ** 2;
    }),
  );
  return {
    sides: best.sides,
    radius: best.radius,
    readings: { ...net.readings, sides: best.sides, variances, sharedVariance: 0 },
  };
}

/** Pairs of kind-sides that are one length if kinds that look like mirror images are. */
function mirrorPairs(
  sides: readonly (readonly number[])[],
  first: ArrayLike<number>,
  alike: (a: number, b: number) => boolean,
): [number, number][] {
  const pairs: [number, number][] = [];
  sides.forEach((own, k) => {
    sides.forEach((other, m) => {
      if (m < k || own.length !== other.length) return;
      const n = own.length;
      const back = (offset: number, i: number): number => (offset - i + 2 * n) % n;
      for (let offset = 0; offset < n; offset++)
        if (own.every((length, i) => alike(length, other[back(offset, i)] as number)))
          own.forEach((_, i) => {
            pairs.push([(first[k] as number) + i, (first[m] as number) + back(offset, i)]);
          });
    });
  });
  return pairs.filter(([a, b]) => a !== b);
}

/** Sides after which a list of lengths, and of joints where they are known, repeats. */
function periodOf(sides: readonly number[], joints: readonly SideJoint[] | null): number {
  const n = sides.length;
  for (let period = 1; period < n; period++) {
    if (n % period !== 0) continue;
    const repeats = sides.every(
      (length, i) =>
        Math.abs(length - (sides[(i + period) % n] as number)) <= SAME * length &&
        (!joints ||
          makeOf(joints[i] as SideJoint) === makeOf(joints[(i + period) % n] as SideJoint)),
    );
    if (repeats) return period;
  }
  return n;
}
