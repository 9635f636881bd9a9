// Tags that were put on two panels by mistake, each with the presses that go to its rows.

import { projectOf } from '../../state/app-state.ts';
import { useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import type { GoTo } from './next-things.tsx';
import type { Worked } from './worked.ts';

/** The tags; nothing where each is on one panel alone. */
export function SharedTags({ worked, goTo }: { worked: Worked | null; goTo: GoTo }) {
  const words = useWords().pile.sharedTags;
  const readings = useAppState((state) => projectOf(state).pile.readings);
  if (!worked || worked.kinds.sharedTags.length === 0) return null;
  /** Rows may have moved since the pile was worked up, or have another tag by now. */
  const rowsNow = (tag: string, panels: readonly (readonly number[])[]): number[] =>
    panels.flat().flatMap((index) => {
      const before = worked.pile.readings[index];
      const row = before ? readings.indexOf(before) : -1;
      return readings[row]?.tag === tag ? [row] : [];
    });
  const kindOf = (row: number): string | null => {
    const reading = readings[row];
    return (reading && worked.assigned.get(reading)?.kind) ?? null;
  };
  return (
    <section className="slips" aria-labelledby="pile-shared-tags">
      <h2 id="pile-shared-tags">{words.title}</h2>
      <ul>
        {worked.kinds.sharedTags.map(({ tag, panels }) => {
          const rows = rowsNow(tag, panels);
          return (
            <li key={tag}>
              <p>{words.says(tag)}</p>
              <div className="presses screen-only">
                {rows.map((row) => (
                  <button key={row} type="button" onClick={() => goTo(row, 'tag')}>
                    {words.row(row + 1, kindOf(row))}
                  </button>
                ))}
              </div>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
