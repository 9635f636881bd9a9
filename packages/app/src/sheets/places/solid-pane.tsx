// The same shell in 3D; loaded when it is first shown.

import { lazy, Suspense, useCallback, useMemo } from 'react';
import type { Bearing } from '../../drawing/shell-view/shell-view.tsx';
import { useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import type { Coloured } from './colouring.ts';
import { type Stood, usePicked } from './stood.ts';

const ShellView = lazy(async () => ({
  default: (await import('../../drawing/shell-view/shell-view.tsx')).ShellView,
}));

/** The 3D view of a standing shell, with the page's selection. */
export function SolidPane({ stood, coloured }: { stood: Stood; coloured: Coloured }) {
  const words = useWords().places;
  const inside = useAppState((state) => state.settings.fromBelow);
  const { picked, kind, pick } = usePicked(stood);
  const { shell } = stood.standing.standing;
  const leftOut = useMemo(() => new Set(stood.standing.leftOut), [stood]);
  const bearings = useMemo(
    (): Bearing[] => [{ label: words.plan.datum, azimuth: 0, main: true }],
    [words],
  );
  const onPick = useCallback(
    (place: number | null) => pick(place === null ? null : { type: 'place', place }),
    [pick],
  );
  const index = stood.kinds.findIndex(({ id }) => id === kind);
  const heading = words.view.solidHeading[inside ? 'inside' : 'outside'];
  return (
    <section className="solid-pane" aria-label={heading}>
      <h2>{heading}</h2>
      <Suspense fallback={null}>
        <ShellView
          shell={shell}
          placeFills={coloured.fills}
          leftOut={leftOut}
          selected={picked?.type === 'place' ? picked.place : null}
          kind={index < 0 ? null : index}
          onPick={onPick}
          fromInside={inside}
          bearings={bearings}
          label={words.view.solidLabel(stood.standing.numbers.length)}
        />
      </Suspense>
    </section>
  );
}
