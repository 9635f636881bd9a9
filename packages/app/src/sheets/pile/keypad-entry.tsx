// Measuring with one hand: the panel drawn above, one side asked for at a time, keys large enough
// for a thumb. Nothing here takes the focus of a text field, so that no keyboard of the phone comes
// up, save where letters are asked for.

import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';
import { useWords, type Words } from '../../words/words.ts';
import { faultWords } from './cell-words.ts';
import { type Cell, readSide } from './cells.ts';
import type { FindingOf } from './findings-of.ts';
import { type Key, keysFor, nextAsked, nextTag, withoutLast, withSign } from './keypad.ts';
import { LettersField } from './letters-field.tsx';
import { PanelUnderTape } from './panel-band.tsx';
import { RowChoices } from './row-choices.tsx';
import { cellText, type TallyRow } from './rows.ts';
import { faultsOf } from './tally-row.tsx';
import { useBoxSize } from './use-box-size.ts';
import { useRealKeys } from './use-real-keys.ts';
import { nameOfRow, type Tally } from './use-tally.ts';
import type { Worked } from './worked.ts';

/** Until its box is measured. */
const DRAWING = { width: 390, height: 140 };

/** The entry for one hand. */
export function KeypadEntry({
  tally,
  findingOf,
}: {
  tally: Tally;
  worked: Worked | null;
  findingOf: FindingOf;
}) {
  const words = useWords().pile;
  const lengths = useLengths();
  const app = useApp();
  const { rows, columns, active, actions } = tally;
  const place = active ?? { row: rows.length - 1, column: columns.indexOf(0) };
  const row = rows[place.row] as TallyRow;
  const asked: Cell = columns[place.column] ?? 0;
  const cell: Cell = typeof asked === 'number' || asked === 'tag' || asked === 'count' ? asked : 0;
  const [typed, setTyped] = useState<string | null>(null);
  const [letters, setLetters] = useState(false);
  const [box, size] = useBoxSize(DRAWING);
  const [told, setTold] = useState('');
  const last = useAppState((state) => projectOf(state).pile.readings.at(-1));
  const used = useMemo(
    () => new Set(rows.flatMap(({ reading, draft }) => reading?.tag ?? draft?.tag ?? [])),
    [rows],
  );
  const suggested = row.fresh ? nextTag(last?.tag, used) : '';
  const name = row.fresh ? words.keypad.freshPanel : nameOfRow(row, place.row, words);

  const kept = cell === 'tag' && row.fresh ? suggested : cellText(row, cell, lengths.side);
  const shown = typed ?? kept;
  const fault = faultsOf(row, lengths).get(cell);

  /** Writes what was typed; the row may be named otherwise afterwards. */
  const write = useCallback((): ReturnType<typeof actions.write> => {
    if (typed === null) return null;
    if (row.fresh && typeof cell === 'number' && suggested !== '' && typed.trim() !== '')
      actions.write(place.row, 'tag', suggested);
    const landed = actions.write(place.row, cell, typed);
    setTyped(null);
    return landed;
  }, [typed, row.fresh, cell, suggested, actions, place.row]);
  useLeaving(write);

  const ask = (next: Cell): void => {
    const landed = write();
    actions.goToRow(landed?.ref ?? (row.fresh ? 'fresh' : row.ref), next);
    setLetters(false);
    setTold('');
  };
  const next = (): void => {
    const whole = row.reading !== null;
    const landed = write();
    const ref = landed?.ref ?? row.ref;
    const rowNow = actions.rowOf(ref) ?? row;
    const unread = landed !== null && faultsOf(rowNow, lengths).has(cell);
    setLetters(false);
    if (unread) {
      actions.goToRow(ref, cell);
      return;
    }
    const side = rowNow.reading && !whole ? null : nextAsked(rowNow, cell);
    if (side !== null) {
      actions.goToRow(rowNow.fresh ? 'fresh' : ref, side);
      return;
    }
    if (rowNow.reading)
      setTold(words.keypad.taken(nameOfRow(rowNow, actions.indexOf(ref), words), null));
    actions.goToRow('fresh', 0);
  };
  const press = (key: Key): void => {
    setTold('');
    if ('sign' in key) setTyped((old) => withSign(old ?? '', key.sign));
    else if (key.act === 'back') setTyped((old) => withoutLast(old ?? shown));
    else if (key.act === 'letters') setLetters(true);
  };
  useRealKeys(
    (sign) => setTyped((old) => withSign(old ?? '', sign)),
    () => setTyped((old) => withoutLast(old ?? shown)),
    next,
  );
  const board = keysFor(cell, lengths.system);
  const sides = columns.filter((one) => typeof one === 'number');
  const shownSides = sides.slice(
    0,
    Math.max(
      3,
      row.reading?.sides.length ?? 0,
      row.draft?.sides.length ?? 0,
      typeof cell === 'number' ? cell + 1 : 0,
    ),
  );
  const side = typeof cell === 'number' ? cell : null;
  return (
    <section className="keypad-entry screen-only" aria-label={words.views.measure}>
      <h1 className="read-out">{words.heading}</h1>
      <div ref={box} className="keypad-drawing">
        <PanelUnderTape
          under={{ row, index: place.row, asked: side, typed }}
          findingOf={findingOf}
          size={size}
        />
      </div>
      <fieldset className="keypad-cells" aria-label={words.keypad.cells}>
        {(['tag', ...shownSides, 'count'] as const).map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={one === cell}
            className={faultsOf(row, lengths).has(one) ? 'fault' : undefined}
            onClick={() => ask(one)}
          >
            <span className="cell-name">
              {typeof one === 'number' ? one + 1 : words.keypad[one]}
            </span>
            <strong>
              {one === 'tag' && row.fresh
                ? suggested || '–'
                : cellText(row, one, lengths.side) || '–'}
            </strong>
          </button>
        ))}
      </fieldset>
      <div className="keypad-asked">
        <p className="keypad-prompt">
          <span>
            <strong>
              {typeof cell === 'number' ? words.keypad.asking(cell) : words.keypad[cell]}
            </strong>{' '}
            <span className="quiet">{words.keypad.of(name)}</span>
          </span>
          <span className="quiet">
            {words.drawing.face[row.reading?.seenFrom ?? row.draft?.seenFrom ?? 'unknown']}
          </span>
        </p>
        {letters ? (
          <LettersField
            text={shown}
            label={words.keypad[cell === 'count' ? 'count' : 'tag']}
            put={setTyped}
            done={() => setLetters(false)}
          />
        ) : (
          <output className={fault && typed === null ? 'fault' : undefined}>
            {shown || '\u00a0'}
          </output>
        )}
        <p className="keypad-echo" aria-live="polite">
          {told || echoWords(cell, typed, kept, fault, lengths, words)}
        </p>
      </div>
      <RowChoices tally={tally} at={place.row} row={row} before={write} />
      <fieldset className={`keypad across-${board.across}`} aria-label={words.keypad.keys}>
        {board.keys.map((key) => (
          <KeyButton key={'sign' in key ? key.sign : key.act} of={key} press={press} />
        ))}
      </fieldset>
      <div className="keypad-acts">
        <button
          type="button"
          disabled={last === undefined}
          onClick={() => {
            write();
            actions.same();
            setTold(
              words.tally.sameCount(
                projectOf(app.state.getState()).pile.readings.at(-1)?.count ?? 1,
              ),
            );
          }}
        >
          {words.keypad.same}
        </button>
        <button type="button" className="go" onClick={next}>
          {words.keypad.next}
        </button>
      </div>
    </section>
  );
}

