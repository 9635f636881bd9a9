// Panels of one number of sides turned into kinds: found, tied where sides are equal, fitted for
// the last time, with what is known of each side.

import { findKinds } from './cluster.ts';
import {
  blunderCost,
  fitMixture,
  type Item,
  likeliest,
  type Mixture,
  readingLikelihood,
  type Seed,
  type Variants,
  variantsOf,
} from './mixture.ts';
import { isFaceKnown, sidesAsSeen } from './odd-panels.ts';
import type { KindRow } from './schema.ts';
import { type Remedy, remedied } from './slips.ts';
import { bestTie, type Tie } from './ties.ts';
import { SIDE_SD_FLOOR } from './tolerances.ts';

/** One kind as fitted, in measured lengths (without hub allowance). */
export interface FittedKind {
  /** Its row in the file, or null for a kind made from readings. */
  readonly row: KindRow | null;
  readonly sides: readonly number[];
  readonly sds: readonly number[];
  /** Side → what as many readings or more say instead, metres; null where the side is settled. */
  readonly rivals: readonly (number | null)[];
  /** Whether the readings allow it to be its own mirror image. */
  readonly mirror: boolean;
  /** Sides that may differ from each other. */
  readonly freeSides: number;
  /** Readings that pull on it, as a sum of probabilities. */
  readonly readings: number;
  /** Sum of squares over the sides' misfits in standard deviations, blunders left out, and the
   * degrees of freedom it stands for. */
  readonly scatter: { readonly chiSquare: number; readonly freedom: number };
}

/** The kinds of one number of sides, and how each item fits each of them. */
export interface FittedKinds {
  readonly kinds: readonly FittedKind[];
  readonly items: readonly Item[];
  readonly mixture: Mixture;
  /** Index of a reading that is a slip → how it becomes right; `items` hold such readings made right. */
  readonly remedies: ReadonlyMap<number, Remedy>;
}

const LAST_PASSES = 12;

/** Kinds of all items (panels of one number of sides) and rows; rows keep their place. */
export function fitKinds(
  asRead: readonly Item[],
  rows: readonly KindRow[],
  sd: number,
): FittedKinds {
  const stated = rows.map((row): Seed => ({ sides: row.sides, given: row.sides }));
  const { seeds: found, remedies } = findKinds(asRead, stated, sd);
  const items = asRead.map((item) => madeRight(item, remedies));
  const first = fitMixture(items, found, sd, LAST_PASSES);
  const tied = tiedKinds(items, rows, found, first, sd);
  const mixture = fitMixture(
    items,
    tied.map(({ seed }) => seed),
    sd,
    LAST_PASSES,
  );
  return {
    kinds: tied.map((kind, k) => fittedKind(kind, k, items, mixture, sd)),
    items,
    mixture,
    remedies: byIndex(asRead, remedies),
  };
}

/** The item with its slipped readings made right. What must be read again stays: it is too far off to
 * pull on its kind. */
function madeRight(item: Item, remedies: ReadonlyMap<Variants, Remedy>): Item {
  if (!item.readings.some((reading) => remedies.has(reading))) return item;
  return {
    panel: item.panel,
    readings: item.readings.map((reading) => {
      const remedy = remedies.get(reading);
      if (!remedy) return reading;
      const asSeen = sidesAsSeen(reading);
      const right = remedied(asSeen, remedy);
      return variantsOf(
        right.map((x, i) => (Number.isNaN(x) ? (asSeen[remedy.order[i] as number] as number) : x)),
        isFaceKnown(reading),
        reading.bias,
      );
    }),
  };
}

function byIndex(
  items: readonly Item[],
  remedies: ReadonlyMap<Variants, Remedy>,
): Map<number, Remedy> {
  const out = new Map<number, Remedy>();
  for (const { panel, readings } of items)
    readings.forEach((reading, r) => {
      const remedy = remedies.get(reading);
      const at = panel.readings[r];
      if (remedy && at) out.set(at.index, remedy);
    });
  return out;
}

interface TiedKind {
  readonly row: KindRow | null;
  readonly tie: Tie;
  readonly seed: Seed;
  /** Items that are likeliest of this kind. */
  readonly own: readonly Item[];
}

