// Snow on the panels of a shell: a code's pressure on plan at each panel's slope, as forces straight
// down.

import { acos } from '../../math/angle.ts';
import { add, norm, pointAt, type Vec3 } from '../../math/vector.ts';
import type { PanelFaces } from '../panels.ts';
import { mergeSources, type Provenance, type Sourced } from '../provenance.ts';
import type { PanelForces } from '../totals.ts';

/** Where a piece of the surface is: its slope from the level, radians (0 level, π/2 upright, more
 * overhanging), and its place in plan from the axis over the radius, along and across the drift. */
export interface SnowPoint {
  readonly slope: number;
  /** Towards the side that the wind blows the snow to, −1 … 1. */
  readonly downwind: number;
  /** Across that, −1 … 1. */
  readonly across: number;
}

/** A snow case: pressure on the level plan at each point, Pa. */
export interface SnowCase {
  readonly name: string;
  readonly pressure: (point: SnowPoint) => number;
  readonly sources: readonly Provenance[];
}

/** Forces of a snow case on panels, N, straight down: pressure on plan × plan area of the panel; an
 * overhanging panel bears none. `windFrom` is the wind that drifts it, radians from the datum. The
 * panels' pressure is told as 0: snow presses down, not inward.
 * Source: ASCE 7-16, 7.4 and EN 1991-1-3:2003, 5.2: snow acts on the plan area. */
export function snowForces(
  faces: PanelFaces,
  radius: number,
  places: ArrayLike<number>,
  snow: SnowCase,
  windFrom: number,
): Sourced<PanelForces> {
  const [c, s] = [Math.cos(windFrom), Math.sin(windFrom)];
  const force = new Float64Array(3 * places.length);
  for (let i = 0; i < places.length; i++) {
    const p = places[i] as number;
    const [ax, ay, az] = pointAt(faces.area, p);
    if (az <= 0) continue;
    const [x, y] = pointAt(faces.centre, p);
    force[3 * i + 2] =
      -az *
      snow.pressure({
        slope: acos(az / Math.hypot(ax, ay, az)),
        downwind: -(x * c + y * s) / radius,
        across: (y * c - x * s) / radius,
      });
  }
  const loads = {
    places: Int32Array.from(places),
    pressure: new Float64Array(places.length),
    force,
  };
  return { value: loads, sources: mergeSources(snow.sources) };
}

/** Plan area of panels that snow can lie on, m²: overhanging ones count nothing.
 * Source: geometry. */
export function planArea(faces: PanelFaces, places: ArrayLike<number>): number {
  let sum: Vec3 = [0, 0, 0];
  for (let i = 0; i < places.length; i++)
    sum = add(sum, [0, 0, Math.max(0, faces.area[3 * (places[i] as number) + 2] as number)]);
  return norm(sum);
}
