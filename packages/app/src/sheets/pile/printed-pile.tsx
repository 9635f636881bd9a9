// The pile on paper: kinds and readings as plain tables. There only while it is printed, so that
// typing is not slowed by thousands of cells.

import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { type Cell, columnsFor } from './cells.ts';
import type { FindingOf } from './findings-of.ts';
import { cellText, type TallyRow } from './rows.ts';

/** The readings as a table. */
export function PrintedTally({
  rows,
  columns,
  findingOf,
}: {
  rows: readonly TallyRow[];
  columns: readonly Cell[];
  findingOf: FindingOf;
}) {
  const words = useWords().pile;
  const lengths = useLengths();
  const shown = rows.map((row, index) => ({ row, index })).filter(({ row }) => !row.fresh);
  const text = (row: TallyRow, cell: Cell): string => {
    const own = cellText(row, cell, lengths.side);
    if (cell === 'seenFrom') return words.tally.seenFrom[own as 'outside'] ?? own;
    if (cell === 'condition') return own === '' ? '' : words.tally.condition[own as 'good'];
    return own;
  };
  const known = columns.length === 0 ? columnsFor(3) : columns;
  return (
    <section className="print-only printed-tally">
      <h2>{words.print.readings}</h2>
      <table>
        <thead>
          <tr>
            {known.map((cell) => (
              <th key={cell} scope="col">
                {typeof cell === 'number' ? words.tally.side(cell) : words.tally.columns[cell]}
              </th>
            ))}
            <th scope="col">{words.tally.columns.kind}</th>
          </tr>
        </thead>
        <tbody>
          {shown.map(({ row, index }) => (
            <tr key={index}>
              {known.map((cell) => (
                <td key={cell}>{text(row, cell)}</td>
              ))}
              <td>
                {row.reading
                  ? words.tally.kindsOr(findingOf(row.reading)?.kinds ?? [])
                  : words.tally.incomplete}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
