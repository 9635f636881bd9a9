// The stages of the build: the chart, the slider, and what the stage on show does and bears.

import type { StageAnswer } from '@shellraise/core';
import type { ReactNode } from 'react';
import type { StageRun } from '../../engine/stage-runs.ts';
import type { StageDetail } from '../../engine/stages.ts';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { useWords } from '../../words/words.ts';
import { Caution, Faults, Heads } from './small.tsx';
import { StageChart } from './stage-chart.tsx';
import { Supports, Tonight } from './stage-held.tsx';
import { NO_WIND, useQuantities } from './use-ground.ts';

/** The panel. */
export function StagesPanel({
  run,
  stages,
  at,
  onStage,
  onCancel,
  onAgain,
  detail,
  pressure,
  around,
  children,
}: {
  run: StageRun;
  /** Stages of the whole build. */
  stages: number;
  at: number;
  onStage: (n: number) => void;
  onCancel: () => void;
  onAgain: () => void;
  detail: StageDetail | null;
  /** Design velocity pressure, Pa; null where no wind is given. */
  pressure: number | null;
  /** Numbers of the places of a stage that meet at a hub. */
  around: (hub: number) => readonly string[];
  /** What else is told of the stage on show. */
  children?: ReactNode;
}) {
  const { stages: words, failed } = useWords().ground;
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      <ProgressLine ask={run} what={words.reckoning} onCancel={onCancel} />
      {run.status === 'cancelled' || run.status === 'failed' ? (
        <p role="status" className="buttons">
          {run.status === 'failed'
            ? `${failed} ${run.fault ?? ''}`
            : words.stopped(run.rows.length, stages)}{' '}
          <button type="button" onClick={onAgain}>
            {words.again}
          </button>
        </p>
      ) : null}
      {run.faults.length > 0 ? <Faults faults={run.faults} /> : null}
      <StageChart rows={run.rows} stages={stages} at={at} onStage={onStage} />
      <div className="stage-slider screen-only">
        <button
          type="button"
          aria-label={words.before}
          disabled={at <= 1}
          onClick={() => onStage(at - 1)}
        >
          −
        </button>
        <input
          type="range"
          min={1}
          max={stages}
          value={at}
          aria-label={words.slider}
          onChange={({ target }) => onStage(Number(target.value))}
        />
        <button
          type="button"
          aria-label={words.after}
          disabled={at >= stages}
          onClick={() => onStage(at + 1)}
        >
          +
        </button>
      </div>
      {detail ? (
        <StageFacts detail={detail} stages={stages} pressure={pressure} around={around}>
          {children}
        </StageFacts>
      ) : null}
    </div>
  );
}

function StageFacts({
  detail: { answer, n, place },
  stages,
  pressure,
  around,
  children,
}: {
  detail: StageDetail;
  stages: number;
  pressure: number | null;
  around: (hub: number) => readonly string[];
  children: ReactNode;
}) {
  const words = useWords().ground.stages;
  const { bears, status } = answer;
  return (
    <div className="stage-facts" aria-live="polite">
      <p className="quiet">{words.stage(n, stages, place)}</p>
      <p className={status === 'stands' ? 'verdict' : 'verdict accent'}>{words.status[status]}</p>
      {answer.movements > 0 ? (
        <p>
          {words.movements(answer.movements)} {words.moving(answer.moving.length)}
        </p>
      ) : null}
      {answer.props.length > 0 ? (
        <>
          <p>{words.props(answer.props.length, answer.fewest)}</p>
          <ul className="notes">
            {answer.props.map((hub) => (
              <li key={hub}>{words.prop(around(hub))}</li>
            ))}
          </ul>
        </>
      ) : null}
      {bears ? <Winds bears={bears} /> : null}
      <Caution sources={answer.flags} />
      {bears ? <Reactions bears={bears} pressure={pressure} around={around} /> : null}
      {bears ? <Tonight bears={bears} /> : null}
      {answer.supports ? <Supports plan={answer.supports} around={around} /> : null}
      {children}
      <ul className="notes quiet">
        {answer.assumed.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </div>
  );
}

type Bears = NonNullable<StageAnswer['bears']>;

function Winds({ bears: { stopWork, untied, exposedArea, limits } }: { bears: Bears }) {
  const words = useWords().ground.stages;
  const { speed, area } = useQuantities();
  const known = limits
    .filter(({ gust }) => gust !== null)
    .sort((a, b) => (a.gust ?? 0) - (b.gust ?? 0))[0];
  const tied = limits.some(({ what, status }) => what === 'anchor' && status === 'known');
  const alone = untied.gust !== null && !tied && untied.gust < stopWork.gust.value;
  // What rounds to no wind at all.
  const none = stopWork.gust.value < NO_WIND;
  return (
    <>
      {alone ? (
        <p className="accent facts-size">{words.tieFirst(speed(untied.gust ?? 0))}</p>
      ) : null}
      <p className={alone ? '' : 'facts-size'}>
        {none ? words.stopAny : words.stop(speed(stopWork.gust.value), speed(stopWork.mean))}
      </p>
      <p>
        {words.stopBy(stopWork.setBy)}{' '}
        {known?.gust == null ? '' : words.first(known.what, speed(known.gust))}{' '}
        {none || stopWork.leave === null ? '' : words.leave(speed(stopWork.leave))}
      </p>
      <p>
        {none || untied.gust === null || alone ? '' : words.untied(speed(untied.gust))}{' '}
        {words.area(area(exposedArea))}
      </p>
      {stopWork.unknown.length > 0 ? (
        <p className="accent">{words.unknown(stopWork.unknown.join(', '))}</p>
      ) : null}
    </>
  );
}

function Reactions({
  bears,
  pressure,
  around,
}: {
  bears: Bears;
  pressure: number | null;
  around: (hub: number) => readonly string[];
}) {
  const words = useWords().ground.stages;
  const { force } = useQuantities();
  return (
    <details className="tags">
      <summary>{words.reactions}</summary>
      <p className="quiet">{pressure === null ? words.noPressure : words.perPascal}</p>
      <table className="ground-table">
        <Heads of={words.held} numbers />
        <tbody>
          {bears.held.map(({ hub, baseHub, weight, lift, shear }) => (
            <tr key={hub}>
              <th scope="row">
                {baseHub === null
                  ? `${words.propAt} ${around(hub).join(', ')}`
                  : words.base(baseHub)}
              </th>
              <td className="number">{force(weight[2])}</td>
              <td className="number">{pressure === null ? '–' : force(lift * pressure)}</td>
              <td className="number">{pressure === null ? '–' : force(shear * pressure)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
