// The true shape of a flat panel from its sides: corners on one circle, as on any sphere. Metres,
// x right, y up, seen from outside: one side lies at the bottom and runs left to right, the others
// follow anticlockwise.

import type { Kind } from '../pile/kind.ts';
import { type CyclicPolygon, cyclicPolygon } from '../sphere/cyclic.ts';
import type { Point } from './drawing.ts';

/** A panel laid flat. */
export interface PanelShape {
  /** Corner i is where side i starts; corner 0 at 0, 0. */
  readonly corners: readonly Point[];
  /** Inside angle at each corner, radians. */
  readonly angles: readonly number[];
}

/** The panel with these sides, side `bottom` lying level underneath; null where they don't meet. */
export function panelShape(sides: readonly number[], bottom = 0): PanelShape | null {
  const polygon = cyclicPolygon(sides);
  if (!polygon.ok) return null;
  return { corners: walk(sides, polygon, bottom), angles: anglesOf(polygon) };
}

/** The side a triangle is drawn standing on: of a handed one the longest, on which its hand is told;
 * of one with two like sides the odd one, so that it stands upright. Other polygons stand on side 0. */
export function standingSide({ sides, hand }: Pick<Kind, 'sides' | 'hand'>): number {
  if (sides.length !== 3) return 0;
  const side = (i: number) => sides[i % 3] as number;
  const badness = (i: number) => (hand === null ? Math.abs(side(i + 1) - side(i + 2)) : -side(i));
  return sides.reduce((best, _, i) => (badness(i) < badness(best) ? i : best), 0);
}

/** The angle between two sides that follow each other on a circle: each half arc less than a right
 * angle makes up the rest. */
function anglesOf({ halfAngles }: CyclicPolygon): number[] {
  return halfAngles.map(
    (half, i) =>
      Math.PI - half - (halfAngles[(i + halfAngles.length - 1) % halfAngles.length] as number),
  );
}

function walk(sides: readonly number[], polygon: CyclicPolygon, bottom: number): Point[] {
  const turns = anglesOf(polygon).map((angle) => Math.PI - angle);
  const corners: Point[] = [];
  let [x, y] = [0, 0];
  let heading = -turns.slice(1, bottom + 1).reduce((sum, turn) => sum + turn, 0);
  sides.forEach((side, i) => {
    corners.push([x, y]);
    x += side * Math.cos(heading);
    y += side * Math.sin(heading);
    heading += turns[(i + 1) % sides.length] as number;
  });
  return corners;
}
