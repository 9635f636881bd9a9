// A small panel filled as its kind is on every drawing.

import type { Fill } from '@shellraise/core';
import { memo } from 'react';
import { screenColour } from '../../drawing/svg-items.tsx';

const OUTLINE = 'M0.6 5.2L3.5 0.6L6.4 5.2Z';

/** The swatch; read with the kind's number beside it. Its box is in millimetres of the drawing. */
export const Swatch = memo(function Swatch({ fill }: { fill: Fill }) {
  return (
    <svg className="swatch" viewBox="0 0 7 5.8" aria-hidden="true" focusable="false">
      <path d={OUTLINE} fill={fill.tint === null ? 'none' : screenColour(fill.tint)} />
      <path
        d={OUTLINE}
        fill={fill.hatch === null ? 'none' : `url(#hatch-${fill.hatch})`}
        stroke="var(--ink)"
        strokeWidth="0.3"
        strokeLinejoin="round"
      />
    </svg>
  );
});
