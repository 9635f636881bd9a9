// What the pile shows as it grows: what to measure next, kinds forming, marks, tapes, groups.

import { type Kind, kindFills, type Pile } from '@shellraise/core';
import { memo, useMemo } from 'react';
import { FillSwatch } from '../../drawing/fill-swatch.tsx';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useDerived, useEngine, useLengths } from '../../ui/app-context.tsx';
import type { Lengths } from '../../ui/lengths.ts';
import { ProgressLine } from '../../ui/progress-line.tsx';
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

/** Kinds as they form. Sides as measured, so that they compare with the tape. */
export const KindsForming = memo(function KindsForming({ worked }: { worked: Worked | null }) {
  const words = useWords().pile.kinds;
  const engine = useEngine();
  const app = useApp();
  const ask = useDerived((derived) => derived.work);
  const kinds = worked?.kinds.kinds ?? [];
  return (
    <section aria-labelledby="pile-kinds">
      <h2 id="pile-kinds">{words.title}</h2>
      <ProgressLine ask={ask} what={words.working} onCancel={() => engine.cancel('work')} />
      {ask.status === 'failed' || ask.status === 'cancelled' ? (
        <Failed died={ask.died} fault={ask.fault} again={() => engine.again('work')} />
      ) : null}
      {kinds.length === 0 ? (
        <p className="quiet">{words.none}</p>
      ) : (
        <KindsTable kinds={kinds} pile={worked?.pile} />
      )}
      {kinds.length === 0 ? null : (
        <p className="to-shape">
          <button type="button" onClick={() => app.goTo('shape')}>
            {words.toShape}
          </button>
        </p>
      )}
    </section>
  );
});

function Failed({
  died,
  fault,
  again,
}: {
  died: boolean;
  fault: string | null;
  again: () => void;
}) {
  const words = useWords();
  return (
    <div role="alert">
      <p>{died ? words.frame.engineDied : words.pile.kinds.failed}</p>
      {fault === null || died ? null : <p className="quiet">{fault}</p>}
      <button type="button" onClick={again}>
        {words.frame.again}
      </button>
    </div>
  );
}

