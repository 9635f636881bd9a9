// What is most worth doing at the pile next, with the press that goes there.

import type { PileNext } from '@shellraise/core';
import { memo } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';
import { useWords, type Words } from '../../words/words.ts';
import type { Cell } from './cells.ts';
import { nextWords } from './next-words.ts';
import type { Worked } from './worked.ts';

/** Goes to a cell of a reading. */
export type GoTo = (index: number, cell: Cell) => void;

/** At most three things worth doing next. */
export const MeasureNext = memo(function MeasureNext({
  worked,
  goTo,
}: {
  worked: Worked | null;
  goTo: GoTo;
}) {
  const words = useWords().pile;
  const app = useApp();
  const lengths = useLengths();
  const readings = useAppState((state) => projectOf(state).pile.readings);
  const things = worked?.next ?? [];
  /** Rows may have moved since the pile was worked up: a row is known by itself. */
  const rowNow = (row: number | null): number => {
    const reading = row === null ? undefined : worked?.pile.readings[row];
    return reading ? readings.indexOf(reading) : -1;
  };
  const empty = readings.length === 0 ? words.next.waiting : words.next.nothing;
  return (
    <section className="next-things" aria-labelledby="pile-next">
      <h2 id="pile-next">{words.next.title}</h2>
      {things.length === 0 ? <p className="quiet">{empty}</p> : null}
      <ol>
        {things.map((thing) => {
          const says = worked ? nextWords(thing, worked, lengths, words) : '';
          return (
            <li key={says}>
              <p>{says}</p>
              <Act
                thing={thing}
                row={rowNow(thing.row)}
                goTo={goTo}
                show={(id) => app.select({ type: 'kind', id })}
                words={words}
              />
            </li>
          );
        })}
      </ol>
    </section>
  );
});

function Act({
  thing: { why, side, kinds },
  row,
  goTo,
  show,
  words,
}: {
  thing: PileNext;
  row: number;
  goTo: GoTo;
  show: (kind: string) => void;
  words: Words['pile'];
}) {
  if (row >= 0) {
    const cell: Cell = why === 'suspect' ? (side ?? 0) : why === 'face' ? 'seenFrom' : 0;
    return (
      <button type="button" onClick={() => goTo(row, cell)}>
        {why === 'face' ? words.next.look : words.next.again}
      </button>
    );
  }
  const [kind] = kinds;
  return kind === undefined ? null : (
    <button type="button" onClick={() => show(kind)}>
      {words.next.show}
    </button>
  );
}
