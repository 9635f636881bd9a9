// Laps or hole patterns that nothing in the pile answers.

import type { JointConflict } from '@shellraise/core';
import { useApp, useLengths } from '../../ui/app-context.tsx';
import { inOwnLengths } from '../../ui/own-lengths.ts';
import { useWords } from '../../words/words.ts';

/** The conflicts, the smallest first; nothing where there are none. */
export function ConflictList({ conflicts }: { conflicts: readonly JointConflict[] }) {
  const { hard, shape } = useWords();
  const lengths = useLengths();
  const app = useApp();
  if (conflicts.length === 0) return null;
  const { heading, which, side } = hard.conflicts;
  return (
    <section className="findings-list">
      <h2>{heading}</h2>
      <ul>
        {conflicts.map(({ sides, words }) => (
          <li key={words}>
            <p>
              {shape.capital(inOwnLengths(words, lengths))}.{' '}
              <span className="quiet">
                {which(hard.listed(sides.map((one) => side(one.kind, one.side))))}
              </span>
            </p>
            <div className="presses screen-only">
              {[...new Set(sides.map(({ kind }) => kind))].map((id) => (
                <button key={id} type="button" onClick={() => app.select({ type: 'kind', id })}>
                  {hard.show(id)}
                </button>
              ))}
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
