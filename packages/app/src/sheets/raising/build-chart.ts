// The whole build as chart data: each stage as wide as the others, panels placed upwards as steps, props
// as bars, stop points as runs below.

import type { RaisingStage } from '@shellraise/core';

/** A bar of one stage. */
export interface StageBar {
  readonly number: number;
  readonly x: number;
  readonly width: number;
  readonly height: number;
}

/** The chart's data, y downwards from its top. */
export interface BuildChart {
  /** Path data of the panels placed. */
  readonly steps: string;
  readonly props: readonly StageBar[];
  readonly mostProps: number;
  readonly stops: readonly Omit<StageBar, 'height'>[];
}

/** The chart of stages, drawn so wide and high. Bars of props are at most half as high. */
export function buildChart(
  stages: readonly Pick<RaisingStage, 'number' | 'placed' | 'lifts' | 'props' | 'stopPoint'>[],
  { width, height }: { readonly width: number; readonly height: number },
): BuildChart {
  const count = Math.max(1, stages.length);
  const each = width / count;
  const all = Math.max(1, ...stages.map(({ placed }) => placed.length));
  const propsOf = stages.map(({ lifts, props }) =>
    Math.max(props.length, ...lifts.map((lift) => lift.props.length)),
  );
  const mostProps = Math.max(0, ...propsOf);
  const y = (part: number): string => (height * (1 - part)).toFixed(1);
  const steps = stages
    .map(({ placed }, i) => `V${y(placed.length / all)}H${((i + 1) * each).toFixed(1)}`)
    .join('');
  return {
    steps: `M0 ${height}${steps}`,
    props: stages.flatMap(({ number }, i) => {
      const own = propsOf[i] as number;
      if (own === 0) return [];
      return [{ number, x: i * each, width: each, height: (height * own) / (2 * mostProps) }];
    }),
    mostProps,
    stops: stages.flatMap(({ number, stopPoint }, i) =>
      stopPoint ? [{ number, x: i * each, width: each }] : [],
    ),
  };
}
