// The openings that were decided on, with the press that closes one again.

import { useApp } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';
import { closed } from '../decide.ts';
import type { Stood } from '../stood.ts';
import { useDecide } from '../use-decide.ts';

/** The list; nothing where the shell is whole. */
export function OpeningsNow({ stood }: { stood: Stood }) {
  const words = useWords().fitting.door;
  const app = useApp();
  const decide = useDecide(stood);
  const { decision, plain, numbers } = stood.standing;
  const { openings = [] } = decision;
  if (openings.length === 0) return null;
  return (
    <section aria-label={words.now}>
      <h3>{words.now}</h3>
      <ol className="so-far">
        {openings.map(({ use, places }, i) => {
          const names = places.map((place) => numbers[plain.indexOf(place)] ?? place);
          return (
            <li key={places.join()}>
              <span>
                <strong>{words.use[use]}</strong>: {words.places(names)}
              </span>
              <div className="fit-act">
                <button
                  type="button"
                  aria-label={`${words.show}: ${words.use[use]} ${i + 1}`}
                  onClick={() => app.select({ type: 'places', numbers: names })}
                >
                  {words.show}
                </button>
                <button
                  type="button"
                  aria-label={`${words.close}: ${words.use[use]} ${i + 1}`}
                  onClick={() => decide((before) => closed(before, i), words.closing)}
                >
                  {words.close}
                </button>
              </div>
            </li>
          );
        })}
      </ol>
    </section>
  );
}
