// The true shape of a flat panel from its sides: corners on one circle, as on any sphere. Metres,
// x right, y up, seen from outside: side 0 lies at the bottom and runs left to right, the others
// follow anticlockwise.

import { type CyclicPolygon, cyclicPolygon } from '../sphere/cyclic.ts';
import type { Point } from './drawing.ts';

/** A panel laid flat. */
export interface PanelShape {
  /** Corner i is where side i starts; corner 0 at 0, 0. */
  readonly corners: readonly Point[];
  /** Inside angle at each corner, radians. */
  readonly angles: readonly number[];
}

/** The panel with these sides, or null where they don't meet. */
export function panelShape(sides: readonly number[]): PanelShape | null {
  const polygon = cyclicPolygon(sides);
  if (!polygon.ok) return null;
  return { corners: walk(sides, polygon), angles: anglesOf(polygon) };
}

/** The angle between two sides that follow each other on a circle: each half arc less than a right
 * angle makes up the rest. */
function anglesOf({ halfAngles }: CyclicPolygon): number[] {
  return halfAngles.map(
    (half, i) =>
      Math.PI - half - (halfAngles[(i + halfAngles.length - 1) % halfAngles.length] as number),
  );
}

function walk(sides: readonly number[], polygon: CyclicPolygon): Point[] {
  const turns = anglesOf(polygon).map((angle) => Math.PI - angle);
  const corners: Point[] = [];
  let [x, y, heading] = [0, 0, 0];
  sides.forEach((side, i) => {
    corners.push([x, y]);
    x += side * Math.cos(heading);
    y += side * Math.sin(heading);
    heading += turns[(i + 1) % sides.length] as number;
  });
  return corners;
}
