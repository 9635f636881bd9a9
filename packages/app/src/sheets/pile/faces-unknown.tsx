// Kinds of which nobody noted from which face their panels were read.

import { projectOf } from '../../state/app-state.ts';
import { useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import type { GoTo } from './next-things.tsx';
import { facesUnknown } from './slip-mends.ts';
import type { Worked } from './worked.ts';

/** The kinds, each with the press that goes to a reading of it; nothing where all faces are known. */
export function FacesUnknown({ worked, goTo }: { worked: Worked; goTo: GoTo }) {
  const { faces: words, next } = useWords().pile;
  const readings = useAppState((state) => projectOf(state).pile.readings);
  const all = facesUnknown(worked.kinds, worked.pile.readings);
  if (all.length === 0) return null;
  return (
    <section className="next-things" aria-labelledby="pile-faces">
      <h2 id="pile-faces">{words.title}</h2>
      <p className="quiet">{words.note}</p>
      <ul>
        {all.map(({ kind, all: every, row }) => {
          const before = row === null ? undefined : worked.pile.readings[row];
          const now = before ? readings.indexOf(before) : -1;
          return (
            <li key={kind}>
              <p>{every ? words.all(kind) : words.some(kind)}</p>
              {now < 0 ? null : (
                <button type="button" onClick={() => goTo(now, 'seenFrom')}>
                  {next.look}
                  <span className="read-out">, {kind}</span>
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
