// Which sides of a kind are equal: for every symmetry that a polygon can have, the kind is fitted
// again with those sides tied, and the simplest account that the readings allow is kept. A kind
// with a mirror axis is its own mirror image and has no hand.

import { fitMixture, type Item, type Mixture, type Seed } from './mixture.ts';
import { FREE_SIDE_GAIN } from './tolerances.ts';

/** A symmetry: side → number of its class of equal sides. */
export interface Tie {
  readonly classOf: readonly number[];
  readonly classes: number;
  /** Whether a polygon of this symmetry is its own mirror image. */
  readonly mirror: boolean;
}

/** Every symmetry of a polygon of `n` sides, no symmetry first, without repeats. */
export function tiesOf(n: number): Tie[] {
  const turns = [...Array(n).keys()].filter((d) => d > 0 && d < n && n % d === 0);
  const rotations = turns.map((d) => (i: number) => (i + d) % n);
  const mirrors = [...Array(n).keys()].map((axis) => (i: number) => (axis - i + n) % n);
  const sets = [
    [],
    ...mirrors.map((m) => [m]),
    ...rotations.map((r) => [r]),
    ...rotations.flatMap((r) => mirrors.map((m) => [m, r])),
  ];
  const ties = sets.map((moves) => tieFrom(n, moves));
  return ties.filter(
    (tie, i) => ties.findIndex((t) => t.classOf.join() === tie.classOf.join()) === i,
  );
}

function tieFrom(n: number, moves: readonly ((i: number) => number)[]): Tie {
  const classOf = new Array<number>(n).fill(-1);
  let classes = 0;
  for (let i = 0; i < n; i++) {
    if (classOf[i] !== -1) continue;
    const queue = [i];
    while (queue.length > 0) {
      const side = queue.pop() as number;
      if (classOf[side] !== -1) continue;
      classOf[side] = classes;
      queue.push(...moves.map((move) => move(side)));
    }
    classes++;
  }
  const mirror = [...Array(n).keys()].some((axis) =>
    classOf.every((c, i) => c === classOf[(axis - i + n) % n]),
  );
  return { classOf, classes, mirror };
}

/** The sides with each class at its weighted mean (plain mean where all weights are 0). */
export function tieSides(tie: Tie, sides: readonly number[], weights: readonly number[]): number[] {
  const sum = new Array<number>(tie.classes).fill(0);
  const weight = new Array<number>(tie.classes).fill(0);
  sides.forEach((x, i) => {
    const c = tie.classOf[i] as number;
    const w = (weights[i] as number) + 1e-9;
    sum[c] = (sum[c] as number) + w * x;
    weight[c] = (weight[c] as number) + w;
  });
  return tie.classOf.map((c) => (sum[c] as number) / (weight[c] as number));
}

const PASSES = 40;

/** The symmetry that the panels of one kind allow, and the kind fitted with it. `weights`: the
 * probability of each item to be of this kind. */
export function bestTie(
  items: readonly Item[],
  weights: readonly number[],
  seed: Seed,
  sd: number,
): { tie: Tie; seed: Seed } {
  const [free, ...tied] = tiesOf(seed.sides.length) as [Tie, ...Tie[]];
  const fit = fitMixture(items, [seed], sd, PASSES, weights);
  let best = { tie: free, seed: { ...seed, sides: fit.means[0] as number[] } };
  let bestScore = score(fit, seed, sd) - FREE_SIDE_GAIN * free.classes;
  for (const tie of tied) {
    if (tooFar(tie, fit, sd)) continue;
    const start: Seed = {
      ...seed,
      sides: tieSides(tie, fit.means[0] as number[], fit.weights[0] as number[]),
      tie: (sides, weights) => tieSides(tie, sides, weights),
    };
    const again = fitMixture(items, [start], sd, PASSES, weights);
    const worth = score(again, seed, sd) - FREE_SIDE_GAIN * tie.classes;
    if (worth > bestScore) {
      best = { tie, seed: { ...start, sides: again.means[0] as number[] } };
      bestScore = worth;
    }
  }
  return best;
}

/** Log likelihood of the readings and of the stated row. */
function score(fit: Mixture, seed: Seed, sd: number): number {
  const mean = fit.means[0] as readonly number[];
  const off = (seed.given ?? []).reduce((sum, x, i) => sum + (x - (mean[i] as number)) ** 2, 0);
  return fit.total - off / (2 * sd * sd);
}

const HOPELESS = 60;

function tooFar(tie: Tie, fit: Mixture, sd: number): boolean {
  const mean = fit.means[0] as readonly number[];
  const weights = fit.weights[0] as readonly number[];
  const level = tieSides(tie, mean, weights);
  const off = mean.reduce(
    (sum, x, i) => sum + (weights[i] as number) * (x - (level[i] as number)) ** 2,
    0,
  );
  return off / (sd * sd) > HOPELESS;
}
