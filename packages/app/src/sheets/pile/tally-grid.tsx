// The tally as a grid. Only the rows in sight are there, and the one that is typed in; a row is
// drawn again only when something of it changed.

import {
  type ClipboardEvent,
  Fragment,
  type KeyboardEvent,
  type MouseEvent,
  type ReactNode,
  type RefObject,
  type UIEvent,
  useCallback,
  useEffect,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { readoutOf, shortEcho } from './cell-words.ts';
import type { FindingOf } from './findings-of.ts';
import { pasteInto } from './paste-into.ts';
import { cellText, type TallyRow } from './rows.ts';
import { TallyField } from './tally-field.tsx';
import { faultsOf, ROW_HEIGHT, TallyRowView } from './tally-row.tsx';
import { nameOfRow, type Tally } from './use-tally.ts';

/** Rows drawn beyond the edges. */
const BEYOND = 8;
/** Names offered while one is typed. */
const MARKS = 'pile-marks';
const PEOPLE = 'pile-people';
const READOUT = 'tally-readout';
/** A table whose cells are gone to by keys: ARIA allows a table to be a grid. */
const GRID = { role: 'grid' } as const;
/** Rows that only hold room are not read out. */
const OUT_OF_SIGHT = { 'aria-hidden': true } as const;

/** The grid. `findingOf` gives what the pile says of a reading. `onPick` hears a picked cell where
 * another part of the sheet does the typing; the grid then only shows. */
export function TallyGrid({
  tally,
  findingOf,
  onPick,
}: {
  tally: Tally;
  findingOf: FindingOf;
  onPick?: ((row: number, column: number) => void) | undefined;
}) {
  const { rows, columns, active, actions } = tally;
  const app = useApp();
  const allWords = useWords();
  const words = allWords.pile;
  const lengths = useLengths();
  const selected = useAppState(({ selection }) =>
    selection?.type === 'reading' ? selection.row : null,
  );
  const kind = useAppState(({ selection }) => (selection?.type === 'kind' ? selection.id : null));
  const scroller = useRef<HTMLDivElement>(null);
  const { first, last, onScroll } = useWindow(scroller, rows.length);
  useRowInSight(scroller, useFirstOfKind(rows, kind, findingOf) ?? active?.row ?? selected);
  const [typed, setTyped] = useState<string | null>(null);
  const plusOne = useCallback((row: number) => actions.countUp(row, 1), [actions]);
  const shown = useMemo(() => {
    const list = Array.from({ length: Math.max(0, last - first) }, (_, i) => first + i);
    if (active && !onPick && (active.row < first || active.row >= last)) list.push(active.row);
    return list.sort((a, b) => a - b);
  }, [first, last, active, onPick]);
  const activeRow = active ? rows[active.row] : undefined;
  const activeCell = active ? columns[active.column] : undefined;

  const pick = (event: MouseEvent): void => {
    const cell = (event.target as Element).closest<HTMLElement>('[data-column]');
    const row = cell?.closest<HTMLElement>('[data-row]');
    if (!cell || !row) return;
    const place = { row: Number(row.dataset.row), column: Number(cell.dataset.column) };
    if (onPick) onPick(place.row, place.column);
    else if (active?.row !== place.row || active.column !== place.column) actions.go(place);
  };
  const hear = (event: KeyboardEvent): void => {
    const strong = event.ctrlKey || event.metaKey;
    if (strong && event.key === 'Enter') {
      event.preventDefault();
      leaveField();
      actions.same();
    } else if (strong && (event.key === 'Delete' || event.key === 'Backspace')) {
      if (event.key === 'Backspace' && !event.shiftKey) return;
      event.preventDefault();
      actions.remove();
    } else if (event.key === 'Enter' && event.target === event.currentTarget) {
      event.preventDefault();
      actions.goToRow('fresh', 'tag');
    }
  };
  const paste = (event: ClipboardEvent): void => {
    if (!active || onPick) return;
    const text = event.clipboardData.getData('text/plain');
    if (pasteInto({ app, words: allWords, text, tally })) event.preventDefault();
  };
  const field = (): ReactNode => {
    if (!active || !activeRow || activeCell === undefined || onPick) return null;
    const text = cellText(activeRow, activeCell, lengths.side);
    const fault = faultsOf(activeRow, lengths).has(activeCell);
    const side = typeof activeCell === 'number';
    return (
      <>
        <TallyField
          key={`${active.row} ${active.column} ${text}`}
          row={active.row}
          cell={activeCell}
          text={text}
          label={words.tally.cell(
            side ? words.tally.side(activeCell) : words.tally.columns[activeCell],
            nameOfRow(activeRow, active.row, words),
          )}
          describedBy={READOUT}
          fault={fault}
          actions={actions}
          suggestions={activeCell === 'mark' ? MARKS : activeCell === 'by' ? PEOPLE : undefined}
          onTyped={setTyped}
        />
        {side ? <span className="echo">{shortEcho(typed ?? text, lengths)}</span> : null}
      </>
    );
  };
  return (
    <div className="tally">
      <div ref={scroller} className="tally-scroll" onScroll={onScroll}>
        <table
          {...GRID}
          aria-label={words.tally.name}
          aria-rowcount={rows.length + 1}
          aria-colcount={columns.length + 2}
          className="tally-grid"
          tabIndex={active && !onPick ? -1 : 0}
          onClick={pick}
          onKeyDown={hear}
          onPaste={paste}
        >
          <thead>
            <tr aria-rowindex={1}>
              <th scope="col" aria-colindex={1} className="head-cell tally-number">
                <span className="read-out">{words.tally.row}</span>
              </th>
              {columns.map((cell, c) => (
                <th
                  key={cell}
                  scope="col"
                  aria-colindex={c + 2}
                  className={`head-cell ${typeof cell === 'number' ? 'side' : cell}`}
                >
                  {typeof cell === 'number' ? words.tally.side(cell) : words.tally.columns[cell]}
                </th>
              ))}
              <th scope="col" aria-colindex={columns.length + 2} className="head-cell tally-kind">
                {words.tally.columns.kind}
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((index, i) => {
              const row = rows[index];
              const gap = index - (shown[i - 1] ?? -1) - 1;
              const at = active?.row === index ? active.column : null;
              const finding = row?.reading ? findingOf(row.reading) : null;
              return row ? (
                <Fragment key={row.ref.type === 'reading' ? row.ref.index : `draft ${row.ref.key}`}>
                  <Gap rows={gap} />
                  <TallyRowView
                    row={row}
                    index={index}
                    columns={columns}
                    finding={finding}
                    lengths={lengths}
                    words={words}
                    at={onPick ? null : at}
                    field={at === null ? null : field()}
                    chosen={row.ref.type === 'reading' && row.ref.index === selected}
                    ofKind={kind !== null && (finding?.kinds.includes(kind) ?? false)}
                    plusOne={plusOne}
                  />
                </Fragment>
              ) : null;
            })}
            <Gap rows={rows.length - 1 - (shown.at(-1) ?? -1)} />
          </tbody>
        </table>
      </div>
      <p id={READOUT} className="tally-readout" aria-live="polite">
        {onPick
          ? words.tally.pickHint
          : activeRow && activeCell !== undefined
            ? readoutOf(activeRow, activeCell, typed, lengths, words)
            : words.tally.hint}
      </p>
      <Names id={MARKS} of="mark" rows={rows} />
      <Names id={PEOPLE} of="by" rows={rows} />
    </div>
  );
}

