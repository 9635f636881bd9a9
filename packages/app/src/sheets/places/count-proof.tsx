// The proof of count beside the plan: panels, seams, hubs and bolts, each by a formula with its numbers put
// in and by adding up a list, so that anybody can check it with a pencil.

import type { ProofRow } from '@shellraise/core';
import { useWords } from '../../words/words.ts';

/** The proof. */
export function CountProof({ rows }: { rows: readonly ProofRow[] }) {
  const words = useWords().places.proof;
  return (
    <details className="tags count-proof">
      <summary>{words.heading}</summary>
      <p className="quiet">{words.note}</p>
      {rows.map((row) => (
        <OneCount key={row.what} row={row} />
      ))}
    </details>
  );
}

function OneCount({
  row: { what, list, formula, byFormula, byList, agrees, why },
}: {
  row: ProofRow;
}) {
  const words = useWords().places.proof;
  return (
    <section aria-label={words.what[what]}>
      <h4>
        {byList} {words.what[what]}
      </h4>
      <p>
        {byFormula === null ? words.noFormula(why) : `${formula} = ${byFormula}`}{' '}
        {agrees === null ? null : agrees ? (
          <strong>{words.agrees}</strong>
        ) : (
          <strong className="accent">{words.not}</strong>
        )}
      </p>
      <ul className="proof-list">
        {list.map(({ of, count }) => (
          <li key={of}>
            {of} <span className="number">{count}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
