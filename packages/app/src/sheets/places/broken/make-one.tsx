// The card of a panel to be made: true shape with its hole line, sides, corner angles, and how far each
// edge leans.

import type { PanelToMake } from '@shellraise/core';
import {
  middleOf,
  outlineOf,
  outlinePath,
  sideFrame,
  sidesOfOutline,
} from '../../../drawing/panel-outline.ts';
import type { MakeCard } from '../../../engine/broken.ts';
import { projectOf } from '../../../state/app-state.ts';
import { useAppState, useLengths } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';

const SIZE = { width: 320, height: 260 };
const MARGIN = { across: 66, above: 26, below: 30 };

/** The card, opened by a press; nothing where the sides are no panel. */
export function MakeOne({ card: { kind, panel } }: { card: MakeCard }) {
  const words = useWords().fitting.broken;
  const along = useAppState((state) => projectOf(state).pile.measuredAlong);
  if (!panel) return null;
  return (
    <details className="tags make-one">
      <summary>{words.card(kind)}</summary>
      <MakeDrawing kind={kind} panel={panel} />
      <MakeTable panel={panel} />
      <p className="quiet">{words.cardNote(words.along[along])}</p>
    </details>
  );
}

function MakeTable({ panel }: { panel: PanelToMake }) {
  const words = useWords().fitting.broken;
  const lengths = useLengths();
  const rows = panel.sides.map((side, i) => ({ ...side, i, angle: panel.angles[i] as number }));
  return (
    <table className="sides">
      <thead>
        <tr>
          <th scope="col">{words.columns.side}</th>
          <th scope="col">{words.columns.length}</th>
          <th scope="col">{words.columns.holes}</th>
          <th scope="col">{words.columns.angle}</th>
          <th scope="col">{words.columns.bevel}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ i, length, holes, angle, bevel }) => (
          <tr key={i}>
            <th scope="row">{i + 1}</th>
            <td>
              {lengths.side(length)} <span className="quiet">{lengths.echo(length)}</span>
            </td>
            <td>{holes ?? words.unknown}</td>
            <td>{degrees(angle)}</td>
            <td>{degrees(bevel)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const degrees = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(1)}°`;

function MakeDrawing({ kind, panel }: { kind: string; panel: PanelToMake }) {
  const words = useWords().fitting.broken;
  const lengths = useLengths();
  const { points } = outlineOf(
    panel.sides.map(({ length }) => length),
    SIZE,
    MARGIN,
  );
  const centre = middleOf(points);
  const sides = sidesOfOutline(points).map((ends, i) => ({
    i,
    ends,
    ...sideFrame(ends, centre),
    length: panel.sides[i]?.length ?? 0,
    holes: panel.sides[i]?.holes ?? 0,
  }));
  return (
    <svg
      className="make-drawing"
      viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
      role="img"
      aria-label={words.drawing(kind)}
    >
      <path className="cut-new" d={outlinePath(points)} />
      <text x={centre[0]} y={centre[1] + 9} textAnchor="middle" className="make-kind">
        {kind}
      </text>
      {sides.map(({ i, ends: [from, to], middle, out, length, holes }) => (
        <g key={i}>
          {Array.from({ length: holes }, (_, n) => (n + 0.5) / holes).map((share) => (
            <circle
              key={share}
              className="make-hole"
              r={2.6}
              cx={from[0] + share * (to[0] - from[0]) - 7 * out[0]}
              cy={from[1] + share * (to[1] - from[1]) - 7 * out[1]}
            />
          ))}
          <text
            x={middle[0] + 8 * out[0]}
            y={middle[1] + 14 * out[1] + 5}
            textAnchor={out[0] > 0.4 ? 'start' : out[0] < -0.4 ? 'end' : 'middle'}
          >
            {lengths.side(length)}
          </text>
        </g>
      ))}
    </svg>
  );
}