/** Room for rows that are out of sight. */
const Gap = ({ rows }: { rows: number }) =>
  rows > 0 ? (
    <tr {...OUT_OF_SIGHT} style={{ height: rows * ROW_HEIGHT }}>
      <td className="gap-cell" />
    </tr>
  ) : null;

/** The names that are in the tally already, offered while one is typed. */
function Names({ id, of, rows }: { id: string; of: 'mark' | 'by'; rows: readonly TallyRow[] }) {
  const names = useMemo(
    () => [...new Set(rows.flatMap(({ reading }) => reading?.[of] ?? []))].sort().slice(0, 60),
    [rows, of],
  );
  return (
    <datalist id={id}>
      {names.map((name) => (
        <option key={name} value={name} />
      ))}
    </datalist>
  );
}

/** Writes what is in the field before something else is done with its row. */
function leaveField(): void {
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
}

/** The rows in sight. */
function useWindow(scroller: RefObject<HTMLDivElement | null>, rows: number) {
  const [view, setView] = useState({ top: 0, height: 800 });
  const look = useCallback((element: HTMLElement): void => {
    const top = Math.floor(element.scrollTop / ROW_HEIGHT) * ROW_HEIGHT;
    const height = element.clientHeight;
    setView((old) => (old.top === top && old.height === height ? old : { top, height }));
  }, []);
  useLayoutEffect(() => {
    const element = scroller.current;
    if (!element) return;
    const watch = new ResizeObserver(() => look(element));
    watch.observe(element);
    look(element);
    return () => watch.disconnect();
  }, [scroller, look]);
  const first = Math.max(0, view.top / ROW_HEIGHT - BEYOND);
  const last = Math.min(rows, Math.ceil((view.top + view.height) / ROW_HEIGHT) + BEYOND);
  const onScroll = (event: UIEvent<HTMLDivElement>): void => look(event.currentTarget);
  return { first: Math.min(first, last), last, onScroll };
}

/** The first row of the selected kind, so that it comes in sight when the kind is selected. */
function useFirstOfKind(
  rows: readonly TallyRow[],
  kind: string | null,
  findingOf: FindingOf,
): number | null {
  const now = useRef({ rows, findingOf });
  now.current = { rows, findingOf };
  return useMemo(() => {
    if (kind === null) return null;
    const { rows: all, findingOf: found } = now.current;
    const at = all.findIndex(({ reading }) => reading && found(reading)?.kinds.includes(kind));
    return at < 0 ? null : at;
  }, [kind]);
}

/** Keeps a row in sight when it is chosen. */
function useRowInSight(scroller: RefObject<HTMLDivElement | null>, row: number | null): void {
  useEffect(() => {
    const element = scroller.current;
    if (!element || row === null) return;
    const room = element.clientHeight - ROW_HEIGHT;
    const top = row * ROW_HEIGHT;
    if (top < element.scrollTop) element.scrollTop = top - ROW_HEIGHT;
    else if (top + ROW_HEIGHT > element.scrollTop + room)
      element.scrollTop = top + 2 * ROW_HEIGHT - room;
  }, [scroller, row]);
}
