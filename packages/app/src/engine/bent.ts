// How a stage bends under a wind: by its own weight and the wind case that pushes and lifts it most, with
// the props that it needs in place and every seam finger-tight.

import {
  caseTotals,
  type FrameParts,
  frameAnswer,
  frameOfStage,
  mergeSources,
  type Provenance,
  prepareFrame,
  pressureOf,
  type Stage,
  type StageModel,
  stageWind,
  type WindCase,
} from '@shellraise/core';

/** A stage bent by the wind. */
export interface Bent {
  /** Movement of every corner of the placed panels, in the order of `placed`, stride 3; the largest is 1
   * long. */
  readonly movement: Float64Array;
  /** How far the hub that moves most moves, metres. */
  readonly most: number;
  /** 3-second gust at the shell, m/s. */
  readonly gust: number;
  /** Where it comes from, radians from the datum, anticlockwise seen from above; and the wind case. */
  readonly from: number;
  readonly law: string;
  /** Names of what was supposed because nobody said. */
  readonly supposed: readonly string[];
  readonly sources: readonly Provenance[];
}

/** The stage bent by a gust (m/s, at the shell); null where it finds no rest. */
export function bentStage(
  model: StageModel,
  stage: Stage,
  props: readonly number[],
  parts: FrameParts,
  gust: number,
): Bent | null {
  const worst = worstCase(model, stage.placed);
  if (worst === null) return null;
  const frame = frameOfStage(model.shell, { ...stage, props: [...(stage.props ?? []), ...props] });
  const pressure = pressureOf(gust, model.airDensity.value);
  const answer = frameAnswer(prepareFrame(frame, parts), {
    pressure: frame.panels.map(({ place }) => pressure * (worst.coefficient[place] as number)),
    masses: frame.panels.map(({ place }) => model.mass[place] ?? null),
  });
  if (answer.status !== 'stands') return null;
  const { moved, supposed, sources } = answer;
  const corners = stage.placed.flatMap((place) => cornersOf(model, place, moved));
  const most = largest(corners);
  if (!(most > 0)) return null;
  return {
    movement: Float64Array.from(corners, (x) => x / most),
    most,
    gust,
    from: worst.windFrom,
    law: worst.name,
    supposed,
    sources: mergeSources(sources, worst.sources, model.airDensity.sources),
  };
}

/** The case whose drag and lift together are largest. */
function worstCase(model: StageModel, placed: readonly number[]): WindCase | null {
  let [worst, most]: [WindCase | null, number] = [null, 0];
  for (const one of stageWind(model.wind, placed).cases) {
    const { drag, lift } = caseTotals(model.wind, placed, one);
    const size = Math.hypot(drag, lift);
    if (size > most * (1 + 1e-9)) [worst, most] = [one, size];
  }
  return worst;
}

/** Movement of a panel's corners, stride 3, from that of the hubs. */
export function cornersOf({ shell }: StageModel, place: number, moved: Float64Array): number[] {
  const sides = shell.sideHub.subarray(shell.placeStart[place], shell.placeStart[place + 1]);
  return Array.from(sides).flatMap((hub) => [...moved.subarray(3 * hub, 3 * hub + 3)]);
}

/** Length of the longest of vectors laid end to end, stride 3. */
function largest(flat: readonly number[]): number {
  let most = 0;
  for (let i = 0; i < flat.length; i += 3)
    most = Math.max(
      most,
      Math.hypot(flat[i] as number, flat[i + 1] as number, flat[i + 2] as number),
    );
  return most;
}
