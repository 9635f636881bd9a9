// Bags and kit of a plan: a bag for each stage with its label, what is to be bought before which stage, what
// is still to go into the bags, tools by stage, and charge against the batteries on site.

import { mergeSources, type Provenance } from '../../loads/provenance.ts';
import { type BagQuestion, type Bags, bagsOf, needsByStage } from '../bags/bags.ts';
import { type BuyBefore, buyBefore } from '../bags/buy-before.ts';
import { type Charge, type ChargeQuestion, chargeOf } from '../bags/charge.ts';
import { type KitCheck, type KitTick, kitCheck } from '../bags/kit-check.ts';
import { type StageTools, toolsOf } from '../bags/tools.ts';
import { heldInStage } from '../plan.ts';
import { heightsOf } from './inside.ts';
import { liftsOfStages } from './lifts.ts';
import { type RaisedShell, seamsOf } from './raised.ts';

/** What is known besides. */
export interface KitFacts extends Pick<ChargeQuestion, 'recharged'> {
  /** What has gone into bags so far; nothing where left out. */
  readonly ticks?: readonly KitTick[];
  /** Pairs who bolt at the same time; 2 where left out. */
  readonly pairs?: number;
}

/** Bags and kit. */
export interface KitAnswer {
  readonly bags: Bags;
  readonly check: KitCheck;
  readonly buy: readonly BuyBefore[];
  readonly tools: readonly StageTools[];
  /** Null where nothing on site draws charge. */
  readonly charge: Charge | null;
  readonly flags: readonly Provenance[];
}

/** Bags and kit of a raised shell. RangeError for a tick of a bag that there is none of. */
export function kitAnswer(raised: RaisedShell, facts: KitFacts = {}): KitAnswer {
  const { plan, gear } = raised;
  const question = bagQuestion(raised);
  const bags = bagsOf(question);
  const { byStage } = needsByStage(question);
  const heights = new Map(heightsOf(raised).map((one) => [one.stage, one]));
  const lifts = new Map(liftsOfStages(raised).map((one) => [one.stage, one.lifts]));
  const patterns = seamsOf(raised).map((one) => (one.status === 'known' ? one.pattern : null));
  const tools = plan.stages.map((stage) => {
    const { snug, final } = stage.pass;
    return toolsOf(stage, byStage.get(stage.number) ?? [], {
      threads: [...new Set([...snug, ...final].flatMap((seam) => patterns[seam]?.thread ?? []))],
      ways: (lifts.get(stage.number) ?? []).flatMap(({ told: { best } }) => best ?? []),
      heights: heights.get(stage.number) ?? null,
      held: heldInStage(plan, stage),
      ...(facts.pairs !== undefined && { pairs: facts.pairs }),
    });
  });
  const draws = gear.powerTools.length + gear.lights.length > 0;
  const { ticks = [], pairs: _, ...light } = facts;
  const charge = draws
    ? chargeOf({ plan, gear, bolts: (seam) => patterns[seam]?.holes ?? null, ...light })
    : null;
  return {
    bags,
    check: kitCheck(bags.bags, ticks),
    buy: buyBefore(question),
    tools,
    charge,
    flags: mergeSources(...tools.map(({ sources }) => sources), charge?.flags ?? []),
  };
}

const bagQuestion = (raised: RaisedShell): BagQuestion => {
  const { shell, numbers, plan, kinds, takeoff, holes, hardware } = raised;
  return { shell, numbers, plan, kinds, settings: takeoff, counts: holes, hardware };
};
