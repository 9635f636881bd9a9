// A star of panels laid flat on the grass. On the sphere its corners go all the way round the hub; flat
// panels have smaller corners, so that the last seam gapes by what is left of a whole turn.
//
//        gap at the far end = 2 · seam · sin(left / 2),   left = 2π − Σ corners in the panels' planes
//
// Metres, radians.

import { TAU } from '../math/angle.ts';
import { cyclicPolygon } from '../sphere/cyclic.ts';

/** One panel of a star: its sides, and which of them (and which corner) starts at the hub. */
export interface StarPanel {
  readonly sides: readonly number[];
  readonly side: number;
}

/** The gap of a star and how it changes with its panels' sides. */
export interface StarGap {
  /** At the far end of the last seam, which is the side of the first panel that starts at the hub. */
  readonly gap: number;
  /** Panel → side → change of the gap, metres a metre. */
  readonly slopes: readonly (readonly number[])[];
}

/** Step of the differences, share of a side: they are right to 1e-8. */
const STEP = 1e-4;

/** The gap that panels leave that are laid flat, anticlockwise, each against the one before. `short`: how
 * far the seam ends before the hub at its far end. Null where a panel does not close, and where nothing
 * is left of the turn. */
export function starGap(panels: readonly StarPanel[], short = 0): StarGap | null {
  const corners = panels.map(({ sides, side }) => flatCorner(sides, side));
  const [first] = panels;
  if (!first || corners.some((corner) => corner === null)) return null;
  const left = TAU - corners.reduce((sum: number, corner) => sum + (corner as number), 0);
  const seam = (first.sides[first.side] as number) - short;
  if (!(left > 0)) return null;
  const byCorner = -seam * Math.cos(left / 2);
  const slopes = panels.map(({ sides, side }, p) =>
    sides.map((_, i) => {
      const own = byCorner * cornerSlope(sides, side, i);
      return p === 0 && i === side ? own + 2 * Math.sin(left / 2) : own;
    }),
  );
  return { gap: 2 * seam * Math.sin(left / 2), slopes };
}

/** The corner of a flat panel where a side starts; null where the sides do not meet. */
export function flatCorner(sides: readonly number[], side: number): number | null {
  const polygon = cyclicPolygon(sides);
  if (!polygon.ok) return null;
  const { halfAngles } = polygon;
  const before = halfAngles[(side + sides.length - 1) % sides.length] as number;
  return Math.PI - (halfAngles[side] as number) - before;
}

function cornerSlope(sides: readonly number[], side: number, by: number): number {
  const step = STEP * (sides[by] as number);
  const moved = (sign: number): number => {
    const other = sides.map((x, i) => (i === by ? x + sign * step : x));
    return flatCorner(other, side) ?? 0;
  };
  return (moved(1) - moved(-1)) / (2 * step);
}
