// The lesser shells that were named: what each takes, and the press that gives it up.

import { useLengths } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';
import { withoutSecond } from '../decide.ts';
import type { Stood } from '../stood.ts';
import { useDecide } from '../use-decide.ts';

/** The list; nothing before one is named. */
export function Named({ stood }: { stood: Stood }) {
  const { fitting, places } = useWords();
  const words = fitting.leftOver;
  const lengths = useLengths();
  const decide = useDecide(stood);
  const { seconds = [] } = stood.standing.decision;
  if (seconds.length === 0) return null;
  return (
    <section aria-label={words.named}>
      <h3>{words.named}</h3>
      <ol className="so-far">
        {seconds.map(({ name, what, height, panels }, i) => (
          <li key={`${name} ${seconds.slice(0, i).filter((one) => one.name === name).length}`}>
            <span>
              <strong>{name}</strong>:{' '}
              {words.isA(
                words.what[what],
                lengths.large(height),
                places.plural(
                  panels.reduce((sum, { count }) => sum + count, 0),
                  'panel',
                ),
                panels.map(({ kind, count }) => `${count} × ${kind}`),
              )}
            </span>
            <button
              type="button"
              aria-label={`${words.giveUp}: ${name}`}
              onClick={() => decide((decision) => withoutSecond(decision, i), words.givingUp(name))}
            >
              {words.giveUp}
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
