// Pages on their way to the printer: one page of drawing is one page of paper, of its own size.

import '../../styles/papers.css';
import type { Drawing } from '@shellraise/core';
import { createPortal } from 'react-dom';
import { SvgItems } from '../../drawing/svg-items.tsx';

/** The pages, printed in place of the app while they are there. */
export function PrintedPapers({ drawings }: { drawings: readonly Drawing[] }) {
  const sizes = new Map(drawings.map((one) => [nameOf(one), one] as const));
  return createPortal(
    <div className="printed-papers printed-alone print-only">
      <style>
        {[...sizes]
          .map(
            ([name, { width, height }]) =>
              `@page ${name} { size: ${width}mm ${height}mm; margin: 0; }`,
          )
          .join('\n')}
      </style>
      {drawings.map((drawing, i) => (
        <div
          // biome-ignore lint/suspicious/noArrayIndexKey: pages keep their order
          key={i}
          className="paper-sheet"
          style={{
            page: nameOf(drawing),
            width: `${drawing.width}mm`,
            // A hair less: rounded up it would need a second page.
            height: `${drawing.height - 0.2}mm`,
          }}
        >
          <svg
            viewBox={`0 0 ${drawing.width} ${drawing.height}`}
            style={{ width: `${drawing.width}mm`, height: `${drawing.height}mm` }}
            role="img"
            aria-label={drawing.title}
          >
            <SvgItems items={drawing.items} onPaper />
          </svg>
        </div>
      ))}
    </div>,
    document.body,
  );
}

/** A page's name to the style sheet, by its size. */
const nameOf = ({ width, height }: Drawing): string =>
  `paper-${Math.round(width * 10)}-${Math.round(height * 10)}`;
