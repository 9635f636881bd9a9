// A text as a picture that a phone's camera reads: black on white in every scheme, with the white border
// that readers need.

import { generate } from 'lean-qr';
import { toSvgPath } from 'lean-qr/extras/svg';
import { useMemo } from 'react';

/** Modules of white around it (ISO/IEC 18004 asks for four). */
const BORDER = 4;

/** The picture. */
export function JoinPicture({ text, label }: { text: string; label: string }) {
  const { size, path } = useMemo(() => {
    const code = generate(text);
    return { size: code.size, path: toSvgPath(code) };
  }, [text]);
  const side = size + 2 * BORDER;
  return (
    <svg
      className="join-picture"
      viewBox={`${-BORDER} ${-BORDER} ${side} ${side}`}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
    >
      <rect x={-BORDER} y={-BORDER} width={side} height={side} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}
