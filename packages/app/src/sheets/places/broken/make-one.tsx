// The card of a panel to be made: true shape, sides, corner angles, how far each edge leans, and how far
// inside it the holes lie.

import {
  middleOf,
  outlineOf,
  outlinePath,
  sideFrame,
  sidesOfOutline,
} from '../../../drawing/panel-outline.ts';
import type { MakeCard } from '../../../engine/stock.ts';
import { projectOf } from '../../../state/app-state.ts';
import { useAppState, useLengths } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';

const SIZE = { width: 320, height: 260 };
const MARGIN = { across: 62, above: 34, below: 34 };

/** The card, opened by a press. */
export function MakeOne({ card }: { card: MakeCard }) {
  const words = useWords().fitting.broken;
  const lengths = useLengths();
  const along = useAppState((state) => projectOf(state).pile.measuredAlong);
  return (
    <details className="tags make-one">
      <summary>{words.card(card.kind)}</summary>
      <MakeDrawing card={card} />
      <table className="sides">
        <thead>
          <tr>
            <th scope="col">{words.columns.side}</th>
            <th scope="col">{words.columns.length}</th>
            <th scope="col">{words.columns.angle}</th>
            <th scope="col">{words.columns.bevel}</th>
          </tr>
        </thead>
        <tbody>
          {card.sides.map((side, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a side is named by its index
            <tr key={i}>
              <th scope="row">{i + 1}</th>
              <td>
                {lengths.side(side)} <span className="quiet">{lengths.echo(side)}</span>
              </td>
              <td>{card.angles[i] === undefined ? '–' : degrees(card.angles[i])}</td>
              <td>{bevelText(card.bevels[i] ?? null, words.atRim)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">{words.cardNote(words.along[along])}</p>
    </details>
  );
}

const degrees = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(1)}°`;

const bevelText = (bevel: number | null, atRim: string): string =>
  bevel === null ? atRim : degrees(bevel);

function MakeDrawing({ card }: { card: MakeCard }) {
  const words = useWords().fitting.broken;
  const lengths = useLengths();
  const { points } = outlineOf(card.sides, SIZE, MARGIN);
  const centre = middleOf(points);
  return (
    <svg
      className="make-drawing"
      viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
      role="img"
      aria-label={words.drawing(card.kind)}
    >
      <path className="cut-new" d={outlinePath(points)} />
      <text x={centre[0]} y={centre[1]} textAnchor="middle" className="make-kind">
        {card.kind}
      </text>
      {sidesOfOutline(points).map((ends, i) => {
        const { middle, out } = sideFrame(ends, centre);
        const anchor = out[0] > 0.4 ? 'start' : out[0] < -0.4 ? 'end' : 'middle';
        return (
          <text
            // biome-ignore lint/suspicious/noArrayIndexKey: a side is named by its index
            key={i}
            x={middle[0] + 8 * out[0]}
            y={middle[1] + 14 * out[1] + 5}
            textAnchor={anchor}
          >
            {lengths.side(card.sides[i] as number)}
          </text>
        );
      })}
    </svg>
  );
}
