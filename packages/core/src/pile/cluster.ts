// How many kinds a heap of panels holds. Panels near each other in every side are looked at
// together; one kind is split into two as long as that gains more log likelihood than the BIC asks
// for; an odd panel that is another kind but for one blundered side goes to that kind.

import {
  blunderCost,
  fitMixture,
  type Item,
  type Mixture,
  readingLikelihood,
  type Seed,
  type Variants,
} from './mixture.ts';
import { components, firstWay } from './neighbours.ts';
import { heapOf, isFaceKnown, isTurnedOver, type OddPanels, remediesOfOdd } from './odd-panels.ts';
import { fromOtherFace, handOf, nearestTurn } from './polygon.ts';
import { residuals, scatterAxes } from './scatter.ts';
import type { Remedy, Slip } from './slips.ts';
import { LEAST_SEPARATION, LEAST_SPLIT_GAIN, NEW_KIND_BLUNDERS } from './tolerances.ts';

/** Readings that a kind must have before odd panels are taken for blunders of it. */
const ESTABLISHED = 3;

/** What a heap of panels holds. */
export interface FoundKinds {
  readonly seeds: readonly Seed[];
  /** Readings that are no kind of their own but a slip, and how they become right. */
  readonly remedies: ReadonlyMap<Variants, Remedy>;
}

/** Seeds of all kinds among items of one number of sides, the stated ones first and in order.
 * Stated kinds are never dropped or merged. */
export function findKinds(items: readonly Item[], stated: readonly Seed[], sd: number): FoundKinds {
  const found: Seed[] = stated.map((seed) => seed);
  const sizes: number[] = stated.map(() => ESTABLISHED);
  const odd: OddPanels[] = [];
  for (const part of components(items, stated, sd)) {
    const fitted = splitUp(
      part.items,
      part.stated.map((s) => stated[s] as Seed),
      sd,
    );
    fitted.seeds.forEach((seed, k) => {
      const own = membersOf(part.items, fitted.mixture, k);
      const at = part.stated[k];
      if (at !== undefined) {
        found[at] = seed;
        sizes[at] = Math.max(ESTABLISHED, own.length);
      } else if (
        own.length > 0 &&
        own.length < ESTABLISHED &&
        own.every((i) => i.panel.count === 1)
      )
        odd.push({ seed, items: own });
      else if (own.length > 0) {
        found.push(seed);
        sizes.push(own.length);
      }
    });
  }
  const isEstablished = (k: number): boolean => (sizes[k] as number) >= ESTABLISHED;
  const targets = found.filter((_, k) => isEstablished(k));
  const established = found.flatMap((seed, k) =>
    isEstablished(k) ? [{ sides: seed.sides, panels: sizes[k] as number }] : [],
  );
  const heap = heapOf(established, odd, sd);
  const remedies = new Map<Variants, Remedy>();
  const isSlip = (o: OddPanels, sorts: readonly Slip[]): boolean => {
    const found = remediesOfOdd(o, heap, sorts);
    found?.forEach((remedy, reading) => {
      remedies.set(reading, remedy);
    });
    return found !== null;
  };
  const kept = odd.filter((o) => {
    if (isAsRead(o)) return true;
    if (isSlip(o, ['face', 'swapped'])) return false;
    if (isBlunder(o.items, o.seed, targets, sd)) return false;
    return !isSlip(o, isTurnedOver(o, heap) ? ['unit'] : ['unit', 'length']);
  });
  return { seeds: [...found, ...kept.map((o) => o.seed)], remedies };
}

/** Whether a person says that one of them stands as it was read. */
const isAsRead = ({ items }: OddPanels): boolean =>
  items.some((item) => item.panel.readings.some((reading) => reading.asRead));

function membersOf(items: readonly Item[], mixture: Mixture, k: number): Item[] {
  const kinds = mixture.means.length;
  return items.filter((_, p) => {
    const row = mixture.belongs.subarray(p * kinds, (p + 1) * kinds);
    return row.indexOf(Math.max(...row)) === k;
  });
}

/** Whether a lone item is more likely a panel of an established kind with a blundered side; two that
 * are blundered alike would be a wonder. */
function isBlunder(
  items: readonly Item[],
  own: Seed,
  targets: readonly Seed[],
  sd: number,
): boolean {
  if (items.length > 1) return false;
  const cost = NEW_KIND_BLUNDERS * blunderCost(sd);
  const alone = likelihoodOf(items, own.sides, sd) - cost;
  return targets.some((target) => likelihoodOf(items, target.sides, sd) > alone);
}

function likelihoodOf(items: readonly Item[], mean: readonly number[], sd: number): number {
  const cap = blunderCost(sd);
  const chance = new Float64Array(64);
  let sum = 0;
  for (const item of items)
    for (const reading of item.readings) sum += readingLikelihood(reading, mean, sd, cap, chance);
  return sum;
}

interface Fitted {
  readonly seeds: readonly Seed[];
  readonly mixture: Mixture;
}

/** Splits kinds until no split gains enough. Stated kinds stay first and in order. */
function splitUp(items: readonly Item[], stated: readonly Seed[], sd: number): Fitted {
  const start = stated.length > 0 ? stated : [firstSeed(items)];
  let current = refit(items, start, sd);
  let settled = new Set<string>();
  for (let round = 0; round < items.length; round++) {
    const split = bestSplit(items, current, sd, settled);
    if (!split) break;
    const next = refit(items, split, sd);
    if (next.mixture.total - current.mixture.total < splitPenalty(items, split[0] as Seed)) {
      settled = new Set([...settled, ...current.seeds.map(keyOf)]);
      continue;
    }
    current = next;
  }
  return current;
}

