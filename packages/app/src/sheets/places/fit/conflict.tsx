// The smallest set of wishes that stand against each other, each with the press that gives it up.

import type { Nearest, Wishes } from '@shellraise/core';
import { useApp, useFitting, useLengths } from '../../../ui/app-context.tsx';
import type { Lengths } from '../../../ui/lengths.ts';
import { useWords, type Words } from '../../../words/words.ts';
import { eased, withoutDemand } from './wishes.ts';

/** The conflict that the last search found; nothing where there is none. */
export function Conflict({ wishes }: { wishes: Wishes }) {
  const words = useWords().fitting;
  const app = useApp();
  const lengths = useLengths();
  const [{ value, status }] = useFitting();
  if (status !== 'done' || value?.answer.status !== 'conflict') return null;
  const { conflict, nearest } = value.answer;
  const set = (next: Wishes, what: string): void =>
    app.change(
      ({ project }) => {
        project.wishes = { ...next, order: [...next.order] };
        return undefined;
      },
      { label: words.changes.ease(what) },
    );
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
      {nearest.length > 0 ? <p>{words.nearest}</p> : null}
      <div className="buttons screen-only">
        {nearest.map((one) => (
          <button
            key={one.demand}
            type="button"
            onClick={() => set(eased(wishes, one), words.demand(one.demand))}
          >
            {words.take(words.demand(one.demand), nearestText(one, words, lengths))}
          </button>
        ))}
        {conflict.map((one, i) => (
          <button
            key={one}
            type="button"
            onClick={() => set(withoutDemand(wishes, one), names[i] ?? one)}
          >
            {words.ease(names[i] ?? one)}
          </button>
        ))}
      </div>
    </section>
  );
}

/** What would work, as it is read. */
function nearestText(nearest: Nearest, words: Words['fitting'], lengths: Lengths): string {
  switch (nearest.demand) {
    case 'flatBase':
      return words.unevenBy(lengths.large(nearest.value));
    case 'door': {
      const [door] = nearest.doors;
      return door ? words.size(lengths.large(door.width), lengths.large(door.height)) : '';
    }
    case 'leastHeight':
      return lengths.large(nearest.value);
    case 'leastFloor':
    case 'mostFloor':
      return lengths.large(2 * nearest.value);
    case 'mostBought':
    case 'mostParted':
    case 'spares':
      return String(nearest.value);
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
