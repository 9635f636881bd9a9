// The best radius and sides for a net: the readings moved as little as they allow, until every
// seam's two sides are equal and every star closes. Least squares with exact conditions, by
// Gauss–Newton; each step conditions the prior on all conditions at the present sides and radius.
//
// The evidence compares nets: the density of the conditions under the readings alone, each
// against a wide density of its own scale, so that a net that asks for more coincidences and
// gets them is the more probable.

import { TAU } from '../math/angle.ts';
import { compareLists } from '../math/order.ts';
import type { SideId } from '../shell/ids.ts';
import { kindSide, placeAt, type Shell } from '../shell/shell.ts';
import { starsOf } from '../shell/stars.ts';
import { type SharedLength, sharedLength } from './allowance.ts';
import { type Belief, conditionInto, type Equation, innovationOf, makeEquation } from './belief.ts';
import { type CornerModel, cornerModel } from './corner-model.ts';
import { setSeamInto, setStarInto } from './equations.ts';
import { type Fact, setFactInto, sharedShares } from './facts.ts';
import { priorOf, type SideBelief } from './side-belief.ts';

/** What a net asks of the kinds: pairs of kind-sides of one length, runs of corners of one turn. */
export interface NetConditions {
  /** Kind-sides that meet at some seam, stride 2, each pair once. */
  readonly seams: readonly (readonly [number, number])[];
  /** Corners (kind-sides) around some hub, sorted, each run once. */
  readonly stars: readonly (readonly number[])[];
}

/** A net fitted to the readings. */
export interface NetFit {
  /** Kind → side lengths, metres. */
  readonly sides: readonly (readonly number[])[];
  /** Metres. */
  readonly radius: number;
  readonly radiusSd: number;
  /** Variance left in each kind-side, m². */
  readonly variances: Float64Array;
  /** Sum of squared standardised misfits, and the number of conditions that it is expected to be:
   * those that do not follow from others, less the one that fixes the radius and costs nothing. */
  readonly chi2: number;
  readonly conditions: number;
  /** Natural logarithm of the evidence. */
  readonly evidence: number;
  /** The length that all readings lack, metres; null where none is unknown. */
  readonly shared?: SharedLength | null;
  /** Log density of the facts that it was held against, 0 where there were none. */
  readonly factsWeight?: number;
}

/** Prior deviation of κ / κ₀, wide enough to leave it to the readings. */
const KAPPA_SD = 0.5;
/** Wide density that a condition's own is compared with: 1 rad, and half the mean side. */
const WIDE_ANGLE = 1;
const WIDE_SIDE = 0.5;
const STEPS = 30;
/** Largest change of a side (share of its length) or of κ that ends the iteration. */
const SETTLED = 1e-11;
/** Below this share of the prior variance a condition follows from the others. */
const IMPLIED = 1e-7;

/** The conditions of a net; kind k owns kind-sides first[k] … first[k + 1] − 1. Open sides and hubs
 * ask for nothing. */
export function conditionsOf(shell: Shell, first: ArrayLike<number>): NetConditions {
  const own = (side: SideId): number =>
    (first[shell.kind[placeAt(shell, side)] as number] as number) + kindSide(shell, side);
  const seams: [number, number][] = [];
  for (let i = 0; i < shell.seams.length; i++)
    seams.push([own(shell.seams[i] as SideId), own(shell.seams[++i] as SideId)]);
  const closed = starsOf(shell).filter((star) => star.closed);
  return netConditions(
    seams,
    closed.map((star) => star.corners.map(own)),
  );
}

/** Conditions without repetition, in an order that does not depend on the net's numbering. */
export function netConditions(
  seams: readonly (readonly [number, number])[],
  stars: readonly (readonly number[])[],
): NetConditions {
  const pairs = seams.filter(([a, b]) => a !== b).map(([a, b]) => (a < b ? [a, b] : [b, a]));
  const runs = stars.map((star) => [...star].sort((a, b) => a - b));
  return { seams: distinct(pairs) as (readonly [number, number])[], stars: distinct(runs) };
}

function distinct(lists: readonly (readonly number[])[]): (readonly number[])[] {
  const byKey = new Map(lists.map((list) => [list.join(), list]));
  return [...byKey.values()].sort(compareLists);
}

/** The fit of a net with these conditions and to these facts, started at the radius given (metres);
 * null where the iteration leaves the sphere or does not settle. */