function KindsTable({ kinds, pile }: { kinds: readonly Kind[]; pile: Pile | undefined }) {
  const words = useWords().pile.kinds;
  const app = useApp();
  const lengths = useLengths();
  const chosen = useAppState(({ selection }) => (selection?.type === 'kind' ? selection.id : null));
  const fills = useMemo(() => kindFills(kinds), [kinds]);
  const allowance = pile?.hubAllowance ?? 0;
  const sum = (of: 'good' | 'repair' | 'scrap') => kinds.reduce((all, kind) => all + kind[of], 0);
  const most = Math.max(3, ...kinds.map(({ sides }) => sides.length));
  return (
    <table className="kinds-forming">
      <thead>
        <tr>
          <th scope="col">{words.columns.kind}</th>
          <th scope="col" colSpan={most}>
            {words.sides[pile?.measuredAlong ?? 'holes'](words.units[lengths.system])}
          </th>
          <th scope="col" className="number">
            {words.columns.good}
          </th>
          <th scope="col" className="number">
            {words.columns.repair}
          </th>
          <th scope="col" className="number">
            {words.columns.scrap}
          </th>
        </tr>
      </thead>
      <tbody>
        {kinds.map((kind, k) => (
          <tr key={kind.id} className={kind.id === chosen ? 'chosen' : undefined}>
            <th scope="row">
              <button
                type="button"
                className="plain kind-choice"
                aria-pressed={kind.id === chosen}
                title={kind.marks.length > 0 ? words.marks(kind.marks) : undefined}
                onClick={() =>
                  app.select(kind.id === chosen ? null : { type: 'kind', id: kind.id })
                }
              >
                <FillSwatch fill={fills[k] ?? { tint: null, hatch: null }} />
                <span>
                  {kind.id}
                  <span className="echo">± {lengths.small(Math.max(...kind.sideSds))}</span>
                </span>
              </button>
            </th>
            {sideCells(kind, most).map(({ id, metres }) => (
              <td key={id}>
                {metres === null ? null : (
                  <>
                    {bare(lengths.side(metres - allowance))}
                    <span className="echo">{lengths.echo(metres - allowance)}</span>
                  </>
                )}
              </td>
            ))}
            {kind.counted ? (
              <>
                <td className="number">{kind.good}</td>
                <td className="number">{kind.repair}</td>
                <td className="number">{kind.scrap}</td>
              </>
            ) : (
              <td colSpan={3}>{words.notCounted}</td>
            )}
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row" colSpan={most + 1}>
            {words.totalName}
          </th>
          <td className="number">{sum('good')}</td>
          <td className="number">{sum('repair')}</td>
          <td className="number">{sum('scrap')}</td>
        </tr>
      </tfoot>
    </table>
  );
}

/** Millimetres without their unit, which the head of the column names. */
const bare = (length: string): string => length.replace(/ mm$/, '');

const sideCells = ({ sides }: Kind, most: number) =>
  Array.from({ length: most }, (_, i) => ({ id: `side ${i}`, metres: sides[i] ?? null }));

/** Marks on several kinds, tapes, groups still joined. */
export const OtherFindings = memo(function OtherFindings({ worked }: { worked: Worked | null }) {
  return worked ? (
    <>
      <Marks worked={worked} />
      <People worked={worked} />
      <Groups worked={worked} />
    </>
  ) : null;
});

function Marks({ worked }: { worked: Worked }) {
  const words = useWords().pile;
  const { mixedMarks } = worked.kinds;
  if (mixedMarks.length === 0) return null;
  return (
    <section aria-labelledby="pile-marks-title">
      <h2 id="pile-marks-title">{words.marks.title}</h2>
      <ul className="lines">
        {mixedMarks.map(({ mark, kinds }) => (
          <li key={mark}>
            <strong>{mark}</strong>{' '}
            {words.and(
              kinds.map(({ kind, panels, stray }) =>
                stray ? words.marks.stray(kind, panels) : words.marks.kind(kind, panels),
              ),
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

function People({ worked }: { worked: Worked }) {
  const words = useWords().pile.people;
  const lengths = useLengths();
  const { people, noise } = worked.kinds;
  if (people.length === 0) return null;
  return (
    <section aria-labelledby="pile-people-title">
      <h2 id="pile-people-title">{words.title}</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.columns.by}</th>
            <th scope="col" className="number">
              {words.columns.readings}
            </th>
            <th scope="col" className="number">
              {words.columns.off}
            </th>
            <th scope="col">{words.columns.note}</th>
          </tr>
        </thead>
        <tbody>
          {people.map(({ by, readings, bias, sd, basis, applied }) => (
            <tr key={by}>
              <th scope="row">{by}</th>
              <td className="number">{readings}</td>
              <td className="number">
                {basis === 'nothing'
                  ? words.nothing
                  : `${lengths.off(bias)}${sd === null ? '' : ` ± ${lengths.small(sd)}`}`}
              </td>
              <td>
                {applied
                  ? words.applied
                  : basis === 'kinds'
                    ? words.kindsOnly
                    : basis === 'panels'
                      ? words.small
                      : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">
        {words.noise(
          lengths.small(noise.used),
          lengths.small(noise.stated),
          noise.found === null ? null : lengths.small(noise.found),
        )}
      </p>
    </section>
  );
}

function Groups({ worked }: { worked: Worked }) {
  const words = useWords().pile;
  const { groups } = worked.pile;
  const { unsettledGroups } = worked.kinds;
  if (groups.length === 0) return null;
  const unsettled = new Map(unsettledGroups.map((one) => [one.group, one.readings.length]));
  const lines = groups.map(({ around, count, closed }, i) => ({
    id: `${i} ${around.join(' ')}`,
    line: words.groups.line(count, words.joined(around), closed === true),
    ways: unsettled.get(i),
  }));
  return (
    <section aria-labelledby="pile-groups-title">
      <h2 id="pile-groups-title">{words.groups.title}</h2>
      <ul className="lines">
        {lines.map(({ id, line, ways }) => (
          <li key={id}>
            {line}
            {ways === undefined ? null : (
              <span className="accent"> {words.groups.unsettled(ways)}</span>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
