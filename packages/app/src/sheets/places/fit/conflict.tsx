// The smallest set of wishes that stand against each other, each with the press that gives it up.

import type { Wishes } from '@shellraise/core';
import { useApp, useFitting } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';
import { withoutDemand } from './wishes.ts';

/** The conflict that the last search found; nothing where there is none. */
export function Conflict({ wishes }: { wishes: Wishes }) {
  const words = useWords().fitting;
  const app = useApp();
  const [{ value, status }] = useFitting();
  if (status !== 'done' || value?.answer.status !== 'conflict') return null;
  const { conflict } = value.answer;
  const names = conflict.map(words.demand);
  const [first] = names;
  return (
    <section className="conflict" aria-label={words.conflict}>
      <h3>{words.conflict}</h3>
      <p>
        {first === undefined
          ? words.conflictUnknown
          : names.length === 1
            ? words.conflictOne(capital(first))
            : words.conflictOf([capital(first), ...names.slice(1)])}
      </p>
      <div className="buttons screen-only">
        {conflict.map((one, i) => (
          <button
            key={one}
            type="button"
            onClick={() =>
              app.change(
                ({ project }) => {
                  project.wishes = withoutDemand(wishes, one);
                  return undefined;
                },
                { label: words.changes.ease(names[i] ?? one) },
              )
            }
          >
            {words.ease(names[i] ?? one)}
          </button>
        ))}
      </div>
    </section>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
