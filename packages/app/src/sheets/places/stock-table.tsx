// Places against stock, a row a kind: what is left over, what is short, what mending would fill.

import { kindFills, type StockRow } from '@shellraise/core';
import { useMemo } from 'react';
import { FillSwatch } from '../../drawing/fill-swatch.tsx';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useDerived, useEngine } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { type Stood, usePicked } from './stood.ts';

/** The table with the choice to count panels to be mended. */
export function StockTable({ stood }: { stood: Stood }) {
  const words = useWords().places.stock;
  const app = useApp();
  const { kind: selected } = usePicked(stood);
  const fills = useMemo(() => kindFills(stood.kinds), [stood.kinds]);
  const fillOf = (id: string) => fills[stood.kinds.findIndex((kind) => kind.id === id)];
  const rows = stood.standing.stock.filter((row) => row.need > 0 || row.good > 0);
  return (
    <div className="stock">
      <table>
        <caption className="read-out">{words.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{words.kind}</th>
            <th scope="col" className="number">
              {words.places}
            </th>
            <th scope="col" className="number">
              {words.have}
            </th>
            <th scope="col" className="number">
              {words.over}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.kinds.join(' ')} className={row.short > 0 ? 'short' : undefined}>
              <th scope="row">
                {row.kinds.map((id) => (
                  <button
                    key={id}
                    type="button"
                    className="stock-kind"
                    aria-pressed={selected === id}
                    aria-label={words.select(id)}
                    onClick={() => app.select(selected === id ? null : { type: 'kind', id })}
                  >
                    <FillSwatch fill={fillOf(id)} /> {id}
                  </button>
                ))}
              </th>
              <td className="number">{row.need}</td>
              <td className="number">{row.counted ? row.good : words.none}</td>
              <td className="number">
                <Over row={row} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Repaired />
    </div>
  );
}

function Over({ row }: { row: StockRow }) {
  const words = useWords().places.stock;
  if (!row.counted) return <span className="quiet">{words.uncounted}</span>;
  return (
    <>
      {row.short > 0 ? (
        <strong className="accent">{words.short(row.short)}</strong>
      ) : row.left > 0 ? (
        row.left
      ) : (
        words.none
      )}
      {row.mended > 0 ? <span className="stock-note">{words.mended(row.mended)}</span> : null}
      {row.mendable > 0 ? <span className="stock-note">{words.mendable(row.mendable)}</span> : null}
    </>
  );
}

/** Whether panels to be mended count: part of the decision once there is one. */
function Repaired() {
  const words = useWords().places;
  const app = useApp();
  const engine = useEngine();
  const decided = useAppState((state) => projectOf(state).places?.repaired);
  const undecided = useDerived((derived) => derived.repaired);
  return (
    <label className="check screen-only">
      <input
        type="checkbox"
        checked={decided ?? undecided}
        onChange={({ target: { checked } }) => {
          if (decided === undefined) engine.setRepaired(checked);
          else
            app.change(
              ({ project }) => {
                if (project.places) project.places.repaired = checked;
                return undefined;
              },
              { label: words.changes.repaired },
            );
        }}
      />
      {words.stock.repaired}
    </label>
  );
}
