// The panels that broke so far and what was decided for each.

import { useWords } from '../../../words/words.ts';
import { notBroken } from '../decide.ts';
import type { Stood } from '../stood.ts';
import { useDecide } from '../use-decide.ts';

/** The list; nothing where nothing broke. */
export function BrokenSoFar({ stood }: { stood: Stood }) {
  const words = useWords().fitting.broken;
  const decide = useDecide(stood);
  const { decision, plain, numbers } = stood.standing;
  const { broken = [] } = decision;
  if (broken.length === 0) return null;
  const shown = (number: string): string => numbers[plain.indexOf(number)] ?? number;
  return (
    <section aria-label={words.soFar}>
      <h3>{words.soFar}</h3>
      <ol className="so-far">
        {broken.map(({ place, moves, lacks }, i) => {
          const steps = moves.map(({ from, to, kind }) =>
            words.step(kind, from === null ? null : shown(from), shown(to)),
          );
          const lacking = lacks === null ? [] : [words.toGet(lacks)];
          return (
            <li key={`${place} ${broken.slice(0, i).filter((one) => one.place === place).length}`}>
              <span>
                <strong>{shown(place)}</strong> {[...steps, ...lacking].join('; ')}
              </span>
              <button
                type="button"
                aria-label={`${words.takeBack}: ${shown(place)}`}
                onClick={() =>
                  decide((before) => notBroken(before, i), words.takingBack(shown(place)))
                }
              >
                {words.takeBack}
              </button>
            </li>
          );
        })}
      </ol>
    </section>
  );
}
