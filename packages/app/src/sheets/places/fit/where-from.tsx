// Where the panels of a fit come from where good ones do not do, kind by kind, with the reason for each
// place; and the infill below a ragged base ring.

import type { Kind } from '@shellraise/core';
import type { LackingKind, ShownFit } from '../../../engine/best-fits.ts';
import { useLengths } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';

/** The account of one fit, opened by a press. */
export function WhereFrom({
  fit,
  number,
  kinds,
}: {
  fit: ShownFit;
  number: number;
  kinds: readonly Kind[];
}) {
  const words = useWords().fitting;
  const lengths = useLengths();
  const { lacking, infill, door, joined } = fit;
  if (lacking.length + infill.length + door.length + joined.length === 0) return null;
  const panels = infill.reduce((sum, one) => sum + one.count, 0);
  return (
    <details className="tags fit-why">
      <summary aria-label={words.whyOf(number)}>{words.why}</summary>
      {lacking.map((row) => (
        <LackingLines key={row.kind} row={row} kinds={kinds} />
      ))}
      {door.length > 0 ? <p>{words.doorAt(door)}</p> : null}
      {joined.map(({ kinds: own, places }) => (
        <p key={places.join()}>{words.joinedAt(own, places)}</p>
      ))}
      {infill.length === 0 ? null : (
        <>
          <p>{words.infill(panels)}</p>
          <ul className="notes">
            {infill.map(({ sides, count }) => (
              <li key={sides.join()}>
                {words.infillLine(count, sides.map((side) => lengths.side(side)).join(', '))}
              </li>
            ))}
          </ul>
        </>
      )}
    </details>
  );
}

function LackingLines({ row, kinds }: { row: LackingKind; kinds: readonly Kind[] }) {
  const words = useWords().fitting;
  const good = kinds.find(({ id }) => id === row.kind)?.good ?? 0;
  return (
    <>
      <p>
        <strong>{words.kindLine(row.kind, row.places, good)}</strong>
      </p>
      {row.mended.length > 0 ? <p>{words.mendedAt(row.mended)}</p> : null}
      {row.bought.length > 0 ? <p>{words.boughtAt(row.bought)}</p> : null}
      {row.open.length > 0 ? <p>{words.openAt(row.open)}</p> : null}
    </>
  );
}
