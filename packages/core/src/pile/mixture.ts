// The fit of a few kinds to many panels, by expectation and maximisation. One panel is of one kind;
// each of its readings shows that kind turned by an unknown step (and, where the face is unknown,
// perhaps mirrored) with normal noise in every side, save a few sides that are blunders: the cost
// of a side is e²/2σ², at most that of a blunder. A side that costs a blunder pulls on nothing.

import { turned } from '../math/cyclic.ts';
import type { Panel, PanelReading } from './panels.ts';
import { fromOtherFace } from './polygon.ts';
import { BLUNDER_CHANCE, BLUNDER_DENSITY } from './tolerances.ts';

/** A reading in every way in which it may lie on its kind. */
export interface Variants {
  /** Ways, stride = number of sides: first the turns as written, then those from the other face. */
  readonly sides: Float64Array;
  readonly ways: number;
  /** What was taken off every side for the person's tape, metres. */
  readonly bias: number;
}

/** A panel ready to be fitted. */
export interface Item {
  readonly panel: Panel;
  readonly readings: readonly Variants[];
}

/** A kind to start from. `given`: sides as stated in the file, weighed like one reading. */
export interface Seed {
  readonly sides: readonly number[];
  readonly given: readonly number[] | null;
  /** Returns the sides with what must be equal made equal; weights are the readings of each. */
  readonly tie?: (sides: readonly number[], weights: readonly number[]) => number[];
}

/** Kinds fitted to panels. Log likelihoods leave out what all models share. */
export interface Mixture {
  readonly means: readonly (readonly number[])[];
  readonly shares: readonly number[];
  /** Item × kind, stride = number of kinds: the probability that the item is of the kind, times its weight. */
  readonly belongs: Float64Array;
  /** Item × kind: log likelihood of the item's readings if it is of the kind; only a bound where
   * another kind is likelier beyond all doubt. */
  readonly likelihood: Float64Array;
  readonly total: number;
  /** Kind × side: readings that pull on the side, the stated row included. */
  readonly weights: readonly (readonly number[])[];
}

const MAX_PASSES = 60;

/** A way that costs this much more than another adds nothing to its sum in double precision. */
const FORGOTTEN = 37;

/** Cost of one blundered side in log likelihood, for a noise of `sd` metres. */
export const blunderCost = (sd: number): number =>
  Math.log((1 - BLUNDER_CHANCE) / (BLUNDER_CHANCE * BLUNDER_DENSITY * sd * Math.sqrt(2 * Math.PI)));

/** A panel with all ways of each reading, each person's bias taken off by `correct`. */
export function itemOf(panel: Panel, correct: (reading: PanelReading) => readonly number[]): Item {
  const readings = panel.readings.map((r) => {
    const sides = correct(r);
    const bias = (r.sides[0] as number) - (sides[0] as number);
    return variantsOf(sides, r.faceKnown, bias);
  });
  return { panel, readings };
}

/** A reading in every way it may lie, where its sides run as given. */
export function variantsOf(sides: readonly number[], faceKnown: boolean, bias: number): Variants {
  const faces = faceKnown ? [sides] : [sides, fromOtherFace(sides)];
  const all = faces.flatMap((face) => face.flatMap((_, by) => turned(face, by)));
  return { sides: Float64Array.from(all), ways: faces.length * sides.length, bias };
}

/** Log likelihood of one reading under a kind; the probability of each way goes into `chance`. A
 * reading that costs more than `enough` is not followed to the end: its value is then only a bound. */
export function readingLikelihood(
  reading: Variants,
  mean: readonly number[],
  sd: number,
  cap: number,
  chance: Float64Array,
  enough = Number.POSITIVE_INFINITY,
): number {
  const n = mean.length;
  const scale = 1 / (2 * sd * sd);
  let best = Number.NEGATIVE_INFINITY;
  let limit = enough;
  for (let way = 0; way < reading.ways; way++) {
    let cost = 0;
    for (let i = 0; i < n && cost < limit; i++) {
      const e = (reading.sides[way * n + i] as number) - (mean[i] as number);
      cost += Math.min(e * e * scale, cap);
    }
    chance[way] = -cost;
    if (-cost > best) {
      best = -cost;
      limit = Math.min(enough, cost + FORGOTTEN);
    }
  }
  let sum = 0;
  for (let way = 0; way < reading.ways; way++) {
    const gap = (chance[way] as number) - best;
    const p = gap < -FORGOTTEN ? 0 : gap === 0 ? 1 : Math.exp(gap);
    chance[way] = p;
    sum += p;
  }
  for (let way = 0; way < reading.ways; way++) chance[way] = (chance[way] as number) / sum;
  return best + Math.log(sum / reading.ways);
}

/** The best fit of as many kinds as there are seeds to the items, from those seeds; with
 * `itemWeights` each item counts so many times. */
