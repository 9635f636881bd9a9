// The gust at which something first reaches its limit. A force is that of the weight and so much
// more for every pascal; what an anchor is asked is convex in the pressure, so that below its limit
// it holds at every gust. Only what is known is reckoned; the rest is unknown, and said so.

import type { Demand } from '../ground/anchors/demand.ts';
import type { Practice } from '../ground/anchors/practice.ts';
import type { Bearing } from './bearing.ts';
import type { StageModel } from './model.ts';
import { GUST_STEP, MOST_GUST } from './tolerances.ts';

/** What may give way. */
export const LIMIT_KINDS = ['anchor', 'prop', 'seam', 'hub', 'panel'] as const;

/** One of {@link LIMIT_KINDS}. */
export type LimitKind = (typeof LIMIT_KINDS)[number];

/** The gust at which one sort of thing first reaches its limit. */
export interface Limit {
  readonly what: LimitKind;
  /** `unknown`: what it bears is not known; `none`: there is none of it in this stage. */
  readonly status: 'known' | 'unknown' | 'none';
  /** m/s, 3-second gust at the shell; null where unknown, or beyond 60 m/s. */
  readonly gust: number | null;
  /** Hub, seam or place that reaches it first, by its index in the shell; null likewise. */
  readonly at: number | null;
  /** The wind case that does it, or the weight alone. */
  readonly from: string | null;
  /** Why it is unknown or none; else empty. */
  readonly why: string;
}

/** A limit that is not known, or of something that is not there. */
export const noLimit = (what: LimitKind, status: 'unknown' | 'none', why: string): Limit => ({
  what,
  status,
  gust: null,
  at: null,
  from: null,
  why,
});

/** Use (1: its limit) of held hub k under case c at a velocity pressure, Pa. */
type Use = (k: number, c: number, pressure: number) => number;

/** The limits of what holds a stage: anchors, props, hubs. */
export function holdingLimits(model: StageModel, held: Bearing): Limit[] {
  const { anchors, prop, hub } = model.bears;
  const ground = indices(held, (one) => model.baseNumber[one] > 0);
  const props = indices(held, (one) => model.baseNumber[one] === 0);
  const pull =
    (bears: number): Use =>
    (k, c, q) => {
      const force = [0, 1, 2].map((x) => forceAt(held, k, c, q, x));
      return Math.hypot(...force) / bears;
    };
  return [
    anchors === null
      ? noLimit('anchor', 'unknown', 'no anchor is chosen, or what it holds here is unknown')
      : first(model, held, 'anchor', ground, anchorUse(model, held)),
    props.length === 0
      ? noLimit('prop', 'none', 'no prop stands')
      : prop === null
        ? noLimit('prop', 'unknown', 'nobody said what a prop and its ties bear')
        : first(model, held, 'prop', props, pull(prop)),
    hub === null
      ? noLimit('hub', 'unknown', 'nobody said what may be brought into a hub')
      : first(model, held, 'hub', [...held.hubs.keys()], pull(hub)),
  ];
}

/** The gust at which the first base hub lifts off with nothing but the weight to hold it. */
export function liftsOff(model: StageModel, held: Bearing): Limit {
  const ground = indices(held, (one) => model.baseNumber[one] > 0);
  return first(model, held, 'anchor', ground, (k, c, q) => {
    const weight = held.weight[3 * k + 2];
    const lift = -q * (held.cases[c]?.perPascal[3 * k + 2] ?? 0);
    return weight > 0 ? lift / weight : lift - weight > 0 ? 1 : 0;
  });
}

const indices = ({ hubs }: Bearing, is: (hub: number) => boolean): number[] =>
  [...hubs.keys()].filter((k) => is(hubs[k] as number));

const forceAt = (held: Bearing, k: number, c: number, q: number, x: number): number =>
  held.weight[3 * k + x] + q * (held.cases[c]?.perPascal[3 * k + x] ?? 0);

/** Use of the anchors at a base hub, the practice that asks most. */
function anchorUse({ bears, baseNumber }: StageModel, held: Bearing): Use {
  return (k, c, q) => {
    if (bears.anchors === null) throw new Error('no anchors');
    const { holding, practices, count } = bears.anchors;
    const number = baseNumber[held.hubs[k] as number];
    const many = count(number);
    return practices.reduce((most, practice) => {
      const pull = holding.pull(hubDemand(held, k, c, q, practice, number));
      return Math.max(
        most,
        many > 0 ? pull / (many * holding.allowed(practice)) : pull > 0 ? 1 : 0,
      );
    }, 0);
  };
}

/** What is asked at a base hub, factors in. The weight's own thrust is in the shear; where the
 * weight lifts a hub, that counts as wind does. */
export function hubDemand(
  held: Bearing,
  k: number,
  c: number,
  pressure: number,
  practice: Practice,
  number: number,
): Demand {
  const weight = held.weight[3 * k + 2];
  const lift = -pressure * (held.cases[c]?.perPascal[3 * k + 2] ?? 0);
  const net = practice.wind * lift - (weight > 0 ? practice.weight : practice.wind) * weight;
  const shear = Math.hypot(forceAt(held, k, c, pressure, 0), forceAt(held, k, c, pressure, 1));
  return {
    hub: number,
    up: Math.max(0, net),
    spare: Math.max(0, -net),
    shear: practice.wind * practice.sliding * shear,
    from: held.cases[c]?.wind.name ?? '',
  };
}

const CALM = 'the weight alone, in a calm';

/** The lowest gust at which one of the held hubs reaches use 1 under one of the cases. */
function first(
  { airDensity }: StageModel,
  held: Bearing,
  what: LimitKind,
  ks: readonly number[],
  use: Use,
): Limit {
  let gust = MOST_GUST;
  let [at, from]: [number | null, string | null] = [null, null];
  const pressure = (speed: number): number => pressureOf(speed, airDensity.value);
  // What the weight alone brings to its limit may be below it in the highest gust, which relieves it.
  const calm = ks.find((k) => use(k, 0, 0) >= 1);
  if (calm !== undefined)
    return { what, status: 'known', gust: 0, at: held.hubs[calm] as number, from: CALM, why: '' };
  held.cases.forEach(({ wind }, c) => {
    for (const k of ks) {
      if (gust === 0 || use(k, c, pressure(gust)) < 1) continue;
      gust = crossing((speed) => use(k, c, pressure(speed)) >= 1, gust);
      at = held.hubs[k] as number;
      from = caseWords(wind);
    }
  });
  return { what, status: 'known', gust: at === null ? null : gust, at, from, why: '' };
}

/** Pressure of a gust, Pa, from a calm on: ½ ρ V² (Bernoulli). */
export const pressureOf = (gust: number, airDensity: number): number =>
  0.5 * airDensity * gust ** 2;

/** The largest gust (m/s) below one that reaches a limit at which it is not reached, to 5 mm/s; 0
 * where a calm reaches it. */
function crossing(isReached: (gust: number) => boolean, reached: number): number {
  if (isReached(0)) return 0;
  let [low, high] = [0, reached];
  while (high - low > GUST_STEP) {
    const middle = (low + high) / 2;
    if (isReached(middle)) high = middle;
    else low = middle;
  }
  return low;
}

/** A wind case in words: its law, and where the wind comes from, clockwise from the datum. */
export function caseWords({
  name,
  windFrom,
}: {
  readonly name: string;
  readonly windFrom: number;
}): string {
  const degrees = Math.round((360 - (windFrom * 180) / Math.PI) % 360);
  return `${name}, wind from ${degrees}° clockwise of the datum`;
}
