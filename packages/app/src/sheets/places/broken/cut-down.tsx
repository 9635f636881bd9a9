// Surplus panels that the one wanted could be cut from: the old outline thin, the new one heavy, the
// flange that is kept in the accent.

import type { ShownCut } from '../../../engine/broken.ts';
import { useLengths } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';

/** The cards; nothing where none would do. */
export function CutDownCards({ cuts, kind }: { cuts: readonly ShownCut[]; kind: string }) {
  const words = useWords().fitting.broken;
  const lengths = useLengths();
  if (cuts.length === 0) return <p>{words.noCut(kind)}</p>;
  return (
    <details className="tags cut-down">
      <summary>{words.cuts(kind, cuts.length)}</summary>
      <p className="quiet">{words.cutNote}</p>
      <ul className="cut-cards">
        {cuts.map((cut) => (
          <li key={cut.kind}>
            <CutDrawing cut={cut} />
            <p>
              <strong>{words.cutFrom(cut.kind, cut.spare)}</strong>
            </p>
            <p>
              {words.cutHow(
                cut.trim.keptSide + 1,
                cut.trim.becomes + 1,
                lengths.side(cut.trim.from),
                lengths.side(cut.trim.margin),
              )}
            </p>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Room around the outline, metres. */
const ROOM = 0.04;

function CutDrawing({ cut: { outer, trim, kind } }: { cut: ShownCut }) {
  const words = useWords().fitting.broken;
  const xs = outer.map(([x]) => x);
  const ys = outer.map(([, y]) => y);
  const [left, low] = [Math.min(...xs) - ROOM, Math.min(...ys) - ROOM];
  const [width, height] = [Math.max(...xs) + ROOM - left, Math.max(...ys) + ROOM - low];
  const at = ([x, y]: readonly [number, number]): string =>
    `${(x - left).toFixed(4)} ${(low + height - y).toFixed(4)}`;
  const path = (corners: ShownCut['outer']): string => `M${corners.map(at).join('L')}Z`;
  const [start, end] = [trim.corners[0], trim.corners[1]];
  return (
    <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words.cutDrawing(kind)}>
      <path className="cut-old" d={path(outer)} />
      <path className="cut-new" d={path(trim.corners)} />
      {start && end ? <path className="cut-kept" d={`M${at(start)}L${at(end)}`} /> : null}
    </svg>
  );
}