function refit(items: readonly Item[], seeds: readonly Seed[], sd: number): Fitted {
  const mixture = fitMixture(items, seeds, sd);
  return {
    seeds: seeds.map((seed, k) => ({ ...seed, sides: mixture.means[k] as number[] })),
    mixture,
  };
}

const keyOf = (seed: Seed): string => seed.sides.map((s) => s.toFixed(7)).join();

/** The middle reading of known face, by sum of sides; where no face is known the middle one from the
 * face that makes it R, so that how such a reading was written down decides nothing. */
function firstSeed(items: readonly Item[]): Seed {
  const readings = items.map((item) => item.readings.find(isFaceKnown) ?? item.readings[0]);
  const known = readings.filter((reading) => reading && isFaceKnown(reading));
  const from = known.length > 0 ? known : readings;
  const middle = from[Math.floor(from.length / 2)] as Variants;
  const sides = [...firstWay(middle.sides, middle.ways).sides];
  const turned = !isFaceKnown(middle) && handOf(sides) === 'L';
  return { sides: turned ? fromOtherFace(sides) : sides, given: null };
}

const splitPenalty = (items: readonly Item[], seed: Seed): number =>
  Math.max(
    (LEAST_SPLIT_GAIN * seed.sides.length) / 3,
    ((seed.sides.length + 1) / 2) * Math.log(items.length),
  );

/** The seeds after the split that gains most, or null where none gains enough. Kinds tried in vain
 * are remembered in `settled` until they change. */
function bestSplit(
  items: readonly Item[],
  fitted: Fitted,
  sd: number,
  settled: Set<string>,
): Seed[] | null {
  const kinds = fitted.seeds.length;
  let best: { gain: number; seeds: Seed[] } | null = null;
  for (let k = 0; k < kinds; k++) {
    const seed = fitted.seeds[k] as Seed;
    if (settled.has(keyOf(seed))) continue;
    const own = items.filter((_, p) => (fitted.mixture.belongs[p * kinds + k] as number) > 0.05);
    const split = own.length + (seed.given ? 1 : 0) < 2 ? null : splitOne(own, seed, sd);
    if (!split) settled.add(keyOf(seed));
    else if (!best || split.gain > best.gain)
      best = {
        gain: split.gain,
        seeds: [
          ...fitted.seeds.slice(0, k),
          split.seeds[0],
          ...fitted.seeds.slice(k + 1),
          split.seeds[1],
        ],
      };
  }
  return best?.seeds ?? null;
}

/** Passes after which the starts of a split are compared, and the best one followed. */
const FIRST_LOOK = 8;

/** The best of a few splits of one kind: along the directions in which its panels scatter most, and
 * off its worst panel. A stated row stays with the first of the two. */
function splitOne(
  items: readonly Item[],
  seed: Seed,
  sd: number,
): { gain: number; seeds: [Seed, Seed] } | null {
  const whole = fitMixture(items, [seed], sd);
  const centre: Seed = { ...seed, sides: whole.means[0] as number[] };
  const starts = startsOf(items, centre, whole, sd);
  const tries = starts.map(([a, b]) =>
    fitMixture(
      items,
      [
        { ...seed, sides: a },
        { sides: b, given: null },
      ],
      sd,
      FIRST_LOOK,
    ),
  );
  const first = tries.reduce<Mixture | null>((a, b) => (a && a.total >= b.total ? a : b), null);
  if (!first) return null;
  const pair = (fit: Mixture): [Seed, Seed] => [
    { ...seed, sides: fit.means[0] as number[] },
    { sides: fit.means[1] as number[], given: null },
  ];
  const fit = fitMixture(items, pair(first), sd);
  const gain = fit.total - whole.total;
  const apart = Math.sqrt(nearestTurn(fit.means[0] as number[], fit.means[1] as number[]).cost);
  return gain > splitPenalty(items, seed) && apart > LEAST_SEPARATION * sd
    ? { gain, seeds: pair(fit) }
    : null;
}

function startsOf(
  items: readonly Item[],
  centre: Seed,
  whole: Mixture,
  sd: number,
): [number[], number[]][] {
  const n = centre.sides.length;
  const offsets = residuals(items, centre.sides, sd);
  const starts: [number[], number[]][] = [];
  for (const { axis, variance } of scatterAxes(offsets, n, sd)) {
    const step = Math.sqrt(Math.max(variance - sd * sd, 0.25 * sd * sd));
    const a = centre.sides.map((x, i) => x + step * (axis[i] as number));
    const b = centre.sides.map((x, i) => x - step * (axis[i] as number));
    starts.push([a, b]);
    if (centre.given) starts.push([b, a]);
  }
  const worst = whole.likelihood.indexOf(Math.min(...whole.likelihood));
  if ((whole.likelihood[worst] as number) < -(n / 2) - 4) {
    const off = offsets.find((o) => o.item === worst)?.off as readonly number[];
    starts.push([[...centre.sides], centre.sides.map((x, i) => x + (off[i] as number))]);
  }
  return starts;
}
