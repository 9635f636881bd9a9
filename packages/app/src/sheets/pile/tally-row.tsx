// One row of the tally: cells as text, in both systems; only the cell that is typed in is a field.

import type { Fill } from '@shellraise/core';
import { memo, type ReactNode } from 'react';
import { FillSwatch } from '../../drawing/fill-swatch.tsx';
import type { DraftRow } from '../../state/doc.ts';
import type { Lengths } from '../../ui/lengths.ts';
import type { Words } from '../../words/words.ts';
import { type Cell, type CellFault, readSide } from './cells.ts';
import { cellText, checkRow, type TallyRow } from './rows.ts';

/** Height of a row, pixels. */
export const ROW_HEIGHT = 48;

/** What the pile says of a reading. */
export interface RowFinding {
  /** Its kind, or those it may be. */
  readonly kinds: readonly string[];
  /** Fill of its kind where there is one alone. */
  readonly fill: Fill | null;
  /** Side → what it should read, metres. */
  readonly expected: ReadonlyMap<number, number>;
}

/** A row as drawn. `field` takes the place of the text of cell `at`. */
export interface TallyRowProps {
  readonly row: TallyRow;
  readonly index: number;
  readonly columns: readonly Cell[];
  readonly finding: RowFinding | null;
  readonly lengths: Lengths;
  readonly words: Words['pile'];
  readonly at: number | null;
  readonly field: ReactNode;
  readonly chosen: boolean;
  /** Whether its kind is the selected thing. */
  readonly ofKind: boolean;
  readonly plusOne: (row: number) => void;
}

/** One row; the grid hears its clicks. */
export const TallyRowView = memo(
  function TallyRowView(props: TallyRowProps) {
    const { row, index, columns, finding, words, at, field, chosen, ofKind, plusOne } = props;
    const faults = faultsOf(row, props.lengths);
    const tagged = (row.reading?.tag ?? '') !== '';
    return (
      <tr
        aria-rowindex={index + 2}
        aria-selected={chosen}
        className={ofKind ? 'tally-row of-kind' : 'tally-row'}
        data-row={index}
      >
        <th scope="row" aria-colindex={1} className="tally-number">
          {row.fresh ? <span className="read-out">{words.tally.freshRow}</span> : index + 1}
        </th>
        {columns.map((cell, c) => (
          <td
            key={cell}
            aria-colindex={c + 2}
            data-column={c}
            className={cellClass(cell, c === at, faults.has(cell), finding)}
          >
            {c === at ? field : <CellText {...props} cell={cell} fault={faults.get(cell)} />}
            {cell === 'count' && row.reading && !tagged && c !== at ? (
              <button
                type="button"
                tabIndex={-1}
                className="plus-one"
                aria-label={words.tally.plusOneOf(words.tally.rowOf('', index + 1))}
                onClick={(event) => {
                  event.stopPropagation();
                  plusOne(index);
                }}
              >
                {words.tally.plusOne}
              </button>
            ) : null}
          </td>
        ))}
        <td aria-colindex={columns.length + 2} className="tally-kind">
          <KindText row={row} finding={finding} words={words} />
        </td>
      </tr>
    );
  },
  (a, b) =>
    a.at === b.at &&
    a.at === null &&
    a.index === b.index &&
    a.row.reading === b.row.reading &&
    a.row.fresh === b.row.fresh &&
    sameDraft(a.row.draft, b.row.draft) &&
    a.columns === b.columns &&
    a.finding === b.finding &&
    a.lengths === b.lengths &&
    a.words === b.words &&
    a.chosen === b.chosen &&
    a.ofKind === b.ofKind,
);

const sameDraft = (a: DraftRow | null, b: DraftRow | null): boolean =>
  a === b || (a !== null && b !== null && JSON.stringify(a) === JSON.stringify(b));

/** Faults of what was typed into a row and is not taken. */
export function faultsOf(row: TallyRow, lengths: Lengths): ReadonlyMap<Cell, CellFault> {
  return row.draft && !row.fresh
    ? checkRow(row.reading, row.draft, lengths.bare).faults
    : new Map<Cell, CellFault>();
}

function cellClass(
  cell: Cell,
  active: boolean,
  fault: boolean,
  finding: RowFinding | null,
): string {
  const side = typeof cell === 'number';
  return [
    'tally-cell',
    side ? 'side' : cell,
    active ? 'active' : '',
    fault ? 'fault' : '',
    side && finding?.expected.has(cell) ? 'suspect' : '',
  ]
    .filter((name) => name !== '')
    .join(' ');
}

function CellText({
  row,
  cell,
  lengths,
  words,
  finding,
  fault,
}: TallyRowProps & { cell: Cell; fault: CellFault | undefined }) {
  const text = cellText(row, cell, lengths.side);
  if (cell === 'seenFrom')
    return row.fresh ? null : (
      <span>{words.tally.seenFrom[text as keyof Words['pile']['tally']['seenFrom']] ?? text}</span>
    );
  if (cell === 'condition')
    return row.fresh || text === '' ? null : (
      <span>{words.tally.condition[text as keyof Words['pile']['tally']['condition']]}</span>
    );
  if (typeof cell !== 'number') {
    if (row.fresh) return null;
    return <span>{cell === 'count' && text === '' && row.reading ? '1' : text}</span>;
  }
  if (fault) return <Two first={text} second={words.tally.unread} />;
  const expected = finding?.expected.get(cell);
  if (expected !== undefined)
    return <Two first={text} second={words.tally.expected(lengths.side(expected))} />;
  return <Two first={text} second={echoOf(row, cell, lengths)} />;
}

const Two = ({ first, second }: { first: string; second: string }) => (
  <>
    <span>{first}</span>
    <span className="echo">{second}</span>
  </>
);

function echoOf(row: TallyRow, side: number, lengths: Lengths): string {
  const typed = row.draft?.sides[side] ?? '';
  const read = typed === '' ? null : readSide(typed, lengths.bare);
  const metres = read === null ? row.reading?.sides[side] : read.ok ? read.metres : undefined;
  return metres === undefined ? '' : lengths.echo(metres);
}

function KindText({
  row,
  finding,
  words,
}: {
  row: TallyRow;
  finding: RowFinding | null;
  words: Words['pile'];
}) {
  if (!row.reading)
    return row.fresh ? null : <span className="echo">{words.tally.incomplete}</span>;
  if (!finding) return null;
  return (
    <>
      {finding.fill ? <FillSwatch fill={finding.fill} /> : null}
      <span>{words.tally.kindsOr(finding.kinds)}</span>
    </>
  );
}
