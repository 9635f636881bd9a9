// The step chart over a build as path data: each stage a step as wide as one panel. The chart is
// `width` by `height`, gusts upwards from 0.

import type { StageRow } from '../../engine/stages.ts';

/** What a chart is drawn to. */
export interface ChartBox {
  readonly width: number;
  readonly height: number;
  /** Stages of the whole build. */
  readonly stages: number;
  /** Gust at the top, m/s. */
  readonly top: number;
}

/** Path data of one gust over the stages; gaps where it is unknown, flat at the top where beyond. */
export function stepPath(
  rows: readonly StageRow[],
  of: (row: StageRow) => number | null,
  { width, height, stages, top }: ChartBox,
): string {
  const x = (n: number): string => ((n * width) / stages).toFixed(1);
  let drawn = '';
  let before: number | null = null;
  for (const row of rows) {
    const gust = of(row);
    if (gust !== null) {
      const y = (height * (1 - Math.min(1, gust / top))).toFixed(1);
      drawn += before === null ? `M${x(row.n - 1)} ${y}` : `V${y}`;
      drawn += `H${x(row.n)}`;
    }
    before = gust;
  }
  return drawn;
}

/** The gust at the top of a chart: over all that is known and drawn, a round number of 15 to 60 m/s. */
export function chartTop(rows: readonly StageRow[]): number {
  const most = Math.max(
    0,
    ...rows.flatMap(({ limit, untied, stop }) => [limit, untied, stop]).map((gust) => gust ?? 0),
  );
  return Math.min(60, Math.max(15, Math.ceil(most / 5) * 5));
}

/** Gusts at which a chart has a line, in `perUnit` m/s each: four to eight of them, at round numbers. */
export function chartTicks(top: number, perUnit: number): number[] {
  const most = Math.floor(top / perUnit + 1e-9);
  const step = most <= 35 ? 5 : most <= 70 ? 10 : 20;
  return Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step);
}

/** Runs of stages that follow each other and need props: first and last, from 1. */
export function proppedRuns(rows: readonly StageRow[]): (readonly [number, number])[] {
  const runs: [number, number][] = [];
  for (const { n, status } of rows) {
    if (status === 'stands') continue;
    const last = runs.at(-1);
    if (last && last[1] === n - 1) last[1] = n;
    else runs.push([n, n]);
  }
  return runs;
}
