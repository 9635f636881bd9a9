// How probable each candidate is: its evidence from the sides, from the counts of the pile and
// from the joined groups, against one another and against a net that was not found.

import type { Kind } from '../pile/kind.ts';
import type { NetFit } from './fit.ts';

/** What speaks for or against one candidate. */
export interface Case {
  readonly fit: NetFit;
  /** Natural logarithm of the evidence from the sides. */
  readonly evidence: number;
  /** Kind → places of the whole net. */
  readonly places: readonly number[];
  /** Joined groups that occur nowhere in it, each as often as there are such groups. */
  readonly misfitCount: number;
  /** Kinds it has no place for. */
  readonly unused: readonly number[];
  /** Whether a side had to be taken as mis-measured. */
  readonly doubted: boolean;
}

/** Chance that a group's marks or order were written down wrong: common practice, no source. */
const GROUP_SLIP = 0.01;
/** A misread group counts at most this often: one careless day spoils many. */
const MOST_SLIPS = 3;
/** Standard deviation of ln (count / places): losses, spares, cut domes. */
const COUNT_SPREAD = 0.35;
/** A count further off than this many deviations has some reason of its own. */
const COUNT_CAP = 3;
/** So many times what a net needs of every kind is still a heap for it: two balls, or many spares. */
const SEVERAL = 2;
/** Most that surplus weighs: it leaves the net a few parts in a hundred. */
const MOST_SURPLUS = Math.log(2e4);
/** Odds that the right net was not found although one that fits as it should was. */
const UNFOUND = 1e-3;
/** The same where next to nothing of the net was asked of the readings: four of any acute triangle close. */
const UNFOUND_UNASKED = 0.5;
/** … a tenth of it where the pile has just as many panels as the net takes … */
const COUNTED = { share: 0.1, within: 0.1 };
/** … and by how much less for every condition beyond the first: equal sides are common by themselves. */
const CHANCE = 0.06;
/** The same where the net fits only with one side taken as mis-measured: a missing kind may look so. */
const UNFOUND_DOUBTED = 0.2;
/** Odds against a net for every kind that it leaves unused … */
const UNUSED = Math.log(50);
/** … or, where that is a handful of panels among many, what a few strangers in a heap cost … */
const FEW = { panels: 5, share: 0.05, cost: Math.log(2) };
/** … and the more, the larger its share of the heap is: a net of a few of the kinds is seldom it. */
const UNUSED_SHARE = 8;

/** The probability of each case; with that of a net not found they add up to 1. */
export function probabilities(cases: readonly Case[], kinds: readonly Kind[]): number[] {
  const weights = cases.map((one) => weightOf(one, kinds));
  const best = Math.max(...weights);
  const at = cases[weights.indexOf(best)] as Case;
  const excess = Math.max(
    0,
    at.fit.chi2 - at.fit.conditions - 2 * Math.sqrt(2 * at.fit.conditions),
  );
  const surplus = surplusWeight(at.places, kinds);
  const unfound =
    (at.doubted ? UNFOUND_DOUBTED : UNFOUND) *
      Math.exp(excess / 2 + unusedWeight(at.unused, kinds) + surplus) +
    unaskedOdds(at, kinds);
  const odds = weights.map((weight) => Math.exp(weight - best));
  const total = odds.reduce((sum, x) => sum + x, 0) * (1 + unfound);
  return odds.map((x) => x / total);
}

/** Odds that a net which asks hardly anything of the readings is one by chance. */
function unaskedOdds({ fit, places }: Case, kinds: readonly Kind[]): number {
  const isCounted = kinds.every((kind, k) => {
    const need = places[k] as number;
    const have = kind.good + kind.repair + kind.scrap;
    return kind.counted && Math.abs(have - need) <= COUNTED.within * need;
  });
  const share = isCounted ? COUNTED.share : 1;
  return share * UNFOUND_UNASKED * CHANCE ** Math.max(0, fit.conditions - 1);
}

function weightOf(one: Case, kinds: readonly Kind[]): number {
  const groups = Math.min(one.misfitCount, MOST_SLIPS) * Math.log(GROUP_SLIP);
  return one.evidence + countWeight(one.places, kinds) + groups - unusedWeight(one.unused, kinds);
}

/** What the kinds that a net has no place for say against it. */
function unusedWeight(unused: readonly number[], kinds: readonly Kind[]): number {
  const panels = ({ good, repair, scrap }: Kind): number => good + repair + scrap;
  const counted = kinds.every((kind) => kind.counted);
  const all = kinds.reduce((sum, kind) => sum + panels(kind), 0);
  return unused.reduce((sum, k) => {
    const own = panels(kinds[k] as Kind);
    const share = counted && all > 0 ? own / all : 1 / kinds.length;
    const isFew = counted && own <= FEW.panels && share <= FEW.share;
    return sum + (isFew ? FEW.cost : UNUSED + UNUSED_SHARE * share);
  }, 0);
}

/** What a pile with far more panels of every kind than the net has places says against it: few heaps
 * hold several balls, so a larger net was likely not found. Never so much that the net is not listed. */
function surplusWeight(places: readonly number[], kinds: readonly Kind[]): number {
  const ratios = kinds.flatMap((kind, k) => {
    const need = places[k] as number;
    return kind.counted && need > 0 ? [(kind.good + kind.repair + kind.scrap) / need] : [];
  });
  const beyond = Math.log(Math.min(...ratios) / SEVERAL) / COUNT_SPREAD;
  return ratios.length > 0 && beyond > 0 ? Math.min(beyond ** 2 / 2, MOST_SURPLUS) : 0;
}

/** Log likelihood of the counts: each near its number of places, give or take. */
function countWeight(places: readonly number[], kinds: readonly Kind[]): number {
  let weight = 0;
  kinds.forEach((kind, k) => {
    const count = kind.good + kind.repair + kind.scrap;
    const need = places[k] as number;
    if (!kind.counted || need === 0) return;
    const off = Math.log(Math.max(count, 0.5) / need) / COUNT_SPREAD;
    weight -= Math.min(off ** 2, COUNT_CAP ** 2) / 2;
  });
  return weight;
}
