// Who and what can lift a piece: hands from the ground, hands from what they stand on, gin pole, lift.
// Each way that is owned is told with why it does or does not do; where none does, the least change that
// helps. An estimate: a rigger decides.

import { numberOf, type Override } from '../../loads/numbers.ts';
import { flagsOf, mergeSources, type Provenance, type Sourced } from '../../loads/provenance.ts';
import { HANDLING_LIMITS } from '../../stages/stop-work.ts';
import type { Gear } from '../gear.ts';
import { ginPoleHead } from './gin-pole.ts';
import { liftIndex, NIOSH, recommendedWeight } from './niosh.ts';
import type { Piece } from './piece.ts';
import { type Foothold, footholds, REACH } from './reach.ts';
import { HOIST_GUST, sailForce, sailLimit } from './sail.ts';
import { fewestPeople, MOST_TEAM, teamFactor, teamLifts } from './team.ts';

/** One way to get a piece to its place. */
export interface LiftWay {
  readonly by: 'hands' | 'gin pole' | 'lift';
  /** What it is called; of hands what they stand on. */
  readonly name: string;
  readonly can: boolean;
  /** Why not, or what must be seen to; plain sentences. */
  readonly why: readonly string[];
  /** People at the piece itself, by weight and by today's wind; null where no team does. */
  readonly people: number | null;
  /** Each hand's share against what the lifting equation recommends; Infinity where it allows none, null
   * for machines and unknown mass. */
  readonly index: number | null;
  /** Gust over which this way stops, m/s. */
  readonly gustLimit: Sourced;
  /** Load on the gin pole's head, N; null for other ways. */
  readonly headLoad: number | null;
  /** Lines that keep it from turning. */
  readonly tagLines: number;
}

/** A lift with all its ways. */
export interface Lift {
  readonly piece: Piece;
  /** Ways that do come first: hands before pole before lift, fewest people first. */
  readonly ways: readonly LiftWay[];
  /** The first way that does, or null. */
  readonly best: LiftWay | null;
  /** Force of today's gust on it square to the wind, N; null where no gust was told. */
  readonly sail: number | null;
  /** The least change that helps where nothing does; empty where something does. */
  readonly leastChange: string;
  readonly flags: readonly Provenance[];
}

/** What a day gives besides gear. */
export interface LiftDay {
  /** Gust today at the shell, m/s; null: not told, the ways tell their limits only. */
  readonly gust: number | null;
  /** People that can be at one piece; MOST_TEAM where left out. */
  readonly hands?: number;
  readonly overrides?: readonly Override[];
}

/** How hands hold a panel: by the flange, close, from waist height up to the place. */
const WAIST = 0.75;
/** Sling and clearance over a hoisted piece, m: common practice. */
export const SLING = 1;

/** All ways to lift a piece with the gear owned. RangeError for a gust below 0. */
export function liftOf(piece: Piece, gear: Gear, day: LiftDay): Lift {
  const sail = day.gust === null ? null : sailForce(piece.area, day.gust, day.overrides).value;
  const ways = [
    ...handWays(piece, gear, day),
    ...(gear.ginPole === null ? [] : [poleWay(piece, gear.ginPole, day)]),
    ...gear.lifts.map((lift) => machineWay(piece, lift, day)),
  ];
  const rank = (way: LiftWay): number => ['hands', 'gin pole', 'lift'].indexOf(way.by);
  const ordered = [...ways].sort(
    (a, b) =>
      Number(b.can) - Number(a.can) ||
      rank(a) - rank(b) ||
      (a.people ?? Infinity) - (b.people ?? Infinity),
  );
  const best = ordered[0]?.can ? ordered[0] : null;
  return {
    piece,
    ways: ordered,
    best,
    sail,
    leastChange: best === null ? leastChange(piece, gear, day) : '',
    flags: flagsOf({
      sources: mergeSources(piece.sources, ...(best ? [best.gustLimit.sources] : []), [NIOSH]),
    }),
  };
}

/** By hand, from everything that people can stand on that is high enough, and from the highest where
 * nothing is. */
