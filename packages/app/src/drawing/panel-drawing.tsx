// The panel under the tape: its outline as far as it is known, the side that is asked for in the
// accent, which face is up (flanges hidden behind, or towards you) and which way round the sides
// run. Side 1 lies level underneath and begins at the dot; the others follow anticlockwise as the
// measurer sees the panel.

import { memo } from 'react';
import {
  clearance,
  inset,
  type Margin,
  middleOf,
  outlineOf,
  outlinePath,
  type Point,
  type Size,
  sideFrame,
  sidesOfOutline,
} from './panel-outline.ts';

/** What is drawn. */
export interface PanelDrawingProps {
  /** Sides as measured, metres; null where not yet. At least three. */
  readonly sides: readonly (number | null)[];
  readonly asked: number | null;
  readonly seenFrom: 'outside' | 'inside' | 'unknown';
  /** What stands beside each side. */
  readonly labels: readonly string[];
  /** In the middle: its kind. */
  readonly name: string;
  /** Read out instead of the drawing. */
  readonly title: string;
  /** Told where the sides do not meet. */
  readonly noShape: string;
  readonly size: Size;
}

/** A drawing narrower than this has the words beside a side in two lines. */
const NARROW = 300;
/** Mean width of a sign of the words, and their distance from the outline. */
const SIGN = 7.6;
const GAP = 14;

/** Room beside the outline: words begin at the middle of a slanting side, a quarter of the outline
 * in from its edge. */
function marginFor(lines: readonly (readonly string[])[], size: Size): Margin {
  const longest = SIGN * Math.max(2, ...lines.flat().map(({ length }) => length));
  const across = Math.max(20, 2 * (longest + GAP) - size.width / 2);
  const high = Math.max(1, ...lines.map(({ length }) => length));
  return { across, above: 14, below: 14 + 18 * high };
}

/** The panel as far as it is measured. */
export const PanelDrawing = memo(function PanelDrawing(props: PanelDrawingProps) {
  const { sides, asked, seenFrom, labels, name, title, noShape, size } = props;
  const lines = labels.map((label) => (size.width < NARROW ? label.split(' · ') : [label]));
  const { points, meets } = outlineOf(sides, size, marginFor(lines, size));
  const centre = middleOf(points);
  const room = clearance(points, centre);
  const drawn = sidesOfOutline(points).map((ends, i) => ({
    ends,
    id: i,
    state: i === asked ? 'asked' : sides[i] == null ? 'open' : 'known',
    lines: lines[i] ?? [],
  }));
  return (
    <svg
      className="panel-drawing"
      viewBox={`0 0 ${size.width} ${size.height}`}
      role="img"
      aria-label={title}
    >
      <path className="face" d={outlinePath(points)} />
      {seenFrom === 'unknown' ? null : (
        <path
          className={seenFrom === 'inside' ? 'flange up' : 'flange hidden'}
          d={outlinePath(inset(points, Math.min(9, room * 0.3)))}
        />
      )}
      <TurnArrow centre={centre} radius={Math.max(9, Math.min(27, room * 0.55))} />
      {name === '' ? null : (
        <text className="panel-name" x={centre[0]} y={centre[1] + 6} textAnchor="middle">
          {name}
        </text>
      )}
      {drawn.map(({ ends, id, state, lines: own }) => (
        <Side key={id} ends={ends} centre={centre} state={state} lines={own} />
      ))}
      {points.map(([x, y], i) => (
        <circle
          key={`${x} ${y}`}
          className={i === 0 ? 'corner first' : 'corner'}
          cx={x}
          cy={y}
          r={i === 0 ? 5 : 4}
        />
      ))}
      {meets ? null : (
        <text className="no-shape" x={size.width / 2} y={size.height - 4} textAnchor="middle">
          {noShape}
        </text>
      )}
    </svg>
  );
});

interface SideProps {
  readonly ends: readonly [Point, Point];
  readonly centre: Point;
  readonly state: string;
  readonly lines: readonly string[];
}

function Side({ ends, centre, state, lines }: SideProps) {
  const { along, middle, out } = sideFrame(ends, centre);
  const [[x1, y1], [x2, y2]] = ends;
  const anchor = out[0] > 0.25 ? 'start' : out[0] < -0.25 ? 'end' : 'middle';
  const gap = 9;
  const [x, y] = [middle[0] + out[0] * gap, middle[1] + out[1] * (gap + 3) + 5 + out[1] * 5];
  return (
    <g className={`panel-side ${state}`}>
      <path className="line" d={`M${x1} ${y1}L${x2} ${y2}`} />
      {state === 'asked' ? <path className="head" d={arrowHead(middle, along, 15)} /> : null}
      {lines.map((line, i) => (
        <text
          key={line}
          x={x}
          y={y + 18 * (i - (out[1] > 0.5 ? 0 : (lines.length - 1) / 2))}
          textAnchor={anchor}
        >
          {line}
        </text>
      ))}
    </g>
  );
}

/** An arrow head whose tip lies half its length beyond a point. */
function arrowHead([x, y]: Point, [ax, ay]: Point, size: number): string {
  const [nx, ny] = [-ay * size * 0.45, ax * size * 0.45];
  const tip = [x + (ax * size) / 2, y + (ay * size) / 2];
  const back = [x - (ax * size) / 2, y - (ay * size) / 2] as const;
  return `M${tip[0]} ${tip[1]}L${back[0] + nx} ${back[1] + ny}L${back[0] - nx} ${back[1] - ny}Z`;
}

/** Three quarters of a turn, anticlockwise. */
function TurnArrow({ centre: [x, y], radius: r }: { centre: Point; radius: number }) {
  const end = (40 * Math.PI) / 180;
  const [sx, sy] = [x - r * Math.cos(end), y + r * Math.sin(end)];
  const [ex, ey] = [x - r * Math.cos(-end), y + r * Math.sin(-end)];
  const tangent: Point = [-Math.sin(end), Math.cos(end)];
  return (
    <g className="turn-arrow">
      <path className="arc" d={`M${sx} ${sy}A${r} ${r} 0 1 0 ${ex} ${ey}`} />
      <path className="head" d={arrowHead([ex, ey], tangent, 9)} />
    </g>
  );
}
