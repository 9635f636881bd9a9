// What must be bought before which stage, so that nobody drives to the shop on day one: stages use up what
// is in hand in their order; the first that would run short needs the purchase before it begins.

import { type BuyLine, buyLine } from '../../takeoff/buy-line.ts';
import { type Need, summedNeeds } from '../../takeoff/needs.ts';
import { type BagQuestion, needsByStage } from './bags.ts';
import { needKey } from './words.ts';

/** One size to buy. */
export interface BuyBefore {
  /** The whole build's line: what is needed, in hand, to buy with spares and packs. */
  readonly line: BuyLine;
  /** The first stage that can't be done with what is in hand; null: only spares are short. */
  readonly before: number | null;
  /** Stage by stage what is missing in it, without spares, where something is. */
  readonly short: readonly { readonly stage: number; readonly quantity: number }[];
}

/** What is to be bought, what is wanted first before the rest. Sizes of which enough is in hand, spares
 * and all, are not in it. */
export function buyBefore(question: BagQuestion): BuyBefore[] {
  const { plan, hardware, settings } = question;
  const { byStage } = needsByStage(question);
  const lines = summedNeeds([...byStage.values()].flat())
    .map((need) => buyLine(need, hardware, settings))
    .filter(({ toBuy }) => toBuy > 0);
  return lines
    .map((line) => {
      let left = line.inHand;
      const short = plan.stages.flatMap(({ number }) => {
        const need = (byStage.get(number) ?? []).find(
          (one: Need) => needKey(one) === needKey(line),
        );
        const wanted = need?.quantity ?? 0;
        const missing = Math.max(0, wanted - left);
        left = Math.max(0, left - wanted);
        return missing > TINY ? [{ stage: number, quantity: missing }] : [];
      });
      return { line, before: short[0]?.stage ?? null, short };
    })
    .sort((a, b) => (a.before ?? Infinity) - (b.before ?? Infinity));
}

/** Metres of tape below which nothing is missing. */
const TINY = 1e-9;