/** The kinds found that are in the file or have panels, with the sides that are equal tied. */
function tiedKinds(
  items: readonly Item[],
  rows: readonly KindRow[],
  found: readonly Seed[],
  first: Mixture,
  sd: number,
): TiedKind[] {
  const members = membersOf(items, first);
  return found.flatMap((seed, k): TiedKind[] => {
    const row = rows[k] ?? null;
    const own = members[k] as Item[];
    if (row === null && own.length === 0) return [];
    const near = items.flatMap((item, p) => {
      const weight = first.belongs[p * found.length + k] as number;
      return weight > 0.01 ? [{ item, weight }] : [];
    });
    const fit = bestTie(
      near.map(({ item }) => item),
      near.map(({ weight }) => weight),
      { ...seed, sides: first.means[k] as number[] },
      sd,
    );
    return [{ row, ...fit, own }];
  });
}

function fittedKind(
  { row, tie, own }: TiedKind,
  k: number,
  items: readonly Item[],
  mixture: Mixture,
  sd: number,
): FittedKind {
  const evidence = evidenceOf(items, mixture, k, sd);
  const unread = row !== null && own.length === 0;
  const pooled = unread ? evidence.information : pool(evidence.information, tie.classOf);
  return {
    row,
    sides: unread ? row.sides : (mixture.means[k] as number[]),
    sds: pooled.map((information, i) =>
      information < 0.5 || evidence.rivals[i] !== null
        ? Math.max(sd, evidence.worst[i] as number)
        : Math.max(SIDE_SD_FLOOR, sd / Math.sqrt(information)),
    ),
    rivals: evidence.rivals,
    mirror: tie.mirror,
    freeSides: tie.classes,
    readings: evidence.readings,
    scatter: {
      chiSquare: evidence.chiSquare,
      freedom: Math.max(0, evidence.inliers - tie.classes),
    },
  };
}

function membersOf(items: readonly Item[], mixture: Mixture): Item[][] {
  const kinds = mixture.means.length;
  const members: Item[][] = mixture.means.map(() => []);
  items.forEach((item, p) => {
    const row = mixture.belongs.subarray(p * kinds, (p + 1) * kinds);
    if (kinds > 0) members[likeliest(row, kinds)]?.push(item);
  });
  return members;
}

interface Evidence {
  /** Side → readings' worth of information on it. */
  readonly information: readonly number[];
  /** Side → largest misfit among its panels, metres. */
  readonly worst: readonly number[];
  /** Side → mean of the blundered readings where they are no fewer than the others. */
  readonly rivals: readonly (number | null)[];
  readonly readings: number;
  readonly chiSquare: number;
  readonly inliers: number;
}

/** What the items say of one kind. Where a panel may be of another kind, information is lost: the
 * observed information of a mixture (Louis 1982), kept above a fifth of the plain count. */
function evidenceOf(items: readonly Item[], mixture: Mixture, k: number, sd: number): Evidence {
  const mean = mixture.means[k] as readonly number[];
  const cap = blunderCost(sd);
  const reach = Math.sqrt(2 * cap) * sd;
  const chance = new Float64Array(64);
  const lost = mean.map(() => 0);
  const worst = mean.map(() => 0);
  const away = mean.map(() => ({ count: 0, sum: 0 }));
  let [readings, chiSquare, inliers] = [0, 0, 0];
  items.forEach((item, p) => {
    const share = mixture.belongs[p * mixture.means.length + k] as number;
    if (share < 0.001) return;
    for (const reading of item.readings) {
      readingLikelihood(reading, mean, sd, cap, chance);
      const way = likeliest(chance, reading.ways);
      readings += share;
      mean.forEach((x, i) => {
        const side = reading.sides[way * mean.length + i] as number;
        const off = Math.abs(side - x);
        if (share > 0.5) worst[i] = Math.max(worst[i] as number, off);
        if (off > reach) {
          const others = away[i] as { count: number; sum: number };
          others.count += share;
          others.sum += share * side;
          return;
        }
        lost[i] = (lost[i] as number) + share * (1 - share) * (off / sd) ** 2;
        chiSquare += share * (off / sd) ** 2;
        inliers += share;
      });
    }
  });
  const weights = mixture.weights[k] as readonly number[];
  return {
    information: weights.map((w, i) => Math.max(w - (lost[i] as number), w / 5)),
    worst,
    rivals: away.map(({ count, sum }, i) =>
      count > 0.5 && count > (weights[i] as number) - 0.5 ? sum / count : null,
    ),
    readings,
    chiSquare,
    inliers,
  };
}

/** Information of tied sides put together. */
function pool(information: readonly number[], classOf: readonly number[]): number[] {
  const sums = information.map(() => 0);
  classOf.forEach((c, i) => {
    sums[c] = (sums[c] as number) + (information[i] as number);
  });
  return classOf.map((c) => sums[c] as number);
}
