// A kind as a small panel of its true shape, filled as on every drawing. Millimetres of the drawing.

import { type Fill, type Kind, panelShape } from '@shellraise/core';
import { memo, useMemo } from 'react';
import { SvgItems } from '../../drawing/svg-items.tsx';

const [WIDE, HIGH, EDGE] = [6.4, 5.6, 0.4];

/** The swatch; the kind's id is read beside it. */
export const KindSwatch = memo(function KindSwatch({ kind, fill }: { kind: Kind; fill: Fill }) {
  const items = useMemo(() => {
    const longest = kind.sides.indexOf(Math.max(...kind.sides));
    const corners = panelShape(kind.sides, longest)?.corners ?? [];
    const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
    const [left, low] = [Math.min(...xs), Math.min(...ys)];
    const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - low];
    const k = Math.min((WIDE - 2 * EDGE) / width, (HIGH - 2 * EDGE) / height);
    const points = corners.map(
      ([x, y]) => [(WIDE - k * width) / 2 + k * (x - left), HIGH - EDGE - k * (y - low)] as const,
    );
    const stroke = { weight: 'light' } as const;
    return corners.length < 3
      ? []
      : [{ type: 'path', points, closed: true, stroke, fill } as const];
  }, [kind, fill]);
  return (
    <svg className="kind-swatch" viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true">
      <SvgItems items={items} />
    </svg>
  );
});
