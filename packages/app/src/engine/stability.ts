// How far a stage is from buckling, whether its hubs snap through, how fast it swings: asked on its
// own, for it takes longer than the rest of a stage. The last stage is the whole shell, every seam
// tight, in its design wind and snow.

import {
  defaultLoads,
  halfBuiltStability,
  type Read,
  type StageModel,
  type StageStability,
  stageAnswer,
  stageOf,
  wholeStability,
} from '@shellraise/core';
import { cornersOf } from './bent.ts';
import { buildOf, type StageQuestion } from './stages.ts';

/** What of it is drawn. */
export const stabilityModes = ['buckling', 'snapThrough', 'swing'] as const;

/** One of {@link stabilityModes}. */
export type StabilityMode = (typeof stabilityModes)[number];

/** The answer with its movements for the corners that are drawn. */
export interface StabilityDetail {
  readonly n: number;
  /** Whether it is the whole shell, every seam tight. */
  readonly whole: boolean;
  readonly found: StageStability;
  /** Movement of every corner of the placed panels, in the order of the build, stride 3, the largest 1
   * long; null where there is none. */
  readonly movements: Readonly<Record<StabilityMode, Float64Array | null>>;
}

/** Buckling, snap-through and swing of a stage; `onProgress` is told of 0 … 1. */
export function stabilityDetail(
  question: StageQuestion,
  onProgress?: (done: number) => void,
): Read<StabilityDetail> {
  const build = buildOf(question);
  if (!build.ok) return build;
  const { model, order } = build.value;
  const stage = stageOf(order, question.n);
  const whole = question.n === order.length;
  const read = whole
    ? {
        ok: true as const,
        value: wholeStability(model, question.loads ?? defaultLoads, order, onProgress),
      }
    : halfBuilt(model, stage, onProgress);
  if (!read.ok) return read;
  const found = read.value;
  const corners = (part: object): Float64Array | null =>
    'mode' in part && part.mode instanceof Float64Array
      ? drawn(model, stage.placed, part.mode)
      : null;
  return {
    ok: true,
    value: {
      n: question.n,
      whole,
      found,
      movements: {
        buckling: corners(found.buckling),
        snapThrough: corners(found.snapThrough),
        swing: corners(found.swing),
      },
    },
  };
}

function halfBuilt(
  model: StageModel,
  stage: ReturnType<typeof stageOf>,
  onProgress?: (done: number) => void,
): Read<StageStability> {
  const answer = stageAnswer(model, stage, { strength: false, supports: false, sets: 400 });
  if (!answer.ok) return answer;
  return { ok: true, value: halfBuiltStability(model, stage, answer.value, onProgress) };
}

const drawn = (model: StageModel, placed: readonly number[], mode: Float64Array): Float64Array =>
  Float64Array.from(placed.flatMap((place) => cornersOf(model, place, mode)));
