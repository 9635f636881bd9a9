// What is held against what: the whole shell, every seam tight, in its design wind and snow; a
// half-built stage, finger-tight with its props in place, in the gust at which work stops.

import { capKnockdown, sphereClassicalPressure } from '../frame/sphere-buckling.ts';
import { settingsPressure, snowCases } from '../loads/question.ts';
import { gustOfPressure } from '../loads/reported-wind/gust.ts';
import type { LoadsSettings } from '../loads/schema.ts';
import { acos } from '../math/angle.ts';
import { baseRing } from '../shell/rims.ts';
import type { StageAnswer } from './answer.ts';
import type { StageModel } from './model.ts';
import { notStable, type StageStability, stageStability } from './stability.ts';
import { frameOfStage, type Stage } from './stage.ts';

/** Buckling, snap-through and swing of the whole shell, every seam tight, in the design wind and snow
 * of its site; in neither where none is given. `placed`: the places that have their panels. */
export function wholeStability(
  model: StageModel,
  loads: LoadsSettings,
  placed: readonly number[],
  onProgress?: (done: number) => void,
): StageStability {
  const { form } = model.wind.question;
  const design = settingsPressure(loads, form);
  const gust = design && gustOfPressure(design.value, model.airDensity.value);
  const frame = frameOfStage(model.shell, { placed, pass: () => 'final' });
  const asked = { gust, snow: snowCases(loads, form) };
  const found = stageStability(model, frame, 'snug', asked, onProgress);
  return { ...found, cap: found.buckling.status === 'reckoned' ? capOf(model) : null };
}

/** The smooth cap of a shell's radius and its base ring's height (NASA SP-8032, eq. 4). */
function capOf({ shell, bears: { parts } }: StageModel): StageStability['cap'] {
  const base = baseRing(shell);
  if (parts === null || base === null) return null;
  const { young, poisson, thickness } = parts;
  try {
    const part = capKnockdown(poisson, thickness, shell.radius, acos(base.z.mean / shell.radius));
    return {
      pressure: part * sphereClassicalPressure(young, poisson, thickness, shell.radius),
      part,
    };
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** The same of a half-built stage with the props that its answer asks for, in the gust at which work
 * stops. Not reckoned where no props can hold it. */
export function halfBuiltStability(
  model: StageModel,
  stage: Stage,
  { bears, props }: Pick<StageAnswer, 'bears' | 'props'>,
  onProgress?: (done: number) => void,
): StageStability {
  if (bears === null)
    return notStable(
      null,
      'finger-tight',
      'no props can hold it: what does not stand does not buckle',
    );
  const frame = frameOfStage(model.shell, { ...stage, props: [...(stage.props ?? []), ...props] });
  const gust = bears.stopWork.gust.value;
  return stageStability(model, frame, 'finger-tight', { gust }, onProgress);
}
