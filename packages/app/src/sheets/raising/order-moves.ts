// The stages of a plan in an order that is tried: one moved, and which of them a lift belongs to.

import type { RaisingPlan } from '@shellraise/core';

/** The order with a stage put at a position (from 0), the others closing up. Positions over the ends count
 * as the ends; a stage that is not in it changes nothing. */
export function movedTo(order: readonly number[], stage: number, to: number): number[] {
  if (!order.includes(stage)) return [...order];
  const others = order.filter((one) => one !== stage);
  const at = Math.max(0, Math.min(others.length, to));
  return [...others.slice(0, at), stage, ...others.slice(at)];
}

/** Whether an order is that of the plan. */
export const isPlanned = (order: readonly number[]): boolean =>
  order.every((number, i) => number === i + 1);

/** The stage that a lift of an order belongs to; null where there are fewer lifts. */
export function stageOfLift(
  { stages }: Pick<RaisingPlan, 'stages'>,
  order: readonly number[],
  lift: number,
): number | null {
  let left = lift;
  for (const number of order) {
    left -= stages[number - 1]?.lifts.length ?? 0;
    if (left < 0) return number;
  }
  return null;
}

/** Stages that may be moved: those that lift something. They come first in every plan. */
export const movableStages = ({ stages }: Pick<RaisingPlan, 'stages'>): number =>
  stages.filter(({ lifts }) => lifts.length > 0).length;

/** Where a pointer is in a column of rows: the row whose middle is nearest. 0 where there is none. */
export function rowAt(middles: readonly number[], y: number): number {
  let best = 0;
  middles.forEach((middle, i) => {
    if (Math.abs(middle - y) < Math.abs((middles[best] as number) - y)) best = i;
  });
  return best;
}