function handWays(piece: Piece, gear: Gear, day: LiftDay): LiftWay[] {
  const stands = footholds(gear).filter(({ kind }) => kind !== 'leaning ladder');
  const high = stands.filter(({ hands }) => hands >= piece.high - 1e-9);
  const used = high.length > 0 ? high.slice(0, 1) : stands.slice(-1);
  return used.map((stand) => handWay(piece, stand, gear, day));
}

function handWay(piece: Piece, stand: Foothold, gear: Gear, day: LiftDay): LiftWay {
  const most = Math.min(day.hands ?? MOST_TEAM, MOST_TEAM);
  const why: string[] = [];
  if (stand.hands < piece.high - 1e-9)
    why.push(
      `hands come to ${stand.hands.toFixed(2)} m from ${stand.name}, its highest hub is at ${piece.high.toFixed(2)} m`,
    );
  const byWeight = piece.mass === null ? null : fewestPeople(piece.mass, gear.personLifts);
  const byWind = day.gust === null || day.gust === 0 ? 1 : peopleAgainst(piece.area, day);
  const people = Math.max(byWeight ?? (piece.mass === null ? 2 : Infinity), byWind);
  if (piece.mass === null)
    why.push(`nobody knows the mass of ${piece.numbers.join(', ')}: weigh it`);
  else if (piece.unweighed.length > 0)
    why.push(`the mass of ${piece.unweighed.join(', ')} is unknown and not in it: weigh it`);
  if (byWeight === null && piece.mass !== null)
    why.push(
      `${piece.mass.toFixed(1)} kg, ${MOST_TEAM} people lift ${teamLifts(MOST_TEAM, gear.personLifts).value.toFixed(1)} kg`,
    );
  else if (people > most)
    why.push(
      byWind > most
        ? `the gust of ${(day.gust ?? 0).toFixed(1)} m/s pulls harder than ${most} people hold`
        : `${people} people are needed, ${most} are there`,
    );
  const team = Math.min(Number.isFinite(people) ? people : MOST_TEAM, MOST_TEAM);
  const limit = lowest(sailLimit(piece.area, team, day.overrides), handling());
  if (day.gust !== null && day.gust > limit.value && people <= most)
    why.push(`gust ${day.gust.toFixed(1)} m/s, it stops at ${limit.value.toFixed(1)} m/s`);
  return {
    by: 'hands',
    name: stand.name,
    can: why.length === 0,
    why: stand.note === '' ? why : [...why, stand.note],
    people: Number.isFinite(people) && people <= MOST_TEAM ? people : null,
    index: piece.mass === null ? null : handIndex(piece, stand, team),
    gustLimit: limit,
    headLoad: null,
    tagLines: 0,
  };
}

/** People it takes to hold it in today's gust. */
function peopleAgainst(area: number, { gust, overrides }: LiftDay): number {
  for (let people = 1; people <= MOST_TEAM; people++)
    if (sailLimit(area, people, overrides).value >= (gust ?? 0)) return people;
  return Infinity;
}

const handling = (): Sourced => ({
  value: HANDLING_LIMITS[0].gust,
  sources: [HANDLING_LIMITS[0].source],
});

const lowest = (a: Sourced, b: Sourced): Sourced => (a.value <= b.value ? a : b);

/** The equation for one of a team with its share (by the team factor), hands from waist height to where
 * they end above the feet, a flange held close, one lift in five minutes over two hours. */
function handIndex(piece: Piece, stand: Foothold, people: number): number {
  const share = (piece.mass as number) / (people * teamFactor(people).value);
  const end = Math.max(0, Math.min(piece.middle - stand.feet, REACH.up.value));
  const task = {
    reach: 0.3,
    height: Math.max(WAIST, end),
    travel: Math.abs(end - WAIST),
    twist: 0,
    perMinute: 0.2,
    hours: 2,
    coupling: 'fair',
  } as const;
  return liftIndex(share, recommendedWeight(task));
}

