// Left and right hand side by side: a panel stands on its longest side with its outside towards the
// reader, and its shortest side, drawn heavy, lies on the left or on the right.

import { memo } from 'react';
import { middleOf, outlineOf, outlinePath, sideFrame, sidesOfOutline } from './panel-outline.ts';

const SIZE = { width: 150, height: 92 } as const;
const MARGIN = { across: 14, above: 6, below: 8 } as const;

/** One hand of the picture. `sides` anticlockwise seen from outside; the longest is stood on. */
export const HandDrawing = memo(function HandDrawing({
  sides,
  name,
  title,
  chosen,
}: {
  sides: readonly number[];
  name: string;
  title: string;
  chosen: boolean;
}) {
  const longest = sides.indexOf(Math.max(...sides));
  const shortest = sides.indexOf(Math.min(...sides));
  const { points } = outlineOf(sides, SIZE, MARGIN, longest);
  const centre = middleOf(points);
  const drawn = sidesOfOutline(points).map((ends, id) => ({ ends, id }));
  return (
    <svg
      className={chosen ? 'hand-drawing chosen' : 'hand-drawing'}
      viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
      role="img"
      aria-label={title}
    >
      <path className="face" d={outlinePath(points)} />
      {drawn.map(({ ends, id }) => {
        const [[x1, y1], [x2, y2]] = ends;
        const { out } = sideFrame(ends, centre);
        const state = id === shortest ? 'short' : id === longest ? 'long' : 'middle';
        return (
          <path
            key={id}
            className={`hand-line ${state}`}
            d={`M${x1} ${y1}L${x2} ${y2}`}
            data-out={out[0] > 0 ? 'right' : 'left'}
          />
        );
      })}
      <text className="hand-name" x={centre[0]} y={centre[1] + 7} textAnchor="middle">
        {name}
      </text>
    </svg>
  );
});

/** A stretched likeness of a panel with a hand, so that the eye sees which side is short: its sides
 * keep their order and the picture says nothing about their lengths. */
export function likeness(sides: readonly number[]): readonly number[] {
  const order = [...sides.keys()].sort((a, b) => (sides[a] as number) - (sides[b] as number));
  const lengths = [0.72, 0.95, 1.15];
  return sides.map((_, i) => lengths[order.indexOf(i)] as number);
}
