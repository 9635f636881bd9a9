// Buckling, snap-through and swing of the stage on show: asked for with a button, with its progress, and
// what the numbers mean beside them.

import { useStore } from 'zustand';
import { stabilityEngine } from '../../engine/bridge.ts';
import type { GroundQuestion } from '../../engine/ground.ts';
import type { StabilityDetail } from '../../engine/stability.ts';
import { createStabilityRuns, runOfStage } from '../../engine/stability-runs.ts';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { useWords } from '../../words/words.ts';
import { Caution, Faults } from './small.tsx';
import { useQuantities } from './use-ground.ts';

const runs = createStabilityRuns(stabilityEngine, () => performance.now());

/** The run about stage n of a build. */
export const useStability = (question: GroundQuestion, n: number) =>
  runOfStage(useStore(runs.store), { of: question, n });

/** The block. */
export function StabilityBlock({
  question,
  n,
  stages,
  drawn = true,
}: {
  question: GroundQuestion;
  n: number;
  /** Stages of the whole build. */
  stages: number;
  /** Whether the drawing beside it shows how it moves. */
  drawn?: boolean;
}) {
  const words = useWords().groundStability;
  const run = useStability(question, n);
  const ask = (): void => runs.start({ of: question, n });
  return (
    <section className="stability">
      <h3>{n === stages ? words.heading.whole : words.heading.stage}</h3>
      {run.status === 'idle' ? (
        <button type="button" className="screen-only" onClick={ask}>
          {words.ask}
        </button>
      ) : null}
      <ProgressLine ask={run} what={words.reckoning} onCancel={runs.cancel} />
      {run.status === 'cancelled' || run.status === 'failed' ? (
        <p role="status" className="buttons">
          {run.status === 'failed' ? `${words.failed} ${run.fault ?? ''}` : words.stopped}{' '}
          <button type="button" onClick={ask}>
            {words.again}
          </button>
        </p>
      ) : null}
      {run.faults.length > 0 ? <Faults faults={run.faults} /> : null}
      {run.value ? <Found detail={run.value} drawn={drawn} /> : null}
    </section>
  );
}

function Found({ detail: { found }, drawn }: { detail: StabilityDetail; drawn: boolean }) {
  const words = useWords().groundStability;
  const { speed } = useQuantities();
  const { buckling, snapThrough, swing, gust, seams, cap } = found;
  if (buckling.status === 'not reckoned' && swing.status === 'not reckoned')
    return <p role="status">{words.not(buckling.why)}</p>;
  return (
    <div role="status">
      <p>
        {words.held(seams === 'snug', gust === null ? null : speed(gust))} {words.means}
      </p>
      <dl className="ground-facts">
        <dt>{words.rows.buckling}</dt>
        <dd>
          <Buckling {...{ buckling }} />
        </dd>
        <dt>{words.rows.snapThrough}</dt>
        <dd>
          <SnapsThrough {...{ snapThrough }} />
        </dd>
        <dt>{words.rows.swing}</dt>
        <dd>
          {swing.status === 'reckoned' ? (
            <>
              {words.hertz(swing.frequency.toFixed(1))}{' '}
              <span className={swing.slow ? 'accent' : 'quiet'}>
                {swing.slow ? words.slow : words.stiff}
              </span>
            </>
          ) : (
            words.not(swing.why)
          )}
        </dd>
      </dl>
      {mayFold(found) ? <p className="accent">{words.folds}</p> : null}
      {buckling.status === 'reckoned' ? <p className="quiet">{words.load(buckling.load)}</p> : null}
      {cap === null ? null : (
        <p className="quiet">
          {words.cap(`${(cap.pressure / 1000).toFixed(2)} kPa`, (100 * cap.part).toFixed(0))}
        </p>
      )}
      {drawn ? null : <p className="quiet">{words.drawnAt}</p>}
      <Caution sources={found.flags} />
      <ul className="notes quiet">
        {found.assumed.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </div>
  );
}

type FoundOf<K extends keyof StabilityDetail['found']> = Pick<StabilityDetail['found'], K>;

function Buckling({ buckling }: FoundOf<'buckling'>) {
  const words = useWords().groundStability;
  if (buckling.status === 'not reckoned') return <>{words.not(buckling.why)}</>;
  const { factor, real } = buckling;
  if (factor === null || real === null) return <>{words.never}</>;
  return (
    <>
      <span className={real.least < 1 ? 'accent' : undefined}>
        {words.real(times(real.least), times(real.most))}
      </span>{' '}
      <span className="quiet">{words.perfect(times(factor))}</span>
    </>
  );
}

function SnapsThrough({ snapThrough }: FoundOf<'snapThrough'>) {
  const words = useWords().groundStability;
  switch (snapThrough.status) {
    case 'not reckoned':
      return <>{words.not(snapThrough.why)}</>;
    case 'none':
      return <>{words.noSnap(snapThrough.factor === null ? null : times(snapThrough.factor))}</>;
    default:
      return (
        <span className={snapThrough.factor < 1 ? 'accent' : undefined}>
          {words[snapThrough.status](times(snapThrough.factor))}
        </span>
      );
  }
}

/** Whether it may fold in its own load. */
const mayFold = ({ buckling, snapThrough }: StabilityDetail['found']): boolean =>
  (buckling.status === 'reckoned' && buckling.real !== null && buckling.real.least < 1) ||
  ('hub' in snapThrough && snapThrough.factor < 1);

const times = (factor: number): string => (factor >= 10 ? factor.toFixed(0) : factor.toFixed(2));
