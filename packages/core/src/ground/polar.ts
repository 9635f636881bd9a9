// Setting out with an instrument that reads a bearing and a level distance: a total station, or a
// laser on a turntable with a tape. It stands anywhere, is turned to zero on a peg that it sees, and
// reads clockwise.

import { assertNumber } from '../math/doors.ts';
import { type Base, bearingOf, type PlanPoint, planDistance } from './base.ts';

/** Where the instrument points for one base hub. */
export interface PolarStake {
  /** Number of the base hub. */
  readonly hub: number;
  /** Clockwise from the peg that was set to zero, radians, 0 to 2π. */
  readonly bearing: number;
  /** Level distance from the instrument, metres. */
  readonly distance: number;
  /** Above the lowest base hub, metres. */
  readonly rise: number;
}

/** The instrument's place and its zero, metres in the plan. */
export interface Station {
  readonly at: PlanPoint;
  readonly zero: PlanPoint;
}

/** The instrument over the centre peg, zero on the datum. */
export const atCentre: Station = { at: [0, 0], zero: [1, 0] };

/** Bearing and distance of each base hub from a station. A station on a hub gets that hub at
 * distance 0, bearing 0. RangeError where the station's points are no numbers or are one point. */
export function polarPlan(base: Base, station: Station = atCentre): PolarStake[] {
  for (const [name, point] of [
    ['at', station.at],
    ['zero', station.zero],
  ] as const)
    for (const coordinate of point) assertNumber(`station.${name}`, coordinate);
  const { at, zero } = station;
  if (planDistance(at, zero) === 0)
    throw new RangeError('the station stands on the peg it is turned to: set zero on another');
  const turned = (p: PlanPoint): PlanPoint => {
    const [ux, uy] = [zero[0] - at[0], zero[1] - at[1]];
    const [vx, vy] = [p[0] - at[0], p[1] - at[1]];
    return [ux * vx + uy * vy, ux * vy - uy * vx];
  };
  return base.hubs.map((hub) => {
    const distance = planDistance(at, hub.at);
    return {
      hub: hub.number,
      bearing: distance === 0 ? 0 : bearingOf(turned(hub.at)),
      distance,
      rise: hub.rise,
    };
  });
}
