// Heights of every stage of a plan against what is owned, before anyone builds, and until which stage
// each thing to stand on is needed.

import type { Gear } from '../gear.ts';
import type { RaisingPlan } from '../plan.ts';
import { type StageHeights, stageHeights } from './heights.ts';
import { type LiftDay, liftOf } from './lift.ts';
import { type PieceModel, pieceOf } from './piece.ts';

/** Heights of one stage of a plan. */
export interface HeightsOfStage extends StageHeights {
  readonly stage: number;
}

/** Heights of all stages that lift something, in their order. */
export const heightsByStage = (
  plan: Pick<RaisingPlan, 'stages'>,
  model: PieceModel,
  gear: Gear,
  day: LiftDay = { gust: null },
): HeightsOfStage[] =>
  plan.stages
    .filter(({ lifts }) => lifts.length > 0)
    .map(({ number, lifts }) => ({
      stage: number,
      ...stageHeights(
        lifts.map(({ places }) => liftOf(pieceOf(model, places), gear, day)),
        gear,
        { radius: model.shell.radius, ground: model.ground },
      ),
    }));

/** The last stage in which something with a name is what hands reach from; null where none is. */
export const neededUntil = (heights: readonly HeightsOfStage[], name: string): number | null =>
  heights.reduce<number | null>(
    (last, { stage, standing }) => (standing?.name === name ? stage : last),
    null,
  );
