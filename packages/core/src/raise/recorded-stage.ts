// How far the stages of a raising plan are, by what the record says.

import type { RecordState } from '../record/state.ts';
import { RECORD_PASSES } from '../record/what.ts';
import type { RaisingPlan, RaisingStage } from './plan.ts';

/** How far one stage is. */
export interface StageProgress {
  readonly number: number;
  /** Whether people said that it is done, and that it was closed down for a night. */
  readonly done: boolean;
  readonly closed: boolean;
  /** Its panels that are in place, of how many; places that still wait. */
  readonly up: number;
  readonly of: number;
  readonly waiting: readonly number[];
  /** Seams that are less tight than the stage leaves them. */
  readonly loose: readonly number[];
}

/** Every stage's progress, by its number. Indices are those of the shell that both speak of. */
export function stageProgress(
  { stages }: Pick<RaisingPlan, 'stages'>,
  state: RecordState,
): readonly StageProgress[] {
  return stages.map(({ number, pieces, pass }) => {
    const places = pieces.flat();
    const waiting = places.filter((place) => !state.placed[place]);
    const loose = (['finger', 'snug', 'final'] as const).flatMap((wanted) =>
      pass[wanted].filter(
        (seam) =>
          RECORD_PASSES.indexOf(state.passes[seam] ?? 'none') < RECORD_PASSES.indexOf(wanted),
      ),
    );
    return {
      number,
      done: state.done.includes(number),
      closed: state.closed.includes(number),
      up: places.length - waiting.length,
      of: places.length,
      waiting,
      loose,
    };
  });
}

/** The stage to work at: the first that nobody said is done; null once all are. */
export const stageAtWork = (
  { stages }: Pick<RaisingPlan, 'stages'>,
  state: RecordState,
): RaisingStage | null => stages.find(({ number }) => !state.done.includes(number)) ?? null;
