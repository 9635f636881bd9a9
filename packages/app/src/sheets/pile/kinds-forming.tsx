// The kinds of the pile as they form, with their sides as measured, so that they compare with the
// tape.

import { type Kind, kindFills, type Pile } from '@shellraise/core';
import { memo, useMemo } from 'react';
import { FillSwatch } from '../../drawing/fill-swatch.tsx';
import { useApp, useAppState, useDerived, useEngine, useLengths } from '../../ui/app-context.tsx';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { useWords } from '../../words/words.ts';
import type { Worked } from './worked.ts';

/** Kinds as they form. */
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
      {kinds.length > 0 && kinds.every(({ counted }) => !counted) ? (
        <p className="quiet">{words.noneCounted}</p>
      ) : null}
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
  const anyCounted = kinds.some(({ counted }) => counted);
  return (
    <table className="kinds-forming">
      <thead>
        <tr>
          <th scope="col">{words.columns.kind}</th>
          <th scope="col" colSpan={most}>
            {words.sides[pile?.measuredAlong ?? 'holes'](words.units[lengths.system])}
          </th>
          {anyCounted ? (
            <>
              <th scope="col" className="number">
                {words.columns.good}
              </th>
              <th scope="col" className="number">
                {words.columns.repair}
              </th>
              <th scope="col" className="number">
                {words.columns.scrap}
              </th>
            </>
          ) : null}
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
            ) : anyCounted ? (
              <td colSpan={3}>{words.notCounted}</td>
            ) : null}
          </tr>
        ))}
      </tbody>
      {anyCounted ? (
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
      ) : null}
    </table>
  );
}

/** Millimetres without their unit, which the head of the column names. */
const bare = (length: string): string => length.replace(/ mm$/, '');

const sideCells = ({ sides }: Kind, most: number) =>
  Array.from({ length: most }, (_, i) => ({ id: `side ${i}`, metres: sides[i] ?? null }));