export function fitNet(
  belief: SideBelief,
  conditions: NetConditions,
  radius: number,
  facts: readonly Fact[] = [],
): NetFit | null {
  let sides = belief.sides.map((own) => [...own]);
  let kappa = 1 / radius ** 2;
  for (let step = 0; step < STEPS; step++) {
    const model = cornerModel(sides, kappa);
    if (!model) return null;
    const result = conditioned(belief, model, conditions, facts);
    const change = result.belief.mean;
    const last = change.length - 1;
    const kappaStep = Math.max(-0.5, Math.min(1, change[last] as number));
    let moved = Math.abs(kappaStep);
    sides = sides.map((own, k) =>
      own.map((length, i) => {
        const by = change[(model.first[k] as number) + i] as number;
        moved = Math.max(moved, Math.abs(by) / length);
        return length + by;
      }),
    );
    kappa *= 1 + kappaStep;
    if (!(moved < 10)) return null;
    if (moved < SETTLED)
      return {
        sides,
        ...summary(result, kappa),
        shared: sharedLength(belief, sides.flat(), result.belief),
      };
  }
  return null;
}

/** What is left to know of the sides and the curvature of a net at its fitted sides (metres) and
 * radius: changes of them, as a {@link CornerModel} has them; null where a panel has no place there. */
export function beliefAt(
  readings: SideBelief,
  conditions: NetConditions,
  sides: readonly (readonly number[])[],
  radius: number,
): Belief | null {
  const model = cornerModel(sides, 1 / radius ** 2);
  return model && conditioned(readings, model, conditions, []).belief;
}

interface Conditioned {
  readonly belief: Belief;
  readonly chi2: number;
  readonly count: number;
  readonly evidence: number;
  readonly factsWeight: number;
}

function conditioned(
  readings: SideBelief,
  model: CornerModel,
  conditions: NetConditions,
  facts: readonly Fact[],
): Conditioned {
  const belief = priorOf(readings, KAPPA_SD);
  readings.sides.flat().forEach((length, s) => {
    belief.mean[s] = length - (model.lengths[s] as number);
  });
  const own = readings.variances.flat();
  const gain = new Float64Array(belief.size);
  const equation = makeEquation(belief.size);
  const meanSide = readings.sides.flat().reduce((sum, x) => sum + x, 0) / own.length;
  let chi2 = 0;
  let count = 0;
  let evidence = 0;
  const take = (wide: number): void => {
    const innovation = innovationOf(belief, equation);
    if (innovation.variance <= IMPLIED * ownVariance(own, equation)) return;
    conditionInto(belief, equation, innovation, gain);
    const cost = innovation.off ** 2 / innovation.variance;
    chi2 += cost;
    count++;
    evidence += Math.log(wide) - (cost + Math.log(TAU * innovation.variance)) / 2;
  };
  for (const [a, b] of conditions.seams) {
    setSeamInto(equation, model, a, b);
    take(WIDE_SIDE * meanSide);
  }
  for (const star of conditions.stars) {
    setStarInto(equation, model, star, TAU);
    take(WIDE_ANGLE);
  }
  const shares = facts.length > 0 ? sharedShares(readings) : null;
  let factsWeight = 0;
  for (const fact of facts) {
    const noise = setFactInto(equation, model, fact, shares);
    const { off, variance: own } = innovationOf(belief, equation);
    const variance = own + noise;
    conditionInto(belief, equation, { off, variance }, gain);
    const cost = off ** 2 / variance;
    chi2 += cost;
    count++;
    factsWeight -= (cost + Math.log(TAU * variance)) / 2;
  }
  return { belief, chi2, count, evidence, factsWeight };
}

/** Variance that the equation would have if nothing had been learned, κ aside. */
function ownVariance(own: readonly number[], equation: Equation): number {
  let sum = 0;
  for (let i = 0; i < equation.terms; i++) {
    const s = equation.index[i] as number;
    if (s < own.length) sum += (equation.coefficient[i] as number) ** 2 * (own[s] as number);
  }
  return sum;
}

function summary(result: Conditioned, kappa: number): Omit<NetFit, 'sides' | 'shared'> {
  const { belief, chi2, count, evidence, factsWeight } = result;
  const last = belief.size - 1;
  const radius = 1 / Math.sqrt(kappa);
  const kappaVariance = belief.covariance[last * (belief.size + 1)] as number;
  return {
    radius,
    radiusSd: (radius / 2) * Math.sqrt(Math.max(0, kappaVariance)),
    variances: Float64Array.from({ length: last }, (_, s) =>
      Math.max(0, belief.covariance[s * (belief.size + 1)] as number),
    ),
    chi2,
    conditions: Math.max(0, count - 1),
    evidence,
    factsWeight,
  };
}

/** Root mean square deviation of a fitted side, metres. */
export const sideSd = (fit: NetFit): number =>
  Math.sqrt(fit.variances.reduce((sum, v) => sum + v, 0) / fit.variances.length);
