// Nets for trials that follow no rule with a name: the hubs of a triangular net are moved about on
// the sphere, all copies of a hub under the solid's rotations alike, so that kinds still come in
// runs of 60, 24 or 12 but reflections and straight rows are gone.

import type { Random } from '../math/random.ts';
import { add, cross, distance, normalize, pointAt, scale, type Vec3 } from '../math/vector.ts';
import type { Net } from './net.ts';
import { rotationsOf } from './rotations.ts';
import type { SolidName } from './solid.ts';
import { SAME_HUB } from './tolerances.ts';

/** How a net is moved. */
export interface Moving {
  /** The solid whose rotations bring the net onto itself. */
  readonly solid: SolidName;
  /** Farthest move of a hub, as a share of its shortest side; 0 … 0.3. */
  readonly fraction: number;
  readonly random: Random;
}

/**
 * The net with its hubs moved, evenly spread over a disc of `fraction` of each hub's shortest side;
 * hubs on a rotation axis stay. The same seed moves alike. Up to 0.2 every seam stayed folded
 * outward in trials on icosahedral nets from (3, 0) to (6, 0); at 0.3, 8 of 280 nets had one folded
 * in. Throws RangeError where the fraction is outside 0 … 0.3 (beyond, a place may turn over), a
 * place is no triangle (a polygon would not stay flat), or the solid's rotations don't bring the net
 * onto itself.
 */
export function movedNet(net: Net, { solid, fraction, random }: Moving): Net {
  if (!(fraction >= 0 && fraction <= 0.3))
    throw new RangeError(`the fraction is ${fraction}, expected 0 to 0.3`);
  if (net.places.some((place) => place.length !== 3))
    throw new RangeError('a place is no triangle; moved, it would not stay flat');
  const shortest = shortestSides(net);
  const turns = rotationsOf(solid);
  const hubs = new Float64Array(net.hubs.length);
  const done = new Uint8Array(shortest.length);
  for (let h = 0; h < shortest.length; h++) {
    if (done[h]) continue;
    const home = pointAt(net.hubs, h);
    const orbit = turns.map((turn) => hubNear(net.hubs, turn(home), solid));
    const fixed = orbit.filter((hub) => hub === h).length > 1;
    const moved = fixed ? home : nudged(home, fraction * (shortest[h] as number), random);
    orbit.forEach((hub, t) => {
      if (done[hub]) return;
      done[hub] = 1;
      hubs.set(fixed ? pointAt(net.hubs, hub) : (turns[t]?.(moved) as Vec3), 3 * hub);
    });
  }
  return { hubs, places: net.places };
}

function shortestSides({ hubs, places }: Net): Float64Array {
  const shortest = new Float64Array(hubs.length / 3).fill(Infinity);
  for (const place of places)
    place.forEach((hub, i) => {
      const next = place[(i + 1) % place.length] as number;
      const length = distance(pointAt(hubs, hub), pointAt(hubs, next));
      shortest[hub] = Math.min(shortest[hub] as number, length);
      shortest[next] = Math.min(shortest[next] as number, length);
    });
  return shortest;
}

function hubNear(hubs: Float64Array, point: Vec3, solid: SolidName): number {
  for (let h = 0; h < hubs.length / 3; h++)
    if (distance(pointAt(hubs, h), point) < SAME_HUB) return h;
  throw new RangeError(`the rotations of the ${solid} do not bring this net onto itself`);
}

/** A point of the unit sphere near `home`, spread evenly over a disc of this radius. */
function nudged(home: Vec3, radius: number, random: Random): Vec3 {
  const away: Vec3 = Math.abs(home[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const east = normalize(cross(away, home));
  const north = cross(home, east);
  const reach = radius * Math.sqrt(random.uniform());
  const bearing = 2 * Math.PI * random.uniform();
  const step = add(scale(east, Math.cos(bearing)), scale(north, Math.sin(bearing)));
  return normalize(add(home, scale(step, reach)));
}
