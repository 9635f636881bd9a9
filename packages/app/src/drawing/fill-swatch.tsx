// A sample of a fill, as a small panel.

import type { Fill } from '@shellraise/core';
import { memo } from 'react';
import { screenColour } from './svg-items.tsx';

/** The sample; what it means stands beside it. */
export const FillSwatch = memo(function FillSwatch({ fill }: { fill: Fill | undefined }) {
  const d = 'M0.4 5.6L4 0.4L7.6 5.6Z';
  return (
    <svg className="fill-swatch" viewBox="0 0 8 6" aria-hidden="true">
      <path d={d} fill={fill?.tint ? screenColour(fill.tint) : 'var(--paper)'} />
      <path
        d={d}
        fill={fill?.hatch ? `url(#hatch-${fill.hatch})` : 'none'}
        stroke="var(--ink)"
        strokeWidth="0.3"
        strokeLinejoin="round"
      />
    </svg>
  );
});
