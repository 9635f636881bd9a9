// The joint picture of a place: its panel the way it goes in, with what lies along each side.

import { jointPicture, kindFills, type PlaceId } from '@shellraise/core';
import { useMemo } from 'react';
import { SvgItems } from '../../drawing/svg-items.tsx';
import { useAppState, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import type { Stood } from './stood.ts';

/** The picture, drawn for the face that people see. */
export function Joint({ stood: { standing, kinds }, place }: { stood: Stood; place: number }) {
  const words = useWords().places.details;
  const { system } = useLengths();
  const fromInside = useAppState((state) => state.settings.fromBelow);
  const { shell } = standing.standing;
  const fills = useMemo(() => kindFills(kinds), [kinds]);
  const { items, box } = useMemo(
    () =>
      jointPicture({
        shell,
        place: place as PlaceId,
        numbers: standing.numbers,
        kinds,
        fills,
        lengths: system,
        fromInside,
      }),
    [shell, place, standing, kinds, fills, system, fromInside],
  );
  return (
    <svg
      className="joint"
      viewBox={`${box.x} ${box.y} ${box.width} ${box.height}`}
      role="img"
      aria-label={words.joint(standing.numbers[place] ?? '')}
    >
      <SvgItems items={items} />
    </svg>
  );
}
