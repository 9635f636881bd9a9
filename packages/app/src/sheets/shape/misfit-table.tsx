// Every side of every kind, measured and as the closed net has it, with its misfit as a stroke.

import { type Fill, type Kind, kindFills, kindsOfShape, type Shape } from '@shellraise/core';
import { useMemo } from 'react';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';
import type { Lengths } from '../../ui/lengths.ts';
import { useWords } from '../../words/words.ts';
import { KindSwatch } from './kind-swatch.tsx';
import { type KindMisfit, largestMisfit, misfitsOf, type SideMisfit } from './misfits.ts';

/** The table. */
export function MisfitTable({ shape, kinds }: { shape: Shape; kinds: readonly Kind[] }) {
  const words = useWords().shape.misfits;
  const lengths = useLengths();
  const rows = useMemo(() => misfitsOf(shape, kinds), [shape, kinds]);
  const fills = useMemo(() => kindFills(kindsOfShape(shape, kinds)), [shape, kinds]);
  const most = Math.max(largestMisfit(rows), LEAST_SCALE);
  const unit = lengths.bare;
  return (
    <table className="misfits">
      <caption>
        {words.heading} <span className="quiet">· {words.note}</span>
      </caption>
      <thead>
        <tr>
          <th scope="col">{words.kind}</th>
          <th scope="col" className="number">
            {words.places}
          </th>
          <th scope="col" className="number">
            {words.good}
          </th>
          <th scope="col" className="number">
            {words.side}
          </th>
          <th scope="col" className="number">
            {words.measured(unit)}
          </th>
          <th scope="col" className="number wide-only">
            {words.fitted(unit)}
          </th>
          <th scope="col" className="number">
            {words.off(unit)}
          </th>
        </tr>
      </thead>
      {rows.map((row) => (
        <KindRows
          key={row.kind.id}
          row={row}
          of={row.added?.of == null ? null : (kinds[row.added.of]?.id ?? null)}
          fill={fills[row.index] as Fill}
          most={most}
        />
      ))}
    </table>
  );
}

/** Misfits are drawn on a scale of half a millimetre at least. */
const LEAST_SCALE = 0.0005;

function KindRows({
  row,
  of,
  fill,
  most,
}: {
  row: KindMisfit;
  /** Id of the kind that it is the other hand of. */
  of: string | null;
  fill: Fill;
  most: number;
}) {
  const { misfits: words } = useWords().shape;
  const { rowWanted, rowOtherHand } = useWords().hard;
  const lengths = useLengths();
  const app = useApp();
  const { kind, places, sides, added } = row;
  const selected = useAppState(
    ({ selection }) => selection?.type === 'kind' && selection.id === kind.id,
  );
  return (
    <tbody className={selected ? 'selected' : undefined}>
      {sides.map((side, i) => (
        <tr key={side.side}>
          {i === 0 ? (
            <>
              <th scope="rowgroup" rowSpan={sides.length}>
                <button
                  type="button"
                  className="shape-kind"
                  aria-pressed={selected}
                  onClick={() => app.select(selected ? null : { type: 'kind', id: kind.id })}
                >
                  <KindSwatch kind={kind} fill={fill} /> {kind.id}
                </button>
                {added ? (
                  <span className="quiet row-note">
                    {of === null ? rowWanted : rowOtherHand(of)}
                  </span>
                ) : null}
              </th>
              <td className="number" rowSpan={sides.length}>
                {places}
              </td>
              <td className="number" rowSpan={sides.length}>
                {kind.counted ? kind.good : '–'}
              </td>
            </>
          ) : null}
          <td className="number">{side.side + 1}</td>
          <td className="number">{side.measured === null ? '–' : bare(side.measured, lengths)}</td>
          <td className="number wide-only">
            {side.fitted === null ? '–' : bare(side.fitted, lengths)}
          </td>
          <td className={side.suspect ? 'number off accent' : 'number off'}>
            {side.off === null ? '–' : signed(lengths.off(side.off))}
            <Stroke side={side} most={most} />
            {side.suspect ? <span className="read-out">{words.suspect}</span> : null}
          </td>
        </tr>
      ))}
    </tbody>
  );
}

/** The misfit as a stroke from the middle: right where the side reads too long. */
function Stroke({ side, most }: { side: SideMisfit; most: number }) {
  const reach = (26 * (side.off ?? 0)) / most;
  return (
    <svg className="stroke" viewBox="-28 0 56 12" aria-hidden="true">
      <path d="M0 0V12" stroke="var(--grey)" strokeWidth="1" />
      <path
        d={`M0 6H${reach.toFixed(1)}`}
        stroke={side.suspect ? 'var(--accent)' : 'var(--ink)'}
        strokeWidth="4"
      />
    </svg>
  );
}

/** A side without its unit: to the tenth of a millimetre, or to the sixteenth of an inch. */
const bare = (metres: number, lengths: Lengths): string =>
  withoutUnit(lengths.system === 'metric' ? lengths.small(metres) : lengths.side(metres));

/** A misfit without its unit; nought has no sign. */
const signed = (text: string): string => withoutUnit(text).replace(/^[+−](0\.0+)$/, '$1');

const withoutUnit = (text: string): string => text.replace(/ (mm|in)$/, '').replace(/"$/, '');
