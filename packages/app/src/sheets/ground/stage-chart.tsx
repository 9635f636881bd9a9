// The gusts over the build: when work stops, what first gives way, when it lifts off untied; below
// them the stages that need props. A press goes to a stage.

import type { StageRow } from '../../engine/stages.ts';
import { useWords } from '../../words/words.ts';
import { type ChartBox, chartTicks, chartTop, proppedRuns, stepPath } from './chart.ts';
import { useQuantities } from './use-ground.ts';

const WIDTH = 560;
const HEIGHT = 150;
const LEFT = 40;
const BAND = 12;

/** The chart. */
export function StageChart({
  rows,
  stages,
  at,
  onStage,
}: {
  rows: readonly StageRow[];
  stages: number;
  at: number;
  onStage: (n: number) => void;
}) {
  const words = useWords().ground.stages;
  const { speed, metric } = useQuantities();
  const box: ChartBox = { width: WIDTH, height: HEIGHT, stages, top: chartTop(rows) };
  const perUnit = metric ? 1 : 0.44704;
  const stops = rows.flatMap(({ stop }) => (stop === null ? [] : [stop]));
  const propped = rows.filter(({ status }) => status !== 'stands').length;
  const x = ((at - 0.5) * WIDTH) / stages;
  const says =
    stops.length === 0
      ? ''
      : words.chartSays(speed(Math.max(...stops)), speed(Math.min(...stops)), propped);
  return (
    <figure className="stage-chart">
      <svg
        viewBox={`0 0 ${LEFT + WIDTH + 6} ${HEIGHT + BAND + 30}`}
        role="img"
        aria-label={`${words.chart(stages)}. ${says}`}
        onPointerDown={(event) => {
          const { left, width } = event.currentTarget.getBoundingClientRect();
          const along = ((event.clientX - left) / width) * (LEFT + WIDTH + 6) - LEFT;
          onStage(Math.max(1, Math.min(stages, Math.ceil((along / WIDTH) * stages))));
        }}
      >
        <g transform={`translate(${LEFT} 6)`}>
          {chartTicks(box.top, perUnit).map((tick) => {
            const y = HEIGHT * (1 - (tick * perUnit) / box.top);
            return (
              <g key={tick}>
                <path className="chart-grid" d={`M0 ${y}H${WIDTH}`} />
                <text x={-6} y={y + 4.5} textAnchor="end">
                  {tick}
                </text>
              </g>
            );
          })}
          <text className="chart-unit" x={4} y={10}>
            {metric ? 'm/s' : 'mph'}
          </text>
          {proppedRuns(rows).map(([from, to]) => (
            <rect
              key={from}
              className="chart-props"
              x={((from - 1) * WIDTH) / stages}
              width={((to - from + 1) * WIDTH) / stages}
              y={HEIGHT}
              height={BAND}
            />
          ))}
          <path className="chart-untied" d={stepPath(rows, ({ untied }) => untied, box)} />
          <path className="chart-limit" d={stepPath(rows, ({ limit }) => limit, box)} />
          <path className="chart-stop" d={stepPath(rows, ({ stop }) => stop, box)} />
          <path className="chart-axis" d={`M0 0V${HEIGHT}H${WIDTH}`} />
          <path className="chart-at" d={`M${x} 0V${HEIGHT + BAND}`} />
          {[1, Math.round(stages / 2), stages].map((n) => (
            <text
              key={n}
              x={((n - 0.5) * WIDTH) / stages}
              y={HEIGHT + BAND + 18}
              textAnchor={n === stages ? 'end' : n === 1 ? 'start' : 'middle'}
            >
              {n === stages ? `${n} ${words.panels}` : n}
            </text>
          ))}
        </g>
      </svg>
      <figcaption className="chart-legend">
        {(['stop', 'limit', 'untied', 'props'] as const).map((one) => (
          <span key={one}>
            <svg width="30" height="12" aria-hidden="true">
              {one === 'props' ? (
                <rect className="chart-props" width="30" height="12" />
              ) : (
                <path className={`chart-${one}`} d="M0 6H30" />
              )}
            </svg>{' '}
            {words.legend[one]}
          </span>
        ))}
      </figcaption>
    </figure>
  );
}
