// How far the base is out of round and out of level: what is left when the plan is laid on it as it
// stands, so that a base set off its centre, turned, or tilted as a whole is not out of true.

import { commonPractice, confirmed, type Provenance } from '../../loads/provenance.ts';
import type { Base, PlanPoint } from '../base.ts';
import type { AsBuilt } from './as-built.ts';
import { fitPlane, layPlan } from './best-fit.ts';

/** What is allowed of a base, metres. All are settings. */
export interface BaseTolerances {
  /** Off the planned radius: good up to here, stop from there. */
  readonly radiusGood: number;
  readonly radiusStop: number;
  /** Step in height from one hub to its neighbour, and any hub off the plane. */
  readonly neighbour: number;
  readonly overall: number;
  /** Any upper hub off its planned height. */
  readonly hubHeight: number;
}

/** 5 and 10 mm on the radius, 3 mm from neighbour to neighbour, 6 mm off the plane, 10 mm
 * on the height of an upper hub. */
export const commonTolerances: BaseTolerances = {
  radiusGood: 0.005,
  radiusStop: 0.01,
  neighbour: 0.003,
  overall: 0.006,
  hubHeight: 0.01,
};

/** Where the tolerances come from: the common ones from practice, with a maker's figure for bolted
 * bins beside them; others from the lead. */
export const toleranceSources = (tolerances: BaseTolerances): Provenance[] =>
  tolerances === commonTolerances ||
  Object.entries(commonTolerances).every(
    ([key, value]) => tolerances[key as keyof BaseTolerances] === value,
  )
    ? [
        commonPractice('a shell 4 to 12 m across: ± 5 mm on the radius is good, ± 10 mm stops'),
        commonPractice('base hubs within 3 mm of their neighbours and 6 mm of the plane'),
        commonPractice('upper hubs within 10 mm of their planned height'),
        confirmed('a bolted bin’s instructions: 19 mm on the radius at most'),
      ]
    : [{ text: 'tolerances of the base as entered', confirmation: 'entered' }];

/** How one hub is off; metres. */
export interface HubOff {
  readonly hub: number;
  /** Outwards. */
  readonly radial: number;
  /** Clockwise along the ring. */
  readonly along: number;
  /** Upwards, from the best plane. */
  readonly up: number;
}

/** The base out of true. */
export interface OutOfTrue {
  readonly hubs: readonly HubOff[];
  /** Mean of the radial ones: the ring is too wide by it, or too narrow. */
  readonly meanRadial: number;
  /** The hub furthest off its radius, and how far. */
  readonly outOfRound: { readonly hub: number; readonly off: number };
  /** The hub furthest off the plane. */
  readonly outOfLevel: { readonly hub: number; readonly off: number };
  /** The largest step from a hub to the next clockwise. */
  readonly step: { readonly hub: number; readonly off: number };
  /** How the whole stands: moved and turned in the plan, and the slope of its plane. */
  readonly moved: readonly [number, number];
  readonly turned: number;
  readonly slope: readonly [number, number];
}

/** The standing base held against its plan. */
export function outOfTrue(base: Base, built: AsBuilt): OutOfTrue {
  const laid = layPlan(
    base.hubs.map((hub) => hub.at),
    built.hubs.map((hub) => hub.at),
  );
  const plane = fitPlane(
    built.hubs.map(({ at: [x, y], height }, k) => [x, y, height - (base.hubs[k]?.rise ?? 0)]),
  );
  if (plane === null) throw new Error('a ring of hubs on one line');
  const hubs = built.hubs.map(({ hub, at }, k): HubOff => {
    const plan = laid.points[k] as PlanPoint;
    const [ox, oy] = [plan[0] - laid.moved[0], plan[1] - laid.moved[1]];
    const r = Math.hypot(ox, oy);
    const [dx, dy] = [at[0] - plan[0], at[1] - plan[1]];
    return {
      hub,
      radial: (dx * ox + dy * oy) / r,
      along: (dx * oy - dy * ox) / r,
      up: plane.off[k] as number,
    };
  });
  const n = hubs.length;
  const largest = (value: (hub: HubOff, k: number) => number) =>
    hubs.reduce(
      (best, hub, k) =>
        Math.abs(value(hub, k)) > Math.abs(best.off) ? { hub: hub.hub, off: value(hub, k) } : best,
      { hub: 1, off: 0 },
    );
  return {
    hubs,
    meanRadial: hubs.reduce((sum, hub) => sum + hub.radial, 0) / n,
    outOfRound: largest((hub) => hub.radial),
    outOfLevel: largest((hub) => hub.up),
    step: largest((hub, k) => (hubs[(k + 1) % n] as HubOff).up - hub.up),
    moved: laid.moved,
    turned: laid.turned,
    slope: plane.slope,
  };
}
