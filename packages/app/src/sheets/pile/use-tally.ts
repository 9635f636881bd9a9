// The tally as the sheet works on it: its rows, the cell that is typed in, and what can be done.
// Every change goes through the app, so that it can be taken back.

import { LEAST_SIDES, MAX_SIDES } from '@shellraise/core';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { type App, docOf } from '../../state/app-state.ts';
import type { Doc, Recipe } from '../../state/doc.ts';
import { useApp, useAppState } from '../../ui/app-context.tsx';
import { type Lengths, lengthsIn } from '../../ui/lengths.ts';
import { useWords, type Words } from '../../words/words.ts';
import { type Cell, columnsFor, sidesIn } from './cells.ts';
import { deleteRow, dropUnread, type Landed, putCells, sameAgain } from './edits.ts';
import { type RowRef, rowsOf, sameRow, type TallyRow } from './rows.ts';
import { type Place, type Walk, walked } from './walk.ts';

/** The tally and what can be done with it. */
export interface Tally {
  readonly rows: readonly TallyRow[];
  readonly columns: readonly Cell[];
  /** The cell that is typed in; null for none. */
  readonly active: Place | null;
  readonly actions: TallyActions;
}

/** What can be done with the tally. The same object as long as the sheet lives. */
export interface TallyActions {
  /** Goes to a cell; from there a walk with Enter begins. */
  readonly go: (place: Place | null) => void;
  readonly goToRow: (ref: RowRef | 'fresh', cell: Cell) => void;
  /** Takes a step; false where it leads out of the tally. */
  readonly walk: (step: Walk) => boolean;
  /** Writes the active cell. */
  readonly write: (row: number, cell: Cell, text: string) => Landed | null;
  readonly same: () => void;
  readonly countUp: (index: number, by: number) => void;
  readonly remove: () => void;
  readonly forgetUnread: (row: number) => void;
  readonly moreSides: () => void;
  readonly landed: (landed: Landed | null) => void;
  /** The row of a name as it is now, and where it is shown; -1 for nowhere. */
  readonly rowOf: (ref: RowRef) => TallyRow | undefined;
  readonly indexOf: (ref: RowRef) => number;
}

/** The tally of the project on show. */
export function useTally(): Tally {
  const app = useApp();
  const words = useWords().pile;
  const readings = useAppState((state) => docOf(state).project.pile.readings);
  const drafts = useAppState((state) => docOf(state).drafts);
  const projectId = useAppState((state) => state.projectId);
  const [active, setActive] = useState<Place | null>(null);
  const [extra, setExtra] = useState(0);
  const rows = useMemo(() => rowsOf(readings, drafts), [readings, drafts]);
  const sides = Math.min(MAX_SIDES, Math.max(sidesIn(readings, drafts), LEAST_SIDES) + extra);
  const columns = useMemo(() => columnsFor(sides), [sides]);
  const from = useRef(0);
  const now = useRef({ rows, columns, active });
  now.current = { rows, columns, active };
  useEffect(() => {
    // The demo's first change gives it an id of its own, amid the typing: that is no other project.
    if (!projectId || app.state.getState().history.past.length > 0) return;
    setExtra(0);
    setActive(null);
  }, [app, projectId]);
  const move = useCallback((place: Place | null): void => {
    now.current = { ...now.current, active: place };
    setActive(place);
  }, []);
  const actions = useMemo(
    () => tallyActions(app, words, now, from, move, () => setExtra((n) => n + 1)),
    [app, words, move],
  );
  const shown = active && active.row >= rows.length ? { ...active, row: rows.length - 1 } : active;
  return { rows, columns, active: shown, actions };
}

interface Now {
  readonly current: {
    rows: readonly TallyRow[];
    columns: readonly Cell[];
    active: Place | null;
  };
}

