// The kinds under a drawing, with how many there are.

import type { Fill, Kind } from '@shellraise/core';
import { useApp, useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { KindSwatch } from './kind-swatch.tsx';

/** The kinds of a net with their places; pressing one shows it up. */
export function KindLegend({
  kinds,
  fills,
  counts,
}: {
  kinds: readonly Kind[];
  fills: readonly Fill[];
  counts: readonly number[];
}) {
  const words = useWords().shape;
  const app = useApp();
  const selected = useAppState(({ selection }) =>
    selection?.type === 'kind' ? selection.id : null,
  );
  return (
    <ul className="kind-legend" aria-label={words.drawn.legend}>
      {kinds.map((kind, k) => (
        <li key={kind.id}>
          <button
            type="button"
            aria-pressed={kind.id === selected}
            onClick={() => app.select(kind.id === selected ? null : { type: 'kind', id: kind.id })}
          >
            <KindSwatch kind={kind} fill={fills[k] as Fill} />
            <span>{kind.id}</span>
            <span className="quiet">{counts[k]}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

/** The kinds of a pile with their good panels. */
export function KindList({ kinds, fills }: { kinds: readonly Kind[]; fills: readonly Fill[] }) {
  const words = useWords().shape;
  return (
    <ul className="kind-legend" aria-label={words.drawn.legend}>
      {kinds.map((kind, k) => (
        <li key={kind.id} className="legend-line">
          <KindSwatch kind={kind} fill={fills[k] as Fill} /> <strong>{kind.id}</strong>{' '}
          <span className="quiet">{kind.counted ? kind.good : ''}</span>
        </li>
      ))}
    </ul>
  );
}
