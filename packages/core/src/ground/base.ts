// The base of a shell as it is set out on the ground: the hubs of its base ring, numbered from 1
// clockwise seen from above from the datum, as places are. Plan: origin at the centre peg (below
// the sphere's centre), x towards the datum, y to the left of it, metres. Heights are rises above
// the lowest base hub. Bearings are clockwise from the datum, radians, as an instrument reads them.

import { TAU } from '../math/angle.ts';
import { distance, type Vec3 } from '../math/vector.ts';
import { type Read, refuse } from '../measure/fault.ts';
import { hubPoint } from '../shell/geometry.ts';
import type { HubId } from '../shell/ids.ts';
import { isInside } from '../shell/inside.ts';
import { baseRing } from '../shell/rims.ts';
import type { Shell } from '../shell/shell.ts';
import { SAME_AZIMUTH } from '../shell/tolerances.ts';

/** A point of the plan, metres. */
export type PlanPoint = readonly [number, number];

/** One hub of the base ring. */
export interface BaseHub {
  /** Its number on the ground, from 1. */
  readonly number: number;
  /** The hub of the shell. */
  readonly hub: HubId;
  /** Plan position, metres. */
  readonly at: PlanPoint;
  /** Above the lowest base hub, metres. */
  readonly rise: number;
  /** Level distance from the centre, metres. */
  readonly radius: number;
  /** Clockwise from the datum seen from above, radians, 0 to 2π. */
  readonly bearing: number;
  /** Straight to the next base hub clockwise, metres: what the panel's side measures. */
  readonly chord: number;
  /** The same held level, metres: what a level tape measures between the stakes. */
  readonly levelChord: number;
}

/** The base of a shell. */
export interface Base {
  /** In turn, clockwise seen from above. */
  readonly hubs: readonly BaseHub[];
  /** Height of the lowest base hub in the shell's frame, metres: mostly negative. */
  readonly level: number;
  /** From the lowest to the highest base hub, metres; 0 where the ring is flat. */
  readonly spread: number;
  /** Radius of the sphere, metres. */
  readonly sphereRadius: number;
}

/** The base of a shell that stands crown up, or why there is none: a closed shell has no base ring,
 * and a ring that does not go round the axis is the rim of a hole. */
export function baseOf(shell: Shell): Read<Base> {
  const ring = baseRing(shell);
  if (ring === null)
    return refuse('shell', 'a closed shell', 'a shell with a base ring: cut it at the ground');
  const points = ring.hubs.map((hub) => hubPoint(shell, hub));
  const above = points.map((p): PlanPoint => [p[0], p[1]]);
  if (!isInside(above, [0, 0]))
    return refuse('shell', 'a lowest rim that does not go round the axis', 'a base ring round it');
  const clockwise = [...ring.hubs.keys()].reverse();
  const bearings = clockwise.map((i) => bearingOf(above[i] as PlanPoint));
  const first = bearings.indexOf(Math.min(...bearings));
  const order = clockwise.map((_, k) => clockwise[(first + k) % clockwise.length] as number);
  const hubs = order.map((i, k): BaseHub => {
    const p = points[i] as Vec3;
    const next = points[order[(k + 1) % order.length] as number] as Vec3;
    return {
      number: k + 1,
      hub: ring.hubs[i] as HubId,
      at: above[i] as PlanPoint,
      rise: p[2] - ring.z.min,
      radius: Math.hypot(p[0], p[1]),
      bearing: bearings[(first + k) % order.length] as number,
      chord: distance(p, next),
      levelChord: Math.hypot(next[0] - p[0], next[1] - p[1]),
    };
  });
  return {
    ok: true,
    value: {
      hubs,
      level: ring.z.min,
      spread: ring.z.max - ring.z.min,
      sphereRadius: shell.radius,
    },
  };
}

/** Clockwise from +x seen from above, radians, 0 to 2π; within rounding of a full turn it is 0. */
export function bearingOf([x, y]: PlanPoint): number {
  const turn = (TAU - Math.atan2(y, x)) % TAU;
  return turn > TAU - SAME_AZIMUTH ? 0 : turn;
}

/** Level distance between two points of the plan, metres. */
export const planDistance = (a: PlanPoint, b: PlanPoint): number =>
  Math.hypot(a[0] - b[0], a[1] - b[1]);
