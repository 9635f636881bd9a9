// The guys and chains of an order: its states as the stages know them, and which hub is held how long.

import type { StageModel } from '../../stages/model.ts';
import type { Stage } from '../../stages/stage.ts';
import type { RaisingPlan } from '../plan.ts';
import { type HeldFor, rigged } from '../rigging.ts';
import { stageAfterLift } from './check-order.ts';
import type { OrderSite } from './site.ts';
import type { Step } from './walk.ts';

/** The states of a walk: after each lift, and once more where its seams are tightened then; `of`: lift →
 * its state when it is let go. */
function statesOf(
  site: OrderSite,
  steps: readonly Step[],
): { readonly states: readonly Stage[]; readonly of: readonly number[] } {
  const states: Stage[] = [];
  const of: number[] = [];
  const groupOf = new Map<number, number>();
  let complete = 0;
  steps.forEach((step, k) => {
    for (const p of step.piece.places) groupOf.set(p, k);
    const now = new Map(groupOf);
    of.push(states.length);
    states.push(stageAfterLift(site, now, step.props, complete));
    if (step.complete > complete) {
      complete = step.complete;
      states.push(stageAfterLift(site, now, step.after, complete));
    }
  });
  return { states, of };
}

/** A plan with guys and chains in the place of props, where there are any and they can hold. */
export function rigOrder(
  site: OrderSite,
  steps: readonly Step[],
  plan: RaisingPlan,
  model: StageModel | undefined,
): RaisingPlan {
  if (!model?.gear || plan.props.length === 0) return plan;
  const { states, of } = statesOf(site, steps);
  const first: number[] = [];
  let lifts = 0;
  for (const stage of plan.stages) {
    first[stage.number] = lifts;
    lifts += stage.lifts.length;
  }
  const stateOf = ({ stage, lift }: { readonly stage: number; readonly lift: number }): number =>
    of[(first[stage] as number) + lift] as number;
  const held = plan.props.map(
    ({ hub, from, until }): HeldFor => ({
      hub,
      from: stateOf(from),
      to: until === null ? -1 : stateOf(until),
    }),
  );
  const { lines, gust, mast, assumed } = rigged(model, model.gear, states, held);
  if (lines.every((own) => own.length === 0)) return plan;
  return {
    ...plan,
    props: plan.props.map((prop, i) => ({ ...prop, lines: lines[i] ?? [] })),
    rigging: { gust, mast },
    assumed: [...plan.assumed, ...assumed],
  };
}
