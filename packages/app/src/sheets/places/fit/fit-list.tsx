// The fits, the best first: each with its drawing, what it needs besides, where from and why there, and
// the press that stands it so.

import type { Shell } from '@shellraise/core';
import type { ShownFit } from '../../../engine/best-fits.ts';
import { projectOf } from '../../../state/app-state.ts';
import { useApp, useAppState, useFitting, useLengths } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';
import { CandidateDrawing } from '../candidate.tsx';
import { chosen } from '../decide.ts';
import type { Stood } from '../stood.ts';
import { standsAs } from './same-stand.ts';
import { WhereFrom } from './where-from.tsx';

/** The list; empty before anything is found. */
export function FitList({ stood, shape }: { stood: Stood; shape: Shell }) {
  const words = useWords().fitting;
  const [{ found, status, value }] = useFitting();
  const proved = status === 'done' && value?.answer.proved === true;
  const tallest = Math.max(0.2, ...found.map(({ decision }) => decision.cut.height));
  if (found.length === 0) return null;
  return (
    <ol className="fits" aria-label={words.heading}>
      {found.map((fit, i) => (
        <FitRow
          // Among fits of one net no two are the same way up and cut.
          key={JSON.stringify(fit.decision)}
          fit={fit}
          number={i + 1}
          proved={proved}
          tallness={tallest / (2 * shape.radius) + 0.04}
          stood={stood}
        />
      ))}
    </ol>
  );
}

function FitRow({
  fit,
  number,
  proved,
  tallness,
  stood,
}: {
  fit: ShownFit;
  number: number;
  proved: boolean;
  tallness: number;
  stood: Stood;
}) {
  const { fitting: words, places } = useWords();
  const app = useApp();
  const lengths = useLengths();
  const decided = useAppState((state) => projectOf(state).places);
  const { cut } = fit.fit.arrangement;
  const height = lengths.large(cut.height);
  const stands = decided !== undefined && standsAs(decided, fit.decision);
  const choose = (): void =>
    app.change(
      ({ project }) => {
        project.places = chosen(fit.decision, project.places);
        return undefined;
      },
      { label: words.choosing(height) },
    );
  return (
    <li className={number === 1 ? 'fit first' : 'fit'}>
      <div className="candidate fit-drawing">
        <CandidateDrawing picture={fit.picture} tallness={tallness} />
      </div>
      <div className="fit-words">
        <p>
          <span className="candidate-height">{height}</span>{' '}
          {number === 1 ? (
            <strong className="accent">{proved ? words.badgeProved : words.badgeBest}</strong>
          ) : null}
        </p>
        <p>
          {places.chooser.floor(lengths.large(2 * cut.floor.mean))},{' '}
          {places.plural(cut.places.length - fit.fit.gaps, 'panel')},{' '}
          {cut.flat
            ? places.facts.flat
            : places.facts.uneven(lengths.side(cut.baseZ.max - cut.baseZ.min))}
        </p>
        <Needs fit={fit} />
      </div>
      <div className="fit-act">
        {stands ? (
          <p className="accent">{words.stands}</p>
        ) : (
          <button type="button" aria-label={words.chooseThis(height, number)} onClick={choose}>
            {words.choose}
          </button>
        )}
      </div>
      <WhereFrom fit={fit} number={number} kinds={stood.kinds} />
    </li>
  );
}

/** What a fit needs besides good panels. */
function Needs({ fit: { fit } }: { fit: ShownFit }) {
  const words = useWords().fitting;
  const parts = [
    fit.bought > 0 && words.buy(fit.bought),
    fit.mended > 0 && words.mend(fit.mended),
    fit.gaps > 0 && words.open(fit.gaps),
    fit.sparesLacking > 0 && words.sparesLacking(fit.sparesLacking),
    fit.parted > 0 && words.parted(fit.parted),
  ].filter((part) => part !== false);
  return <p>{parts.length === 0 ? words.nothingToGet : <strong>{parts.join(', ')}</strong>}</p>;
}
