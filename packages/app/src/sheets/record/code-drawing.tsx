// A text as a picture that a phone's camera reads: black on white in every scheme, with the white border
// that readers need.

import { useMemo } from 'react';
import { codePicture } from '../../record/code-picture.ts';

/** The picture. */
export function CodeDrawing({ text, label }: { text: string; label: string }) {
  const { size, path } = useMemo(() => codePicture(text), [text]);
  return (
    <svg
      className="code-drawing"
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}
