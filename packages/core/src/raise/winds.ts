// What wind each stage of a plan bears: when work on it stops, and in which gust it may be left for the
// night, closed down. Gusts in m/s at the shell. An estimate and no design approval.

import type { Read } from '../measure/fault.ts';
import { stageAnswer } from '../stages/answer.ts';
import type { Limit } from '../stages/limits.ts';
import type { StageModel } from '../stages/model.ts';
import { heldAtLift, passAfter, type RaisingPlan } from './plan.ts';

/** The winds of one stage, with its props in place. */
export interface StageWinds {
  /** Number of the stage. */
  readonly stage: number;
  /** Gust at which work on it stops. */
  readonly stopWork: number;
  /** Gust at which everybody would leave it, and over which it is not left for the night; null: no limit
   * of it is known. */
  readonly leave: number | null;
  /** Sorts of things whose limit nobody knows: any of them may give way sooner. */
  readonly unknown: readonly Limit['what'][];
  /** Whether a stage on props may be left overnight by what is known of them. */
  readonly propsHold: boolean;
}

/** What winds without strength leave out, in words. */
export const WINDS_LEAVE_OUT =
  'The winds of the stages are those of base hubs, anchors and props; what seams and panels bear takes the frame with its stiffness, and is told stage by stage.';

/** The winds of some stages of a plan, all where none are named; faults where a stage can't be reckoned.
 * `strength`: seams and panels too, by the frame with its stiffness, about as long for one stage as
 * without for ten; where it is false or left out they are in no limit (`WINDS_LEAVE_OUT`). */
export function stageWinds(
  model: StageModel,
  { stages, props = [] }: Pick<RaisingPlan, 'stages'> & Partial<Pick<RaisingPlan, 'props'>>,
  numbers: readonly number[] = stages.map(({ number }) => number),
  { strength = false }: { readonly strength?: boolean } = {},
): Read<StageWinds[]> {
  const found: StageWinds[] = [];
  const seams = model.shell.seams.length / 2;
  for (const stage of stages) {
    if (!numbers.includes(stage.number)) continue;
    const pass = passAfter(stages, stage.number, seams);
    const answer = stageAnswer(
      model,
      { placed: stage.placed, props: stage.props, pass: (seam) => pass[seam] ?? null },
      { strength, sets: 1 },
    );
    if (!answer.ok) return answer;
    const { bears } = answer.value;
    // Nothing holds a stage that does not stand; the order knows none.
    if (bears === null) continue;
    const prop = bears.limits.find(({ what }) => what === 'prop');
    found.push({
      stage: stage.number,
      stopWork: bears.stopWork.gust.value,
      leave: bears.stopWork.leave,
      unknown: bears.stopWork.unknown.filter(
        (what) => strength || (what !== 'seam' && what !== 'panel'),
      ),
      // Lines are reckoned for the wind of work, not for that of a night.
      propsHold:
        stage.props.length > 0 &&
        prop?.status === 'known' &&
        heldAtLift({ props }, stage.number, null).lines.length === 0,
    });
  }
  return { ok: true, value: found };
}
