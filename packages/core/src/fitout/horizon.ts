// The horizon as a dish sees it: for every azimuth the lowest elevation at which its whole opening looks
// clear over the ring and the ground, and how high the door stands in the way.

import { assertBetween } from '../loads/doors.ts';
import { hubPoint } from '../shell/geometry.ts';
import type { HubId } from '../shell/ids.ts';
import { baseRing } from '../shell/rims.ts';
import type { Shell } from '../shell/shell.ts';
import { type Dish, dishDepth, type Mount, pivotOf } from './dish.ts';

/** What stands at the horizon. */
export interface HorizonQuestion {
  readonly shell: Shell;
  readonly dish: Dish;
  readonly mount: Mount;
  readonly floor: number;
  /** How far the ring, with what it stands on, reaches above the base ring's hubs, metres. */
  readonly ringHeight: number;
  /** The door's frame, where it stops the wave: azimuth of its middle, width, height above the floor. */
  readonly door: {
    readonly azimuth: number;
    readonly width: number;
    readonly height: number;
  } | null;
  /** Height of the ground around above the base ring as an elevation by azimuth in even steps from the
   * datum, radians (hills, trees); empty: level. */
  readonly skyline: readonly number[];
  /** Azimuths asked for; 72 unless told. */
  readonly count?: number;
}

/** One azimuth of the mask. */
export interface HorizonPoint {
  readonly azimuth: number;
  /** Lowest elevation at which the whole opening is clear, radians; the ring's, or the skyline's where
   * that is higher. */
  readonly elevation: number;
  readonly by: 'ring' | 'door' | 'skyline';
}

/** The mask, by azimuth from the datum anticlockwise; empty where the shell has no base ring. */
export function horizonMask(question: HorizonQuestion): HorizonPoint[] {
  const { shell, skyline, count = 72, ringHeight } = question;
  assertBetween('ring height', ringHeight, 0, 5, 'm');
  if (!(Number.isInteger(count) && count >= 4 && count <= 3600))
    throw new RangeError(`azimuths are ${count}, expected a whole number of 4 to 3600`);
  const ring = baseRing(shell)?.hubs.map((hub) => hubPoint(shell, hub as HubId)) ?? [];
  if (ring.length === 0) return [];
  const sides = ring.map((from, i): Side => {
    const to = ring[(i + 1) % ring.length];
    return [from[0], from[1], from[2] + ringHeight, to[0], to[1], to[2] + ringHeight];
  });
  const door = doorSide(question, Math.hypot(ring[0][0], ring[0][1]));
  return Array.from({ length: count }, (_, i): HorizonPoint => {
    const azimuth = (2 * Math.PI * i) / count;
    const over = lowestOver(question, azimuth, sides);
    const behind = door === null ? over : lowestOver(question, azimuth, [door]);
    const land = skylineAt(skyline, azimuth);
    if (land >= Math.max(over, behind)) return { azimuth, elevation: land, by: 'skyline' };
    return behind > over
      ? { azimuth, elevation: behind, by: 'door' }
      : { azimuth, elevation: over, by: 'ring' };
  });
}

/** From (x, y, z) to (x, y, z): what a ray must pass over. */
type Side = readonly [number, number, number, number, number, number];

function doorSide({ door, floor }: HorizonQuestion, ring: number): Side | null {
  if (door === null) return null;
  assertBetween('door width', door.width, 0.1, 10, 'm');
  assertBetween('door height', door.height, 0.1, 10, 'm');
  const half = Math.min(door.width / 2, ring * 0.99);
  const out = Math.sqrt(ring ** 2 - half ** 2);
  const [c, s] = [Math.cos(door.azimuth), Math.sin(door.azimuth)];
  const top = floor + door.height;
  return [out * c + half * s, out * s - half * c, top, out * c - half * s, out * s + half * c, top];
}

/** Rays along the lower half of the rim, and the middle: what is furthest down or aside. */
const RIM_RAYS = 16;

/** The lowest elevation, 0 to a right angle, at which every ray of the opening that meets one of the
 * sides in plan passes over it: found by halving, as all rays rise with the elevation. */
function lowestOver(question: HorizonQuestion, azimuth: number, sides: readonly Side[]): number {
  if (isOver(question, azimuth, 0, sides)) return 0;
  let [low, high] = [0, Math.PI / 2];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (isOver(question, azimuth, middle, sides)) high = middle;
    else low = middle;
  }
  return high;
}

function isOver(
  { dish, mount, floor }: HorizonQuestion,
  azimuth: number,
  elevation: number,
  sides: readonly Side[],
): boolean {
  const pivot = pivotOf(mount, floor);
  const ahead = dish.vertexAhead + dishDepth(dish);
  const [ca, sa, ce, se] = [
    Math.cos(azimuth),
    Math.sin(azimuth),
    Math.cos(elevation),
    Math.sin(elevation),
  ];
  if (ce < 1e-9) return true;
  for (let k = 0; k <= RIM_RAYS; k++) {
    const turn = Math.PI + (Math.PI * k) / RIM_RAYS;
    const [across, up] = [
      (dish.diameter / 2) * Math.cos(turn),
      (dish.diameter / 2) * Math.sin(turn),
    ];
    const x = pivot[0] + ahead * ce * ca - across * sa - up * se * ca;
    const y = pivot[1] + ahead * ce * sa + across * ca - up * se * sa;
    const z = pivot[2] + ahead * se + up * ce;
    for (const side of sides) {
      const over = heightOver(x, y, z, ca, sa, se / ce, side);
      if (over !== null && over < 0) return false;
    }
  }
  return true;
}

/** How far above a side a ray passes that goes along (c, s) in plan and rises `rise` a metre; null where
 * it does not cross the side. */
function heightOver(
  x: number,
  y: number,
  z: number,
  c: number,
  s: number,
  rise: number,
  [ax, ay, az, bx, by, bz]: Side,
): number | null {
  // Across the ray's line: where the side's ends lie to its left.
  const [la, lb] = [(ay - y) * c - (ax - x) * s, (by - y) * c - (bx - x) * s];
  if (la * lb > 0 || la === lb) return null;
  const share = la / (la - lb);
  const along = (ax + share * (bx - ax) - x) * c + (ay + share * (by - ay) - y) * s;
  return along < 0 ? null : z + along * rise - (az + share * (bz - az));
}

/** The skyline between its steps, straight. */
function skylineAt(skyline: readonly number[], azimuth: number): number {
  if (skyline.length === 0) return 0;
  const at = (azimuth / (2 * Math.PI)) * skyline.length;
  const i = Math.floor(at);
  const [a, b] = [skyline[i % skyline.length], skyline[(i + 1) % skyline.length]];
  return a + (at - i) * (b - a);
}
