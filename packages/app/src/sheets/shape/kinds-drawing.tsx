// The kinds of the pile to one scale, side by side: what there is before anything closed.
// Millimetres of the drawing.

import { type Fill, type Item, type Kind, panelShape } from '@shellraise/core';
import { useMemo } from 'react';
import { SvgItems } from '../../drawing/svg-items.tsx';
import { rowsFor } from './kinds-rows.ts';

/** The drawing. */
export function KindsDrawing({
  kinds,
  fills,
  label,
}: {
  kinds: readonly Kind[];
  fills: readonly Fill[];
  label: string;
}) {
  const drawing = useMemo(() => drawn(kinds, fills), [kinds, fills]);
  return (
    <svg
      className="kinds-drawing"
      viewBox={`0 0 ${drawing.width} ${drawing.height}`}
      role="img"
      aria-label={label}
    >
      <SvgItems items={drawing.items} />
    </svg>
  );
}

const CELL = 34;

function drawn(kinds: readonly Kind[], fills: readonly Fill[]) {
  const { across, down } = rowsFor(kinds.length);
  const shapes = kinds.map(({ sides }) => {
    const corners = panelShape(sides, sides.indexOf(Math.max(...sides)))?.corners ?? [];
    const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
    const [left, low] = [Math.min(...xs), Math.min(...ys)];
    return { corners, left, low, width: Math.max(...xs) - left, height: Math.max(...ys) - low };
  });
  const size = Math.min(9, Math.max(5, 1.75 * across));
  const widest = Math.max(0.01, ...shapes.map(({ width, height }) => Math.max(width, height)));
  const k = (CELL - 8) / widest;
  const items = shapes.flatMap(({ corners, left, low, width, height }, i): Item[] => {
    if (corners.length < 3) return [];
    const kind = kinds[i] as Kind;
    const x0 = (i % across) * CELL + (CELL - k * width) / 2;
    const y0 = Math.floor(i / across) * CELL + (CELL + k * height) / 2;
    const points = corners.map(([x, y]) => [x0 + k * (x - left), y0 - k * (y - low)] as const);
    const cx = points.reduce((sum, [x]) => sum + x, 0) / points.length;
    const cy = points.reduce((sum, [, y]) => sum + y, 0) / points.length;
    return [
      {
        type: 'path',
        points,
        closed: true,
        stroke: { weight: 'medium' },
        fill: fills[i] ?? null,
      },
      {
        type: 'text',
        at: [cx, cy],
        text: kind.id,
        size,
        bold: true,
        anchor: 'middle',
        halo: 0.9,
      },
    ];
  });
  return { items, width: across * CELL, height: down * CELL };
}
