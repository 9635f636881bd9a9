import { describe, expect, it } from 'vitest';
import { baseOf } from '../../src/ground/base.ts';
import { defaultLoads } from '../../src/loads/schema.ts';
import { stageWind } from '../../src/loads/wind-cases.ts';
import { stageAfterLift } from '../../src/raise/order/check-order.ts';
import { plainBrief, planRaising, siteFor } from '../../src/raise/order/raise.ts';
import { completeCourses, type OrderSite } from '../../src/raise/order/site.ts';
import {
  heldAtLift,
  heldInStage,
  heldWords,
  type PlannedProp,
  type RaisingPlan,
  type RaisingStage,
} from '../../src/raise/plan.ts';
import { onJoints } from '../../src/stages/bearing.ts';
import { pressureOf } from '../../src/stages/limits.ts';
import { nothingKnown, type StageModel, stageModel } from '../../src/stages/model.ts';
import { stagesSection } from '../../src/stages/schema.ts';
import { frameOfStage } from '../../src/stages/stage.ts';
import { gearOf, type Line, type Mast } from '../../src/stages/supports/gear.ts';
import { linedFrame } from '../../src/stages/supports/lined.ts';
import { OneWayStage } from '../../src/stages/supports/one-way.ts';
import { loadsOf } from '../../src/stages/supports/state.ts';
import { cutBall, numbersOf } from '../stages/fixtures.ts';

const ball = cutBall(2, 40);
const shell = { ...ball, radius: 3, hubs: ball.hubs.map((x) => 3 * x) };

function modelWith(stages: object): StageModel {
  const base = baseOf(shell);
  if (!base.ok) throw new Error('it has a base ring');
  const gear = gearOf(stagesSection.parse(stages), base.value);
  if (!gear.ok) throw new Error(gear.faults[0]?.found);
  const made = stageModel(shell, numbersOf(shell), {
    loads: defaultLoads,
    massOf: () => ({ value: 12, sources: [] }),
    bears: nothingKnown,
    directions: 4,
    gear: gear.value,
  });
  if (!made.ok) throw new Error(made.faults[0]?.found);
  return made.value;
}

function planWith(model: StageModel): { plan: RaisingPlan; site: OrderSite } {
  const brief = { ...plainBrief(shell), model };
  const [plan, site] = [planRaising(brief, { tries: 0 }), siteFor(brief)];
  if (!plan.ok || !site.ok) throw new Error('it can be raised');
  return { plan: plan.value, site: site.value };
}

const isIn = ({ from, until }: PlannedProp, stage: number, lift: number): boolean =>
  1e3 * from.stage + from.lift <= 1e3 * stage + lift &&
  (until === null || 1e3 * until.stage + until.lift >= 1e3 * stage + lift);

/** Lifts after which it falls, each state asked whole with the props and lines that the plan has in. */
function falls(
  model: StageModel,
  { plan, site }: { plan: RaisingPlan; site: OrderSite },
  mast: Mast | null,
  gust: number,
): string[] {
  const groupOf = new Map<number, number>();
  const found: string[] = [];
  let lifts = 0;
  for (const stage of plan.stages)
    stage.lifts.forEach(({ places, props: held }, lift) => {
      const complete = completeCourses(site, (p) => groupOf.has(p));
      for (const p of places) groupOf.set(p, lifts);
      lifts++;
      const now = plan.props.filter((one) => isIn(one, stage.number, lift));
      const props = now.flatMap(({ hub, lines }) =>
        lines.length === 0 && held.includes(hub) ? [hub] : [],
      );
      const lines = now.flatMap((one) =>
        one.lines.map(
          ({ kind, hub, anchor, to }): Line => ({ kind, hub, anchor: anchor ?? 0, to }),
        ),
      );
      const frame = frameOfStage(shell, stageAfterLift(site, groupOf, props, complete));
      const lined = linedFrame(frame, lines, mast);
      const asked = new OneWayStage(lined);
      const { cases } = stageWind(model.wind, [...groupOf.keys()]);
      const loads = loadsOf(model, frame, cases, pressureOf(gust, model.airDensity.value));
      if (loads.some(({ panels }) => asked.under(onJoints(model, lined.tied, panels)) === null))
        found.push(`stage ${stage.number}, lift ${lift + 1}`);
    });
  return found;
}

