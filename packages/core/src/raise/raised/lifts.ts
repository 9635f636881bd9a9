// The lifts of a plan: how each piece gets to its place, its card where it wants one, and how high hands
// and hooks must come in its stage.

import { type LiftCard, liftCard, needsCard } from '../lifts/card.ts';
import { type StageHeights, stageHeights } from '../lifts/heights.ts';
import { type Lift, type LiftDay, liftOf } from '../lifts/lift.ts';
import { pieceOf } from '../lifts/piece.ts';
import { piecesOf, type RaisedShell } from './raised.ts';

/** One lift of a plan. */
export interface LiftTold {
  readonly stage: number;
  /** Its place in the stage, from 0. */
  readonly lift: number;
  readonly told: Lift;
  /** Null where it needs none, or where nothing lifts it: `told.leastChange` then says what helps. */
  readonly card: LiftCard | null;
  readonly needsCard: boolean;
}

/** The lifts of one stage. */
export interface StageLifts {
  readonly stage: number;
  readonly lifts: readonly LiftTold[];
  readonly heights: StageHeights;
}

/** The lifts of all stages that lift something, or of those named, in their order. */
export function liftsOfStages(
  raised: RaisedShell,
  day: LiftDay = { gust: null },
  numbers?: readonly number[],
): StageLifts[] {
  const { plan, gear, shell } = raised;
  const model = piecesOf(raised);
  return plan.stages
    .filter(({ lifts, number }) => lifts.length > 0 && (numbers?.includes(number) ?? true))
    .map(({ number, lifts }) => {
      const told = lifts.map(({ places }) => liftOf(pieceOf(model, places), gear, day));
      return {
        stage: number,
        lifts: told.map((one, i) => ({
          stage: number,
          lift: i,
          told: one,
          card: liftCard(one, gear),
          needsCard: needsCard(one, gear),
        })),
        heights: stageHeights(told, gear, { radius: shell.radius, ground: model.ground }),
      };
    });
}
