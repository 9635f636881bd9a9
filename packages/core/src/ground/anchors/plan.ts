// The anchor plan: how many anchors of the chosen sort each base hub needs, where they stand, what
// they cost, and every source that the numbers rest on. An estimate: what holds on a site only a
// test pull tells.

import { mergeSources, type Provenance } from '../../loads/provenance.ts';
import { assertNumber } from '../../math/doors.ts';
import type { Fault, Read } from '../../measure/fault.ts';
import type { Base } from '../base.ts';
import { ballastWeight, friction } from './ballast.ts';
import { type Capacity, KILOGRAM_FORCE, type Pull } from './capacity.ts';
import { type AnchorChoice, anchorCapacity, piecesOf, spacingOf } from './choice.ts';
import { type BaseForces, type Demand, demands } from './demand.ts';
import {
  type AnchorSpot,
  anchorSpots,
  type SpacingFault,
  spacingFaults,
  type Tie,
} from './layout.ts';
import { allowedPull, type Practice } from './practice.ts';
import type { PullTest } from './pull-test.ts';
import { knownSoil, type Soil } from './soil.ts';

/** What the plan is made from. */
export interface AnchorBrief {
  /** Null: nobody chose yet. */
  readonly anchor: AnchorChoice | null;
  readonly soil: Soil | null;
  readonly tie: Tie;
  /** Test pulls of this sort of anchor. */
  readonly tests: readonly PullTest[];
  readonly cases: readonly BaseForces[];
  /** One practice, or several: the worst of all. */
  readonly practices: readonly Practice[];
  /** Every hub anchored as the worst one is: the wind may turn. True unless told. */
  readonly alike?: boolean;
  /** Price of one piece, or null. */
  readonly price?: number | null;
}

/** What one base hub gets. */
export interface HubAnchors {
  readonly hub: number;
  /** N, factors in. */
  readonly up: number;
  readonly shear: number;
  /** What all its anchors together must hold, along the guy or strap, N; of ballast its weight. */
  readonly pull: number;
  readonly count: number;
  /** Pull over what the anchors may be pulled, under the practice that asks most. */
  readonly use: number;
  /** The load case that asks most. */
  readonly from: string;
}

/** The anchor plan. */
export interface AnchorPlan {
  readonly hubs: readonly HubAnchors[];
  /** What one anchor may be pulled under the practice that asks most, N; of ballast the weight of a
   * piece. */
  readonly allowed: number;
  /** What its source says one anchor holds; null for ballast. */
  readonly capacity: Capacity | null;
  readonly practice: string;
  readonly count: number;
  /** Pickets, bars or pieces of ballast in all. */
  readonly pieces: number;
  readonly cost: number | null;
  readonly spots: readonly AnchorSpot[];
  /** Anchors that stand too near each other: the plan does not hold as drawn. */
  readonly tooNear: readonly SpacingFault[];
  readonly sources: readonly Provenance[];
  readonly notes: readonly string[];
}

/** More anchors than this at one hub ask for stronger ones. */
const MOST_AT_HUB = 12;

/** The anchor plan, or what keeps it from being made: no anchor chosen, an unknown soil, a source
 * that does not cover the case, a hub without forces, or more than 12 anchors at a hub. RangeError
 * for a force or price that is no number. */
export function anchorPlan(base: Base, brief: AnchorBrief): Read<AnchorPlan> {
  const faults = briefFaults(base, brief);
  if (faults.length > 0 || brief.anchor === null) return { ok: false, faults };
  const holding = holdingOf(brief.anchor, brief);
  if (!holding.ok) return holding;
  const { capacity, sources } = holding.value;
  const perPractice = brief.practices.map((practice) => {
    const allowed = holding.value.allowed(practice);
    const asked = demands(base, brief.cases, practice, holding.value.pull).map((demand) => ({
      demand,
      pull: holding.value.pull(demand),
    }));
    return {
      practice,
      allowed,
      asked,
      worst: Math.max(...asked.map(({ pull }) => pull / allowed)),
    };
  });
  const { practice, allowed, asked, worst } = perPractice.reduce((a, b) =>
    b.worst > a.worst ? b : a,
  );
  const hubs = asked.map(({ demand, pull }): HubAnchors => {
    const counted = brief.alike === false ? pull / allowed : worst;
    const count = Math.max(1, Math.ceil(counted - 1e-9));
    const { hub, up, shear, from } = demand;
    return { hub, up, shear, pull, count, use: pull / (allowed * count), from };
  });
  const crowded = hubs.filter(({ count }) => !(count <= MOST_AT_HUB));
  if (crowded.length > 0) return tooMany(crowded[0] as HubAnchors, allowed);
  const spots = anchorSpots(
    base,
    brief.anchor,
    brief.tie,
    new Map(hubs.map(({ hub, count }) => [hub, count])),
  );
  const count = hubs.reduce((sum, hub) => sum + hub.count, 0);
  const pieces = count * piecesOf(brief.anchor).rows.reduce((sum, row) => sum + row, 0);
  const price = brief.price ?? null;
  return {
    ok: true,
    value: {
      hubs,
      allowed,
      capacity,
      practice: practice.name,
      count,
      pieces,
      cost: price === null ? null : price * pieces,
      spots,
      tooNear: spacingFaults(spots, brief.anchor),
      sources: mergeSources(
        sources,
        practice.sources,
        spacingOf(brief.anchor).sources,
        ...brief.cases.map((one) => one.sources),
      ),
      notes: [...(capacity?.notes ?? []), ...pullNotes(brief.tie.pull, hubs)],
    },
  };
}

