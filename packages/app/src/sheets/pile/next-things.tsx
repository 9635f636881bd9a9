// What is most worth measuring next, with the press that goes there.

import { memo, useMemo } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';
import type { Lengths } from '../../ui/lengths.ts';
import { useWords, type Words } from '../../words/words.ts';
import type { Cell } from './cells.ts';
import { measureNext, type NextThing } from './measure-next.ts';
import type { Worked } from './worked.ts';

/** Goes to a cell of a reading. */
export type GoTo = (index: number, cell: Cell) => void;

/** At most three things worth measuring next. */
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
  const things = useMemo(
    () => (worked ? measureNext(worked.kinds, worked.pile.readings) : []),
    [worked],
  );
  /** Rows may have moved since the pile was worked up: a row is known by itself. */
  const rowNow = (row: number): number => {
    const reading = worked?.pile.readings[row];
    return reading ? readings.indexOf(reading) : -1;
  };
  const empty = readings.length === 0 ? words.next.waiting : words.next.nothing;
  return (
    <section className="next-things" aria-labelledby="pile-next">
      <h2 id="pile-next">{words.next.title}</h2>
      {things.length === 0 ? <p className="quiet">{empty}</p> : null}
      <ol>
        {things.map((thing) => {
          const words_ = thingWords(thing, worked, lengths, words);
          const row = 'row' in thing && thing.row !== null ? rowNow(thing.row) : -1;
          return (
            <li key={words_}>
              <p>{words_}</p>
              <Act
                thing={thing}
                row={row}
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
  thing,
  row,
  goTo,
  show,
  words,
}: {
  thing: NextThing;
  row: number;
  goTo: GoTo;
  show: (kind: string) => void;
  words: Words['pile'];
}) {
  if (row >= 0) {
    const cell: Cell = thing.why === 'suspect' ? thing.side : thing.why === 'face' ? 'seenFrom' : 0;
    const label = thing.why === 'face' ? words.next.look : words.next.again;
    return (
      <button type="button" onClick={() => goTo(row, cell)}>
        {label}
      </button>
    );
  }
  const kind = 'kind' in thing ? thing.kind : 'kinds' in thing ? thing.kinds[0] : undefined;
  return kind === undefined ? null : (
    <button type="button" onClick={() => show(kind)}>
      {words.next.show}
    </button>
  );
}

function thingWords(
  thing: NextThing,
  worked: Worked | null,
  lengths: Lengths,
  words: Words['pile'],
): string {
  const { next, tally } = words;
  const named = (row: number): string =>
    capital(tally.rowOf(worked?.pile.readings[row]?.tag ?? '', row + 1));
  switch (thing.why) {
    case 'suspect':
      return next.suspect(
        named(thing.row),
        thing.side,
        lengths.side(thing.measured),
        lengths.side(thing.expected),
        lengths.off(thing.measured - thing.expected),
        thing.kind,
      );
    case 'suspect kind':
      return next.suspectKind(
        thing.kind,
        thing.side,
        lengths.side(thing.measured),
        lengths.side(thing.expected),
      );
    case 'face':
      return next.face(named(thing.row), words.or(thing.kinds));
    case 'two fit':
      return next.twoFit(named(thing.row), words.or(thing.kinds));
    case 'one reading':
      return next.oneReading(
        thing.kind,
        thing.row === null
          ? null
          : tally.rowOf(worked?.pile.readings[thing.row]?.tag ?? '', thing.row + 1),
      );
    case 'maybe one':
      return next.maybeOne(words.and(thing.kinds), thing.side, lengths.small(thing.difference));
    case 'maybe two':
      return next.maybeTwo(thing.kind, lengths.small(thing.spread));
    case 'miscount':
      return next.miscount(thing.kind, thing.counted, thing.found);
    case 'tapes':
      return next.tapes(words.and(thing.people));
    case 'loosest':
      return next.loosest(thing.kind, lengths.small(thing.sd));
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
