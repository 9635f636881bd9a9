// Charge: what power tools and lights draw stage by stage against the batteries on site. Watt hours.

import { commonPractice, type Provenance } from '../../loads/provenance.ts';
import type { Gear } from '../gear.ts';
import type { RaisingPlan } from '../plan.ts';

/** What is asked. */
export interface ChargeQuestion {
  readonly plan: Pick<RaisingPlan, 'stages'>;
  readonly gear: Pick<Gear, 'powerTools' | 'lights' | 'batteries'>;
  /** Bolts of a seam; null where nobody knows. */
  readonly bolts: (seam: number) => number | null;
  /** Bolts of a seam of which nobody knows them; 4 where left out. */
  readonly boltsUnknown?: number;
  /** Stages after which all batteries are full again: evenings with mains or a generator. */
  readonly recharged?: readonly number[];
}

/** Charge of one stage. */
export interface StageCharge {
  readonly stage: number;
  /** Bolts run down by power tools: a bolt once, from finger to snug. The final pass goes by hand. */
  readonly bolts: number;
  readonly tools: number;
  readonly lights: number;
  /** In the batteries when it is done; below 0 it runs short by so much. */
  readonly left: number;
}

/** The charge of a plan. */
export interface Charge {
  /** Usable when full. */
  readonly full: number;
  readonly stages: readonly StageCharge[];
  /** The first stage that runs short; null: none does. */
  readonly short: number | null;
  /** In words: enough, or what is missing when. */
  readonly words: string;
  readonly unknown: readonly string[];
  readonly flags: readonly Provenance[];
}

/** Part of a battery's rating that is drawn before it is changed. */
export const USABLE_CHARGE = 0.8;
const USABLE = commonPractice('four fifths of a battery’s rating are drawn before it is changed');

/** Charge stage by stage. The thirstiest power tool counts for all bolts; lights of which nobody knows how long
 * they burn count for nothing, and that is told. */
export function chargeOf({
  plan,
  gear,
  bolts,
  boltsUnknown = 4,
  recharged = [],
}: ChargeQuestion): Charge {
  const full =
    USABLE_CHARGE *
    gear.batteries.reduce((sum, { wattHours, count }) => sum + wattHours * count, 0);
  const known = gear.powerTools.flatMap(({ wattHoursPerBolt }) =>
    wattHoursPerBolt === null ? [] : [wattHoursPerBolt],
  );
  const perBolt = Math.max(0, ...known);
  const lights = gear.lights.reduce(
    (sum, { watts, count, hours }) => sum + watts * count * (hours ?? 0),
    0,
  );
  const dark = gear.lights.filter(({ hours }) => hours === null);
  const snug = new Set<number>();
  const isFull = new Set(recharged);
  let left = full;
  let guessed = 0;
  const stages = plan.stages.map(({ number, pass }): StageCharge => {
    let run = 0;
    for (const seam of pass.snug) {
      if (snug.has(seam)) continue;
      snug.add(seam);
      const own = bolts(seam);
      if (own === null) guessed++;
      run += own ?? boltsUnknown;
    }
    const tools = run * perBolt;
    left -= tools + lights;
    const told = { stage: number, bolts: run, tools, lights, left };
    if (isFull.has(number)) left = full;
    return told;
  });
  const first = stages.find((stage) => stage.left < 0) ?? null;
  const worst = Math.min(...stages.map((stage) => stage.left));
  return {
    full,
    stages,
    short: first?.stage ?? null,
    words:
      first === null
        ? `Enough: of ${full.toFixed(0)} Wh the least left is ${Math.min(full, worst).toFixed(0)} Wh.`
        : `Stage ${first.stage} runs short: ${(-worst).toFixed(0)} Wh are missing in all; charge before it, or bring as much more.`,
    unknown: [
      ...gear.powerTools
        .filter(({ wattHoursPerBolt }) => wattHoursPerBolt === null)
        .map(({ name }) => `what ${name} draws for a bolt`),
      ...dark.map(
        ({ name, watts, count }) =>
          `how long ${name} burns: none of its ${(watts * count).toFixed(0)} Wh an hour is counted`,
      ),
      ...(guessed > 0 ? [`the bolts of ${guessed} seams: ${boltsUnknown} each are supposed`] : []),
    ],
    flags: [USABLE],
  };
}
