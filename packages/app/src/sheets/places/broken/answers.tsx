// The answers to a broken panel, the least undoing first, each with the press that decides for it.

import type { Replacement } from '@shellraise/core';
import { useApp, useLengths } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';
import { mended } from '../decide.ts';
import type { Stood } from '../stood.ts';
import { useDecide } from '../use-decide.ts';
import { breakOf, costsOf, stepsOf } from './answer-words.ts';

/** The list. */
export function Answers({
  stood,
  place,
  ways,
}: {
  stood: Stood;
  place: number;
  ways: readonly Replacement[];
}) {
  const words = useWords().fitting.broken;
  const app = useApp();
  const lengths = useLengths();
  const decide = useDecide(stood);
  const { numbers, plain } = stood.standing;
  const number = numbers[place] ?? '';
  return (
    <ol className="ways-out" aria-label={words.ways}>
      {ways.map((way, i) => {
        const places = [place, ...way.moves.flatMap(({ from }) => (from === null ? [] : [from]))];
        return (
          <li key={JSON.stringify(way.moves)} className="way-out">
            <div className="fit-words">
              {way.act === 'make' ? (
                <p>
                  <strong>{words.make(way.lacks ?? '')}</strong>
                </p>
              ) : (
                stepsOf(way, numbers, words, lengths).map((step) => (
                  <p key={step}>
                    <strong>{step}</strong>
                  </p>
                ))
              )}
              <p className={way.misfit > 0 && !way.holesTake ? 'accent' : undefined}>
                {way.act === 'make' ? words.makeNote : costsOf(way, numbers, words).join(' ')}
              </p>
            </div>
            <div className="fit-act">
              {places.length > 1 ? (
                <button
                  type="button"
                  aria-label={`${words.show}: ${words.way(i + 1)}`}
                  onClick={() =>
                    app.select({ type: 'places', numbers: places.map((p) => numbers[p] ?? '') })
                  }
                >
                  {words.show}
                </button>
              ) : null}
              <button
                type="button"
                className={i === 0 ? 'main' : undefined}
                aria-label={`${words.decide}: ${words.way(i + 1)}`}
                onClick={() =>
                  decide(
                    (decision) => mended(decision, breakOf(place, way, plain)),
                    words.deciding(number),
                  )
                }
              >
                {words.decide}
              </button>
            </div>
          </li>
        );
      })}
    </ol>
  );
}
