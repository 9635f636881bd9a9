// Buckling and swing of one stage, reckoned where somebody asks for it, and shown beside that stage alone.

import type { EngineBridge } from './bridge.ts';
import type { GroundQuestion } from './ground.ts';
import { createAskRuns, noRun, type Run } from './runs.ts';
import type { StabilityDetail } from './stability.ts';

/** Stage n of a build. */
export interface StageOf {
  readonly of: GroundQuestion;
  readonly n: number;
}

/** Runs of stability. `now`: milliseconds that only go forward. */
export const createStabilityRuns = (bridge: Pick<EngineBridge, 'ask'>, now: () => number) =>
  createAskRuns<StageOf, StabilityDetail>(
    ({ of, n }, onProgress) => bridge.ask('stability', { ...of, n }, onProgress),
    now,
  );

/** The run where it is about this stage; else one that nobody asked for. */
export const runOfStage = (
  run: Run<StageOf, StabilityDetail>,
  { of, n }: StageOf,
): Run<StageOf, StabilityDetail> => (run.input?.of === of && run.input.n === n ? run : noRun);
