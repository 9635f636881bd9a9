// A dish on its mount, as what must clear the wall and what looks through it. The pivot is where the
// axes of the mount cross; pointing along the unit vector u, the vertex of the dish is `vertexAhead`
// further along u, the rim's plane D / 16F beyond that (F: focal length over diameter), the focus F D
// beyond the vertex. Frame of the shell, metres, radians; azimuth anticlockwise seen from above from the
// datum.

import { assertBetween } from '../loads/doors.ts';
import type { Vec3 } from '../math/vector.ts';
import { MOST_DISH } from './receiver.ts';

/** A dish. */
export interface Dish {
  readonly diameter: number;
  /** Focal length over diameter. */
  readonly focalRatio: number;
  /** From the pivot to the vertex along the pointing; negative where the pivot is before it. */
  readonly vertexAhead: number;
  /** How far the feed reaches beyond the focus, and its diameter. */
  readonly feed: { readonly beyond: number; readonly diameter: number };
  /** How far frame or counterweight reaches behind the pivot, and its diameter. */
  readonly back: { readonly behind: number; readonly diameter: number };
}

/** Sorts of mount. Azimuth and elevation: every pointing from `lowest` up. Equatorial: only what rises
 * at the site's latitude. Transit: up and down in the plane of one azimuth. */
export const MOUNT_KINDS = ['azimuth and elevation', 'equatorial', 'transit'] as const;

/** A mount: where its pivot stands and where it must be able to point. */
export interface Mount {
  readonly kind: (typeof MOUNT_KINDS)[number];
  /** Height of the pivot above the floor. */
  readonly height: number;
  /** Pivot in plan from the shell's axis, towards the datum and a quarter turn anticlockwise from it. */
  readonly aside: readonly [number, number];
  /** Elevations that must be swung. */
  readonly lowest: number;
  readonly highest: number;
  /** Of the plane of a transit mount; of the pole (north) of an equatorial one. */
  readonly azimuth: number;
  /** Of the site, radians, north positive: equatorial only. */
  readonly latitude: number;
  /** Greatest hour angle of an equatorial mount, radians, to either side. */
  readonly hourAngle: number;
}

/** Throws RangeError where a dish is none. */
export function assertDish({ diameter, focalRatio, vertexAhead, feed, back }: Dish): void {
  assertBetween('dish diameter', diameter, 0.05, MOST_DISH, 'm');
  assertBetween('focal ratio', focalRatio, 0.2, 2);
  assertBetween('vertex ahead of the pivot', vertexAhead, -10, 10, 'm');
  assertBetween('feed beyond the focus', feed.beyond, 0, 10, 'm');
  assertBetween('feed diameter', feed.diameter, 0, 10, 'm');
  assertBetween('back behind the pivot', back.behind, 0, 20, 'm');
  assertBetween('back diameter', back.diameter, 0, 20, 'm');
}

/** The way a pointing looks, a unit vector. */
export const pointingAt = (azimuth: number, elevation: number): Vec3 => [
  Math.cos(elevation) * Math.cos(azimuth),
  Math.cos(elevation) * Math.sin(azimuth),
  Math.sin(elevation),
];

/** From the vertex to the plane of the rim, metres: D / 16F. */
export const dishDepth = ({
  diameter,
  focalRatio,
}: Pick<Dish, 'diameter' | 'focalRatio'>): number => diameter / (16 * focalRatio);

/** The pivot in the shell's frame; `floor` is the height there of what it stands on. */
export const pivotOf = ({ aside, height }: Mount, floor: number): Vec3 => [
  aside[0],
  aside[1],
  floor + height,
];

/** Whether a mount must be able to point there. An equatorial mount reaches what has an hour angle
 * within its limits: of a pointing, the angle about the pole from the plane of the meridian. */
export function mustReach(mount: Mount, azimuth: number, elevation: number): boolean {
  const rounding = 1e-9;
  if (elevation < mount.lowest - rounding || elevation > mount.highest + rounding) return false;
  if (mount.kind === 'azimuth and elevation') return true;
  const turned = azimuth - mount.azimuth;
  if (mount.kind === 'transit') return Math.abs(Math.sin(turned)) * Math.cos(elevation) < 1e-6;
  // Frame of the equator: z to the pole (north, up by the latitude), x up along the meridian, y west
  // (anticlockwise from north).
  const [north, west, up] = [
    Math.cos(elevation) * Math.cos(turned),
    Math.cos(elevation) * Math.sin(turned),
    Math.sin(elevation),
  ];
  const [s, c] = [Math.sin(mount.latitude), Math.cos(mount.latitude)];
  const hour = Math.atan2(west, up * c - north * s);
  return Math.abs(hour) <= mount.hourAngle + rounding;
}

/** Pointings of a mount on a grid of `step` radians, both ends of the elevation in it. */
export function pointingsOf(mount: Mount, step: number): { azimuth: number; elevation: number }[] {
  assertBetween('step of pointings', step, 1e-3, 1, 'rad');
  const rows = Math.max(1, Math.ceil((mount.highest - mount.lowest) / step - 1e-9));
  const columns = Math.ceil((2 * Math.PI) / step - 1e-9);
  const list: { azimuth: number; elevation: number }[] = [];
  for (let row = 0; row <= rows; row++) {
    const elevation = mount.lowest + ((mount.highest - mount.lowest) * row) / rows;
    for (const azimuth of azimuthsOf(mount, columns))
      if (mustReach(mount, azimuth, elevation)) list.push({ azimuth, elevation });
  }
  return list;
}

const azimuthsOf = (mount: Mount, columns: number): number[] =>
  mount.kind === 'transit'
    ? [mount.azimuth, mount.azimuth + Math.PI]
    : Array.from({ length: columns }, (_, i) => (2 * Math.PI * i) / columns);