export function fitMixture(
  items: readonly Item[],
  seeds: readonly Seed[],
  sd: number,
  passes = MAX_PASSES,
  itemWeights?: readonly number[],
): Mixture {
  const cap = blunderCost(sd);
  let means = seeds.map((seed) => [...seed.sides]);
  let shares = seeds.map(() => 1 / seeds.length);
  let last = expect(items, means, shares, sd, cap, itemWeights);
  for (let pass = 0; pass < passes; pass++) {
    const pulled = maximise(items, seeds, means, last.belongs, sd, cap);
    const moved = largestMove(means, pulled.means);
    means = pulled.means;
    shares = sharesOf(last.belongs, seeds.length, items.length);
    last = expect(items, means, shares, sd, cap, itemWeights);
    if (moved < 1e-3 * sd) break;
  }
  const { weights } = maximise(items, seeds, means, last.belongs, sd, cap);
  return { means, shares, weights, ...last };
}

function largestMove(
  from: readonly (readonly number[])[],
  to: readonly (readonly number[])[],
): number {
  let most = 0;
  from.forEach((mean, k) => {
    mean.forEach((x, i) => {
      most = Math.max(most, Math.abs(x - (to[k]?.[i] as number)));
    });
  });
  return most;
}

type Expectation = Pick<Mixture, 'belongs' | 'likelihood' | 'total'>;

function expect(
  items: readonly Item[],
  means: readonly number[][],
  shares: readonly number[],
  sd: number,
  cap: number,
  itemWeights?: readonly number[],
): Expectation {
  const kinds = means.length;
  const chance = new Float64Array(64);
  const likelihood = new Float64Array(items.length * kinds);
  const belongs = new Float64Array(items.length * kinds);
  let total = 0;
  items.forEach((item, p) => {
    let best = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < kinds; k++) {
      const enough = 2 * FORGOTTEN - best;
      let sum = 0;
      for (const reading of item.readings)
        sum += readingLikelihood(reading, means[k] as number[], sd, cap, chance, enough + sum);
      best = Math.max(best, sum);
      likelihood[p * kinds + k] = sum;
      belongs[p * kinds + k] = sum + Math.log(shares[k] as number);
    }
    const weight = itemWeights?.[p] ?? 1;
    total += weight * normaliseInto(belongs, p * kinds, kinds);
    if (weight !== 1)
      for (let k = 0; k < kinds; k++)
        belongs[p * kinds + k] = weight * (belongs[p * kinds + k] as number);
  });
  return { belongs, likelihood, total };
}

/** Turns `count` log weights from `at` on into probabilities; the log of their sum. */
export function normaliseInto(logs: Float64Array, at: number, count: number): number {
  let best = Number.NEGATIVE_INFINITY;
  for (let k = at; k < at + count; k++) best = Math.max(best, logs[k] as number);
  let sum = 0;
  for (let k = at; k < at + count; k++) {
    logs[k] = Math.exp((logs[k] as number) - best);
    sum += logs[k] as number;
  }
  for (let k = at; k < at + count; k++) logs[k] = (logs[k] as number) / sum;
  return best + Math.log(sum);
}

/** Shares of the kinds, each a little above 0 so that none is shut out for good. */
function sharesOf(belongs: Float64Array, kinds: number, items: number): number[] {
  const shares = new Array<number>(kinds).fill(0.5);
  for (let i = 0; i < belongs.length; i++)
    shares[i % kinds] = (shares[i % kinds] as number) + (belongs[i] as number);
  return shares.map((share) => share / (items + 0.5 * kinds));
}

const FAINT = 1e-4;

function maximise(
  items: readonly Item[],
  seeds: readonly Seed[],
  means: readonly (readonly number[])[],
  belongs: Float64Array,
  sd: number,
  cap: number,
): { means: number[][]; weights: number[][] } {
  const reach = Math.sqrt(2 * cap) * sd;
  const chance = new Float64Array(64);
  const out: { means: number[][]; weights: number[][] } = { means: [], weights: [] };
  means.forEach((mean, k) => {
    const seed = seeds[k] as Seed;
    const sum = seed.given ? [...seed.given] : mean.map(() => 0);
    const weight = mean.map(() => (seed.given ? 1 : 0));
    items.forEach((item, p) => {
      const share = belongs[p * means.length + k] as number;
      if (share < FAINT) return;
      for (const reading of item.readings) {
        readingLikelihood(reading, mean, sd, cap, chance);
        pullInto(sum, weight, reading, chance, share, mean, reach);
      }
    });
    const free = mean.map((x, i) =>
      (weight[i] as number) > FAINT ? (sum[i] as number) / (weight[i] as number) : x,
    );
    out.means.push(seed.tie ? seed.tie(free, weight) : free);
    out.weights.push(weight);
  });
  return out;
}

function pullInto(
  sum: number[],
  weight: number[],
  reading: Variants,
  chance: Float64Array,
  share: number,
  mean: readonly number[],
  reach: number,
): void {
  const n = mean.length;
  for (let way = 0; way < reading.ways; way++) {
    const w = share * (chance[way] as number);
    if (w < FAINT) continue;
    for (let i = 0; i < n; i++) {
      const x = reading.sides[way * n + i] as number;
      if (Math.abs(x - (mean[i] as number)) > reach) continue;
      sum[i] = (sum[i] as number) + w * x;
      weight[i] = (weight[i] as number) + w;
    }
  }
}

/** The first of the likeliest ways. */
export function likeliest(chance: Float64Array, ways: number): number {
  let best = 0;
  for (let way = 1; way < ways; way++)
    if ((chance[way] as number) > (chance[best] as number)) best = way;
  return best;
}