function poleWay(piece: Piece, pole: NonNullable<Gear['ginPole']>, day: LiftDay): LiftWay {
  const why: string[] = [];
  const needed = hookNeeded(piece);
  if (pole.height < needed - 1e-9)
    why.push(`head at ${pole.height.toFixed(2)} m, ${needed.toFixed(2)} m is needed`);
  const gravity = numberOf('gravity', day.overrides).value;
  const load =
    piece.mass === null || piece.unweighed.length > 0
      ? null
      : ginPoleHead(piece.mass * gravity).value;
  if (load === null) why.push(`the mass of ${piece.unweighed.join(', ')} is unknown: weigh it`);
  else if (pole.headBears === null)
    why.push(`nobody knows what the head bears: ${(load / 1000).toFixed(2)} kN will be on it`);
  else if (load > pole.headBears)
    why.push(
      `${(load / 1000).toFixed(2)} kN on the head, it bears ${(pole.headBears / 1000).toFixed(2)} kN`,
    );
  return hoisted('gin pole', pole.name, why, load, day);
}

function machineWay(piece: Piece, lift: Gear['lifts'][number], day: LiftDay): LiftWay {
  const why: string[] = [];
  const needed = hookNeeded(piece);
  if (lift.hookHeight < needed - 1e-9)
    why.push(`hook at ${lift.hookHeight.toFixed(2)} m, ${needed.toFixed(2)} m is needed`);
  if (piece.mass === null || piece.unweighed.length > 0)
    why.push(`the mass of ${piece.unweighed.join(', ')} is unknown: weigh it`);
  else if (lift.bears === null)
    why.push(`nobody knows what it bears: ${piece.mass.toFixed(0)} kg are to be lifted`);
  else if (lift.bears < piece.mass)
    why.push(`${piece.mass.toFixed(0)} kg, it bears ${lift.bears.toFixed(0)} kg`);
  return hoisted('lift', lift.name, why, null, day);
}

function hoisted(
  by: 'gin pole' | 'lift',
  name: string,
  why: string[],
  headLoad: number | null,
  day: LiftDay,
): LiftWay {
  if (day.gust !== null && day.gust > HOIST_GUST.value)
    why.push(`gust ${day.gust.toFixed(1)} m/s, hoisting stops at ${HOIST_GUST.value} m/s`);
  return {
    by,
    name,
    can: why.length === 0,
    why,
    people: null,
    index: null,
    gustLimit: HOIST_GUST,
    headLoad,
    tagLines: 2,
  };
}

/** How high a hook or a pole's head must come to set a piece in its place, m above the ground: its
 * highest hub with sling and clearance over it. */
export const hookNeeded = (piece: Pick<Piece, 'high'>): number => piece.high + SLING;

function leastChange(piece: Piece, gear: Gear, day: LiftDay): string {
  const hands = handWays(piece, gear, day)[0] as LiftWay;
  const mostMass = teamLifts(MOST_TEAM, gear.personLifts).value;
  const changes: string[] = [];
  if (piece.mass === null) return `Weigh ${piece.numbers.join(', ')}: nobody knows the mass.`;
  if (piece.unweighed.length > 0) return `Weigh ${piece.unweighed.join(', ')}.`;
  const highest = footholds(gear)
    .filter(({ kind }) => kind !== 'leaning ladder')
    .at(-1) as Foothold;
  if (piece.mass > mostMass)
    changes.push(
      piece.places.length > 1
        ? `take it up in ${Math.ceil(piece.mass / mostMass)} or more parts of up to ${mostMass.toFixed(0)} kg`
        : `a lift or gin pole for ${piece.mass.toFixed(0)} kg with its hook at ${hookNeeded(piece).toFixed(1)} m`,
    );
  if (highest.hands < piece.high)
    changes.push(
      `something to stand on ${(piece.high - REACH.up.value).toFixed(2)} m above the ground (now ${highest.feet.toFixed(2)} m)`,
    );
  if (day.gust !== null && day.gust > hands.gustLimit.value)
    changes.push(`wait until gusts are under ${hands.gustLimit.value.toFixed(1)} m/s`);
  if (changes.length === 0) changes.push(...hands.why);
  return `Least change that helps: ${changes.join('; ')}.`;
}