function echoWords(
  cell: Cell,
  typed: string | null,
  kept: string,
  fault: ReturnType<ReturnType<typeof faultsOf>['get']>,
  lengths: ReturnType<typeof useLengths>,
  words: Words['pile'],
): string {
  if (typed === null && fault) return faultWords(fault, kept, lengths, words);
  const text = typed ?? kept;
  if (typeof cell !== 'number' || text.trim() === '') return '';
  const read = readSide(text, lengths.bare);
  if (read.ok) return words.tally.echo(lengths.side(read.metres), lengths.echo(read.metres));
  return read.fault.why === 'range' ? faultWords(read.fault, text, lengths, words) : '';
}

function KeyButton({ of, press }: { of: Key; press: (key: Key) => void }) {
  const words = useWords().pile.keypad;
  if ('act' in of && of.act === 'none') return <span className="no-key" />;
  const [label, name] =
    'sign' in of
      ? of.name === 'digit'
        ? [of.sign, undefined]
        : [of.name === 'space' ? words.space : of.sign, words[of.name]]
      : of.act === 'back'
        ? [words.delete, words.backspace]
        : [words.letters, words.lettersName];
  return (
    <button type="button" aria-label={name} onClick={() => press(of)}>
      {label}
    </button>
  );
}

/** Writes what was typed when the page goes out of sight or another part of the sheet is shown. */
function useLeaving(write: () => unknown): void {
  const app = useApp();
  const latest = useRef(write);
  latest.current = write;
  useEffect(() => {
    const leave = (): void => {
      if (document.visibilityState !== 'hidden') return;
      latest.current();
      void app.save();
    };
    document.addEventListener('visibilitychange', leave);
    return () => {
      document.removeEventListener('visibilitychange', leave);
      latest.current();
    };
  }, [app]);
}
