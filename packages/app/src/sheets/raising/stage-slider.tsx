// The slider over the stages, under a chart of the whole build: panels placed by each stage as steps,
// props that stand meanwhile as bars, a mark where it may stay overnight. A press goes to a stage.

import type { RaisingPlan } from '@shellraise/core';
import { useWords } from '../../words/words.ts';
import { buildChart } from './build-chart.ts';

/** The chart's size; its texts are laid over it, so that they keep theirs. */
const WIDTH = 640;
const HEIGHT = 76;

/** The slider with its chart. */
export function StageSlider({
  plan,
  number,
  onStage,
}: {
  plan: RaisingPlan;
  number: number;
  onStage: (number: number) => void;
}) {
  const words = useWords().raising.slider;
  const count = plan.stages.length;
  const chart = buildChart(plan.stages, { width: WIDTH, height: HEIGHT });
  return (
    <div className="raising-slider screen-only">
      <svg
        className="build-chart"
        viewBox={`0 -2 ${WIDTH} ${HEIGHT + 14}`}
        preserveAspectRatio="none"
        role="img"
        aria-label={words.chart(count, chart.mostProps, chart.stops.length)}
        onPointerDown={(event) => {
          const { left, width } = event.currentTarget.getBoundingClientRect();
          const along = (event.clientX - left) / width;
          onStage(Math.max(1, Math.min(count, Math.ceil(along * count))));
        }}
      >
        <rect
          className="build-now"
          x={((number - 1) * WIDTH) / count}
          width={WIDTH / count}
          y={-2}
          height={HEIGHT + 14}
        />
        {chart.props.map(({ x, width, height, number: at }) => (
          <rect
            key={at}
            className="build-props"
            x={x}
            width={width}
            y={HEIGHT - height}
            height={height}
          />
        ))}
        <path className="build-steps" d={chart.steps} />
        <path className="build-base" d={`M0 ${HEIGHT}H${WIDTH}`} />
        {chart.stops.map(({ x, width, number: at }) => (
          <rect key={at} className="build-stop" x={x} width={width} y={HEIGHT + 3} height={7} />
        ))}
      </svg>
      <ul className="raising-legend">
        <li>
          <svg viewBox="0 0 18 8" aria-hidden="true">
            <path className="build-steps" d="M0 7H6V4H12V1H18" />
          </svg>{' '}
          {words.panels}
        </li>
        <li>
          <svg viewBox="0 0 18 8" aria-hidden="true">
            <rect className="build-props" width="18" height="8" />
          </svg>{' '}
          {words.props}
        </li>
        <li>
          <svg viewBox="0 0 18 8" aria-hidden="true">
            <rect className="build-stop" y="1" width="18" height="6" />
          </svg>{' '}
          {words.stop}
        </li>
      </ul>
      <div className="stage-slider">
        <button
          type="button"
          aria-label={words.before}
          disabled={number <= 1}
          onClick={() => onStage(number - 1)}
        >
          −
        </button>
        <input
          type="range"
          min={1}
          max={count}
          value={number}
          aria-label={words.label}
          onChange={({ target }) => onStage(Number(target.value))}
        />
        <button
          type="button"
          aria-label={words.after}
          disabled={number >= count}
          onClick={() => onStage(number + 1)}
        >
          +
        </button>
      </div>
    </div>
  );
}
