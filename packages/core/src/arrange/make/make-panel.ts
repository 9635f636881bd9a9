// A panel to be made, or cut down from another: its true shape, how its edges are bevelled, and where the
// holes along them go. Metres and radians, seen from outside; side 0 lies along +x from 0, 0, and the
// others follow anticlockwise.
//
//        face            Two panels meet in the plane through their seam and the sphere's centre. The
//   ───────────┐         flange lies in that plane: it stands at the flange angle to the face, and an
//              │╲        edge that is sawn is tilted from square by what the angle lacks of 90°.
//              │ ╲  flange

import type { Kind } from '../../pile/kind.ts';
import { cyclicPolygon } from '../../sphere/cyclic.ts';
import { flangeAngles } from '../../sphere/flange.ts';
import { polygonOnSphere } from '../../sphere/polygon.ts';

/** A point on the panel, metres. */
export type PanelPoint = readonly [number, number];

/** One side of a panel to be made. */
export interface SideToMake {
  /** Hub to hub, metres. */
  readonly length: number;
  /** Along the line that sides were measured on, metres; null where nobody knows how far the hubs lie
   * beyond it. */
  readonly measured: number | null;
  /** Between the face and the flange, inside, radians: a right angle on a flat wall, less on a ball. */
  readonly flangeAngle: number;
  /** Tilt of a sawn edge from square, radians: the inner edge lies further in where it is above 0. */
  readonly bevel: number;
  /** Number of holes along it; null where nobody counted. */
  readonly holes: number | null;
  /** Ends of the hole line: as far from either hub as what is measured lacks. */
  readonly line: readonly [PanelPoint, PanelPoint];
  /** Middles of the holes on that line, evenly spaced, half a space from its ends: common practice, no
   * source. A good panel of the kind, where there is one, says better. */
  readonly holeAt: readonly PanelPoint[];
}

/** A panel to be made. */
export interface PanelToMake {
  /** Corners, hub to hub; side i runs from corner i to the next. */
  readonly corners: readonly PanelPoint[];
  /** Inside angle at each corner, radians. */
  readonly angles: readonly number[];
  readonly sides: readonly SideToMake[];
  /** Of the face, square metres. */
  readonly area: number;
}

/** What is known of how panels of a kind are made. */
export interface MakeOptions {
  /** Hub-to-hub length less the measured side, metres; null: unknown. */
  readonly allowance: number | null;
  /** Side → holes along it. */
  readonly holes?: readonly (number | null)[] | null;
}

/** The panel of a kind in a shell of that radius, its sides as fitted, hub to hub; null where they are no
 * panel on that sphere. */
export function panelToMake(
  { sides }: Pick<Kind, 'sides'>,
  radius: number,
  { allowance, holes }: MakeOptions,
): PanelToMake | null {
  const polygon = polygonOnSphere(sides, radius);
  const corners = cornersOf(sides);
  if (!polygon.ok || corners === null) return null;
  const { angles } = flangeAngles(polygon, radius);
  const made = sides.map((length, i): SideToMake => {
    const [from, to] = [corners[i], corners[(i + 1) % corners.length]] as [PanelPoint, PanelPoint];
    const inset = Math.max(0, allowance ?? 0) / 2;
    const along = (metres: number): PanelPoint => [
      from[0] + ((to[0] - from[0]) * metres) / length,
      from[1] + ((to[1] - from[1]) * metres) / length,
    ];
    const count = holes?.[i] ?? null;
    const space = (length - 2 * inset) / (count ?? 1);
    return {
      length,
      measured: allowance === null ? null : length - allowance,
      flangeAngle: angles[i] as number,
      bevel: Math.PI / 2 - (angles[i] as number),
      holes: count,
      line: [along(inset), along(length - inset)],
      holeAt: Array.from({ length: count ?? 0 }, (_, n) => along(inset + (n + 0.5) * space)),
    };
  });
  return { corners, angles: [...polygon.planeCorners], sides: made, area: polygon.area };
}

/** Corners of the panel with these sides; null for no panel. */
export function cornersOf(sides: readonly number[]): readonly PanelPoint[] | null {
  const polygon = cyclicPolygon(sides);
  if (!polygon.ok) return null;
  const { halfAngles } = polygon;
  let [x, y, heading] = [0, 0, 0];
  return sides.map((length, i) => {
    const corner: PanelPoint = [x, y];
    x += length * Math.cos(heading);
    y += length * Math.sin(heading);
    heading += (halfAngles[i] as number) + (halfAngles[(i + 1) % halfAngles.length] as number);
    return corner;
  });
}