function tallyActions(
  app: App,
  words: Words['pile'],
  now: Now,
  from: { current: number },
  move: (place: Place | null) => void,
  moreSides: () => void,
): TallyActions {
  const doc = (): Doc => docOf(app.state.getState());
  const freshRows = (): readonly TallyRow[] => {
    const { project, drafts } = doc();
    now.current.rows = rowsOf(project.pile.readings, drafts);
    return now.current.rows;
  };
  const rowName = (row: TallyRow): string => nameOfRow(row, freshRows().indexOf(row), words);
  const change = (
    label: string,
    recipe: (draft: Parameters<Recipe>[0]) => Landed | null,
    of?: string,
  ) => {
    let landed: Landed | null = null;
    app.change(
      (draft) => {
        landed = recipe(draft);
        return undefined;
      },
      of === undefined ? { label } : { label, of },
    );
    freshRows();
    const done = landed as Landed | null;
    if (done && done.groupsAside > 0) app.tell('note', words.groupsAside(done.groupsAside), [], []);
    return done;
  };
  const rowAt = (ref: RowRef): number => now.current.rows.findIndex((row) => sameRow(row.ref, ref));
  const follow = (landed: Landed | null): void => {
    const { active } = now.current;
    const row = landed ? rowAt(landed.ref) : -1;
    if (active && row >= 0 && row !== active.row) move({ ...active, row });
  };
  const go = (place: Place | null): void => {
    from.current = place?.column ?? 0;
    move(place);
    const ref = place ? now.current.rows[place.row]?.ref : undefined;
    if (ref?.type === 'reading') app.select({ type: 'reading', row: ref.index });
  };
  const goToRow = (ref: RowRef | 'fresh', cell: Cell): void => {
    const rows = freshRows();
    const row = ref === 'fresh' ? rows.length - 1 : rowAt(ref);
    const column = now.current.columns.indexOf(cell);
    if (row >= 0 && column >= 0) go({ row, column });
  };
  return {
    go,
    goToRow,
    walk: (step) => {
      const { active, rows, columns } = now.current;
      if (!active) return false;
      const row = rows[active.row];
      const sides =
        row?.reading?.sides.length ?? Math.max(LEAST_SIDES, row?.draft?.sides.length ?? 0);
      const next = walked(active, step, {
        columns,
        rows: rows.length,
        sides,
        from: from.current,
        page: 12,
      });
      if (!next) return false;
      if (step !== 'enter') from.current = next.column;
      move(next);
      const ref = rows[next.row]?.ref;
      if (ref?.type === 'reading' && next.row !== active.row)
        app.select({ type: 'reading', row: ref.index });
      return true;
    },
    write: (at, cell, text) => {
      const row = now.current.rows[at];
      if (!row) return null;
      const unit = lengthsNow(app).bare;
      const name = typeof cell === 'number' ? words.tally.side(cell) : words.tally.columns[cell];
      const landed = change(words.changes.cell(name, rowName(row)), (draft) =>
        putCells(draft, row.ref, [[cell, text]], unit),
      );
      follow(landed);
      return landed;
    },
    same: () => {
      const { active, rows } = now.current;
      const own = active ? rows[active.row]?.ref : undefined;
      const index = own?.type === 'reading' ? own.index : doc().project.pile.readings.length - 1;
      const landed = change(words.changes.same, (draft) => {
        const ref = sameAgain(draft, index);
        return ref ? { ref, groupsAside: 0 } : null;
      });
      if (landed?.ref.type === 'reading') app.select({ type: 'reading', row: landed.ref.index });
      follow(own?.type === 'reading' ? landed : null);
      if (own && own.type === 'draft') goToRow(own, now.current.columns[active?.column ?? 0] ?? 0);
    },
    countUp: (index, by) => {
      const row = now.current.rows[index];
      const ref = row?.ref;
      if (!row || ref?.type !== 'reading') return;
      const label = words.changes.count(rowName(row));
      change(
        label,
        (draft) => {
          const reading = draft.project.pile.readings[ref.index];
          const count = Math.max(1, (reading?.count ?? 1) + by);
          if (!reading || reading.tag !== undefined) return null;
          if (count === 1) delete reading.count;
          else reading.count = count;
          return null;
        },
        label,
      );
    },
    remove: () => {
      const { active, rows } = now.current;
      const row = active ? rows[active.row] : undefined;
      if (!active || !row || row.fresh) return;
      change(words.changes.remove(rowName(row)), (draft) => deleteRow(draft, row.ref));
      move({ ...active, row: Math.min(active.row, now.current.rows.length - 1) });
    },
    forgetUnread: (at) => {
      const ref = now.current.rows[at]?.ref;
      if (ref?.type === 'reading')
        change(words.changes.unread, (draft) => {
          dropUnread(draft, ref.index);
          return null;
        });
    },
    moreSides,
    landed: (landed) => {
      freshRows();
      follow(landed);
    },
    rowOf: (ref) => now.current.rows[rowAt(ref)],
    indexOf: rowAt,
  };
}

/** The writers of the system that is set now. */
export const lengthsNow = (app: App): Lengths => lengthsIn(app.state.getState().settings.lengths);

/** What a row is called: `panel 017`, `row 12`, `new row`. */
export function nameOfRow(row: TallyRow, at: number, words: Words['pile']): string {
  if (row.fresh) return words.tally.freshRow;
  const tag = row.reading?.tag ?? row.draft?.tag ?? '';
  return words.tally.rowOf(row.draft?.tag || tag, at + 1);
}
