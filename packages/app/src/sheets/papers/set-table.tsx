// The sets of papers: what each is, how many pages, which are printed and saved, which is on show.

import { useWords } from '../../words/words.ts';
import type { SetRow } from './paper-runs.ts';

/** The table. */
export function SetTable({
  rows,
  ticked,
  shown,
  ordering,
  onTick,
  onShow,
}: {
  rows: readonly SetRow[];
  ticked: ReadonlySet<string>;
  shown: string | null;
  /** How the order of work stands that some sets wait for. */
  ordering: 'sought' | 'found' | 'none';
  onTick: (names: readonly string[], on: boolean) => void;
  onShow: (name: string) => void;
}) {
  const words = useWords().papers;
  const made = rows.filter(isMade).map(({ name }) => name);
  return (
    <>
      <p className="paper-all">
        <button type="button" onClick={() => onTick(made, true)}>
          {words.all}
        </button>{' '}
        <button type="button" onClick={() => onTick(made, false)}>
          {words.none}
        </button>
      </p>
      <table className="paper-sets">
        <caption className="read-out">{words.sets}</caption>
        <thead>
          <tr>
            <th colSpan={2}>{words.head.set}</th>
            <th className="paper-count">{words.head.pages}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.name} data-shown={row.name === shown} data-set={row.name}>
              <td>
                <input
                  type="checkbox"
                  aria-label={words.pick(titleOf(row.name))}
                  disabled={!isMade(row)}
                  checked={ticked.has(row.name) && isMade(row)}
                  onChange={({ target }) => onTick([row.name], target.checked)}
                />
              </td>
              <td>
                {isMade(row) ? (
                  <button
                    type="button"
                    className="paper-name"
                    aria-pressed={row.name === shown}
                    onClick={() => onShow(row.name)}
                  >
                    {titleOf(row.name)}
                  </button>
                ) : (
                  <strong className="paper-name">{titleOf(row.name)}</strong>
                )}
                <span className="quiet">
                  {row.what}
                  {isMade(row) ? sizeWords(row, words.larger) : ''}
                </span>
                <State row={row} ordering={ordering} />
              </td>
              <td className="paper-count">{isMade(row) ? row.told?.pages : '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function State({ row, ordering }: { row: SetRow; ordering: 'sought' | 'found' | 'none' }) {
  const words = useWords().papers;
  const { told } = row;
  if (told?.why)
    return (
      <span className="accent">
        {words.notMade} {told.why.join('; ')}
      </span>
    );
  if (told) return told.pages === 0 ? <em className="quiet">{words.nothing}</em> : null;
  if (row.ordered && ordering !== 'found')
    return <em className="quiet">{ordering === 'none' ? words.noOrder : words.waits}</em>;
  return <em className="quiet">{words.next}</em>;
}

/** Whether a set has pages. */
export const isMade = ({ told }: SetRow): boolean => (told?.pages ?? 0) > 0;

/** `Crew book`. */
export const titleOf = (name: string): string =>
  name.charAt(0).toUpperCase() + name.slice(1).replaceAll('-', ' ');

/** Where a set is on larger paper than the rest: on which. */
function sizeWords({ told }: SetRow, words: (paper: string) => string): string {
  const long = Math.max(...(told?.size ?? [0]));
  return long > 400 ? `, ${words('A3')}` : '';
}
