// The flat plan with its heading, how it is coloured, and what the fills mean.

import { type ReactNode, useCallback, useMemo } from 'react';
import { FillSwatch } from '../../drawing/fill-swatch.tsx';
import { PlanView } from '../../drawing/plan-view/plan-view.tsx';
import { quickEngine } from '../../engine/bridge.ts';
import type { PlanQuestion } from '../../engine/drawings.ts';
import { projectOf } from '../../state/app-state.ts';
import { colourings } from '../../state/settings.ts';
import { useApp, useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import type { Coloured } from './colouring.ts';
import { saysOf } from './says.ts';
import { type Stood, usePicked } from './stood.ts';
import { useAnswer } from './use-answer.ts';

const askPlan = (question: PlanQuestion) => quickEngine.ask('planPicture', question);

/** The plan of a standing shell. */
export function PlanPane({
  stood,
  coloured,
  onScale,
  children,
}: {
  stood: Stood;
  coloured: Coloured;
  /** 1 : scale on this screen. */
  onScale: (scale: number) => void;
  children?: ReactNode;
}) {
  const { places: words, frame } = useWords();
  const title = useAppState((state) => projectOf(state).title);
  const fromBelow = useAppState((state) => state.settings.fromBelow);
  const { standing, kinds } = stood;
  const { shell, courses } = standing.standing;
  const question = useMemo(
    (): PlanQuestion => ({
      shell,
      numbers: standing.numbers,
      kinds,
      fromBelow,
      leftOut: standing.leftOut,
    }),
    [shell, standing, kinds, fromBelow],
  );
  const { last, pending, fault, again } = useAnswer(question, askPlan);
  const { picked, kind, marked, pick } = usePicked(stood);
  const says = saysOf(
    { shell, kinds, numbers: standing.numbers, course: courses.course },
    picked,
    kind === null ? null : { id: kind, places: marked.length },
    words.details,
  );
  const picture = last?.question.shell === shell ? last.answer : null;
  const onZoom = useCallback(
    (pixels: number) => {
      // A CSS pixel is 1/96 inch.
      if (picture) onScale((picture.scale * 96) / (25.4 * pixels));
    },
    [picture, onScale],
  );
  const way = fromBelow ? 'below' : 'above';
  return (
    <section className="plan-pane" aria-label={words.plan.heading[way]}>
      <div className="plan-head">
        <h2>
          {words.plan.heading[way]} <span className="quiet">{words.plan.remark[way]}</span>
        </h2>
        {children}
      </div>
      <div className="plan-room" aria-busy={pending}>
        {picture ? (
          <PlanView
            shell={shell}
            picture={picture}
            fills={coloured.fills}
            picked={picked}
            marked={marked}
            onPick={pick}
            label={words.plan.label(title, standing.numbers.length)}
            says={says}
            onZoom={onZoom}
          />
        ) : fault === null ? (
          <p className="plan-waiting quiet">{words.plan.drawing} …</p>
        ) : (
          <p className="plan-waiting" role="alert">
            {words.plan.failed}{' '}
            <button type="button" onClick={again}>
              {frame.again}
            </button>
          </p>
        )}
      </div>
      <Legend coloured={coloured} />
    </section>
  );
}

/** How the plan is coloured and seen, and what the fills mean. */
function Legend({ coloured }: { coloured: Coloured }) {
  const words = useWords().places;
  const app = useApp();
  const colouring = useAppState((state) => state.settings.colouring);
  const fromBelow = useAppState((state) => state.settings.fromBelow);
  const nameOf = (key: string): string => {
    if (colouring === 'kind') return words.colouring.kindSample(key);
    if (colouring === 'course') return words.colouring.courseSample(key);
    return (words.colouring.states as Readonly<Record<string, string>>)[key] ?? key;
  };
  return (
    <div className="legend">
      <div className="legend-choices screen-only">
        <label>
          <span className="quiet">{words.colouring.label}</span>{' '}
          <select
            value={colouring}
            onChange={({ target }) => {
              const one = colourings.find((name) => name === target.value);
              if (one) app.set({ colouring: one });
            }}
          >
            {colourings.map((one) => (
              <option key={one} value={one}>
                {words.colouring[one]}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          aria-pressed={fromBelow}
          onClick={() => app.set({ fromBelow: !fromBelow })}
        >
          {words.view.turnOver}
        </button>
      </div>
      <ul className="samples">
        {coloured.samples.map(({ key, fill, places }) => (
          <li key={key}>
            {colouring === 'kind' ? (
              <button
                type="button"
                className="sample"
                aria-label={words.stock.select(key)}
                onClick={() => app.select({ type: 'kind', id: key })}
              >
                <FillSwatch fill={fill} /> {nameOf(key)}
              </button>
            ) : (
              <span className="sample">
                <FillSwatch fill={fill} /> {nameOf(key)} <span className="quiet">{places}</span>
              </span>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}