const guys = { radii: [1.2, 2, 3.8, 4.8], count: 8 };
const mast = { height: 2.5, chains: 8, guyed: true };

describe('guys and a mast with chains in the order of work', () => {
  const model = modelWith({ guys, mast });
  const made = planWith(model);
  const { plan } = made;
  const rigged = plan.props.filter(({ lines }) => lines.length > 0);
  const gust = plan.rigging?.gust as number;
  const ownMast = model.gear?.mast ?? null;

  it('take the place of props, and the plan says which, where, from when and until when', () => {
    const bare = planWith(modelWith({})).plan;
    expect(bare.rigging).toBeNull();
    expect(bare.props.every(({ lines }) => lines.length === 0)).toBe(true);
    expect(plan.props.map(({ hub, from, until }) => [hub, from, until])).toEqual(
      bare.props.map(({ hub, from, until }) => [hub, from, until]),
    );
    expect(rigged.length).toBeGreaterThan(4);
    for (const { hub, lines } of rigged) expect(lines.every((line) => line.hub === hub)).toBe(true);
    expect(new Set(rigged.flatMap(({ lines }) => lines.map(({ kind }) => kind))).size).toBe(2);
  });

  it('hold every state of the order in every wind up to the gust that they are reckoned for', () => {
    expect(gust).toBeGreaterThan(5);
    expect(falls(model, made, ownMast, gust)).toEqual([]);
  });

  it('are each needed: with what holds one hub left out some state falls', () => {
    const [one] = rigged;
    const without = { ...plan, props: plan.props.filter((prop) => prop !== one) };
    expect(falls(model, { ...made, plan: without }, ownMast, 0)).not.toEqual([]);
  });

  it('are never more chains than the mast has, and press on its head', () => {
    for (const { number, lifts } of plan.stages)
      lifts.forEach((_, lift) => {
        const { lines } = heldAtLift(plan, number, lift);
        expect(lines.filter(({ kind }) => kind === 'chain').length).toBeLessThanOrEqual(8);
      });
    expect(plan.rigging?.mast?.sideways).toBeGreaterThan(0);
  });

  it('are counted in what goes in with a lift, what holds it, and what may go after it', () => {
    const [one] = rigged as [PlannedProp];
    const { stage, lift } = one.from;
    const all = expect.arrayContaining([...one.lines]);
    expect(heldAtLift(plan, stage, lift, 'in').lines).toEqual(all);
    expect(heldAtLift(plan, stage, lift).lines).toEqual(all);
    expect(heldInStage(plan, plan.stages[stage - 1] as RaisingStage).lines).toEqual(all);
    if (one.until === null) throw new Error('it goes');
    expect(heldAtLift(plan, one.until.stage, one.until.lift, 'out').lines).toEqual(all);
    expect(heldAtLift(plan, one.until.stage, null).lines).not.toEqual(all);
    expect(heldWords(heldAtLift(plan, stage, lift))).toMatch(/guy|chain/);
    expect(heldWords(heldAtLift(plan, plan.stages.length, null))).toBe('');
    expect(heldWords({ props: 2, lines: [] })).toBe('2 props');
  });

  it('stay props where lines would bear too little', () => {
    const weak = planWith(
      modelWith({ guys: { ...guys, bears: 5 }, mast: { ...mast, chainBears: 5 } }),
    );
    expect(weak.plan.props.filter(({ lines }) => lines.length > 0).length).toBeLessThan(
      rigged.length,
    );
  });
});