/** What one anchor holds, and what is asked of it. */
export interface Holding {
  readonly capacity: Capacity | null;
  readonly sources: readonly Provenance[];
  /** What one anchor may be pulled, N. */
  readonly allowed: (practice: Practice) => number;
  /** What a demand asks along the anchor, N. */
  readonly pull: (demand: Demand) => number;
}

/** How an anchor holds in this ground and with these test pulls; faults where its source does not
 * cover the case. */
export function holdingOf(
  anchor: AnchorChoice,
  brief: Pick<AnchorBrief, 'soil' | 'tie' | 'tests'>,
): Read<Holding> {
  if (anchor.type === 'ballast') {
    const soil = knownSoil(brief.soil);
    if (!soil.ok) return soil;
    const rubs = friction(anchor.underlay, soil.value);
    if (!rubs.ok) return rubs;
    const { value, sources } = rubs.value;
    return {
      ok: true,
      value: {
        capacity: null,
        sources,
        allowed: () => anchor.mass * KILOGRAM_FORCE,
        pull: ({ up, shear, spare }) => ballastWeight(up - spare, shear, 0, value),
      },
    };
  }
  const capacity = anchorCapacity(anchor, brief.soil, brief.tie.pull, brief.tests);
  if (!capacity.ok) return capacity;
  return {
    ok: true,
    value: {
      capacity: capacity.value,
      sources: capacity.value.sources,
      allowed: (practice) => allowedPull(capacity.value, practice),
      pull: ({ up, shear }) => alongAnchor(up, shear, brief.tie.pull),
    },
  };
}

/** Pull along the anchor, N: straight up the resultant of lift and shear; along a guy as if the guy
 * bore all of both, up / sin + shear / cos, which is never too little for a force in its plane. */
export function alongAnchor(up: number, shear: number, pull: Pull): number {
  if (pull.way === 'up') return Math.hypot(up, shear);
  return up / Math.sin(pull.elevation) + shear / Math.cos(pull.elevation);
}

function briefFaults(base: Base, { anchor, cases, practices, price, tie }: AnchorBrief): Fault[] {
  const faults: Fault[] = [];
  const fault = (path: string, found: string, expected: string): void => {
    faults.push({ path, found, expected });
  };
  if (anchor === null) fault('anchor', 'none chosen', 'the sort of anchor that is at hand');
  if (anchor?.type === 'ballast' && !(anchor.mass > 0 && anchor.mass <= 20_000))
    fault('anchor.mass', `${anchor.mass} kg`, 'over 0, to 20 000 kg a piece');
  if (practices.length === 0) fault('practice', 'none', 'at least one');
  if (cases.length === 0) fault('loads', 'no load case', 'the forces of at least one wind');
  const { pull } = tie;
  if (pull.way === 'guy' && !(pull.elevation > 0 && pull.elevation < Math.PI / 2))
    fault('anchor.elevation', `${pull.elevation} rad`, 'between the ground and straight up');
  for (const { name, hubs } of cases) {
    const known = new Set(hubs.map(({ hub }) => hub));
    const without = base.hubs.filter(({ number }) => !known.has(number));
    if (without.length > 0)
      fault(`loads, ${name}`, `no force at hub ${without[0]?.number}`, 'a force at every base hub');
    for (const { lift, weight, shear } of hubs) {
      assertNumber('lift', lift);
      assertNumber('weight', weight, 0);
      assertNumber('shear', shear, 0);
    }
  }
  if (price !== null && price !== undefined) assertNumber('price', price, 0);
  return faults;
}

const tooMany = ({ hub, pull }: HubAnchors, allowed: number): Read<never> => ({
  ok: false,
  faults: [
    {
      path: `anchor, hub ${hub}`,
      found: `${Math.round(pull)} N asked, ${Math.round(allowed)} N each`,
      expected: `at most ${MOST_AT_HUB} anchors at a hub: choose stronger ones`,
    },
  ],
});

function pullNotes(pull: Pull, hubs: readonly HubAnchors[]): string[] {
  if (pull.way === 'up') return [];
  const outward = Math.max(...hubs.map((hub) => hub.pull)) * Math.cos(pull.elevation);
  return [
    `A guy pulls its hub outwards with up to ${Math.round(outward)} N: the base ring must be closed and bolted to bear it.`,
  ];
}
