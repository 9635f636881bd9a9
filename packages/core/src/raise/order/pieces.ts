// Pieces: what goes up in one lift. Each place belongs to one piece.

import type { PieceMade } from '../plan.ts';
import type { OrderSite } from './site.ts';

/** A piece. */
export interface Piece {
  /** Ascending. */
  readonly places: readonly number[];
  readonly made: PieceMade;
  /** Its lowest course. */
  readonly course: number;
  /** Height of its highest hub over the mean of the base ring's, metres. */
  readonly height: number;
  /** Seams within it. */
  readonly inner: readonly number[];
  /** Neighbours beyond its edge. */
  readonly outer: readonly { readonly place: number; readonly seam: number }[];
  /** Whether it stands on the ground with a hub. */
  readonly grounded: boolean;
  /** Whether a place of it is the way out. */
  readonly wayOut: boolean;
}

/** A piece of some places. RangeError where they are none, or not joined by seams. */
export function pieceOf(site: OrderSite, list: readonly number[], made: PieceMade): Piece {
  const places = [...new Set(list)].sort((a, b) => a - b);
  const own = new Set(places);
  if (places.length === 0) throw new RangeError('a piece has no places');
  if (!isConnected(site, places))
    throw new RangeError(
      `a piece is not joined: ${places.map((p) => site.numbers[p] ?? p).join(', ')}`,
    );
  const inner = new Set<number>();
  const outer: { place: number; seam: number }[] = [];
  for (const p of places)
    for (const next of site.across[p] ?? [])
      if (own.has(next.place)) inner.add(next.seam);
      else outer.push(next);
  return {
    places,
    made: places.length === 1 ? 'panel' : made,
    course: Math.min(...places.map((p) => site.course[p] as number)),
    height: Math.max(...places.map((p) => site.top[p] as number)),
    inner: [...inner].sort((a, b) => a - b),
    outer,
    grounded: places.some((p) => site.hubs[p]?.some((hub) => site.base[hub])),
    wayOut: places.some((p) => site.wayOut[p] === 1),
  };
}

function isConnected(site: OrderSite, places: readonly number[]): boolean {
  const left = new Set(places);
  const stack = [places[0] as number];
  left.delete(places[0] as number);
  while (stack.length > 0)
    for (const { place } of site.across[stack.pop() as number] ?? [])
      if (left.delete(place)) stack.push(place);
  return left.size === 0;
}

/** Places of a group. */
export interface Group {
  readonly places: readonly number[];
  readonly made: PieceMade;
}

/** All built places as pieces: the groups given, each other place by itself. RangeError where two
 * groups have a place in common or one has an opening. */
export function piecesOf(site: OrderSite, groups: readonly Group[]): Piece[] {
  const taken = new Uint8Array(site.built.length);
  const pieces = groups.map(({ places, made }) => {
    for (const p of places) {
      if (!site.built[p])
        throw new RangeError(`a group has place ${site.numbers[p] ?? p}, which is no built place`);
      if (taken[p]) throw new RangeError(`place ${site.numbers[p]} is in two groups`);
      taken[p] = 1;
    }
    return pieceOf(site, places, made);
  });
  for (let p = 0; p < taken.length; p++)
    if (site.built[p] && !taken[p]) pieces.push(pieceOf(site, [p], 'panel'));
  return pieces;
}

/** What may be made up on the ground. */
export interface MakeUp {
  /** Whether a group of these places may be lifted as one. */
  readonly mayLift: (places: readonly number[]) => boolean;
  /** Its highest hub may come so high over the mean of the base ring's, metres. */
  readonly highest: number;
}

/** Fives and sixes low: all panels round every other free hub that no group has yet, low enough and
 * light enough, from the datum clockwise; `from` turns the start on by so many hubs. */
export function madeUpLow(
  site: OrderSite,
  fixed: readonly Group[],
  { mayLift, highest }: MakeUp,
  from = 0,
): Group[] {
  const taken = new Uint8Array(site.built.length);
  for (const { places } of fixed) for (const p of places) taken[p] = 1;
  const stars = [...site.around.keys()]
    .map((hub) => ({ hub, places: site.around[hub] as readonly number[] }))
    .filter(
      ({ hub, places }) =>
        !site.base[hub] &&
        places.length >= 5 &&
        places.every((p) => site.built[p] && !site.wayOut[p]) &&
        Math.max(...places.map((p) => site.top[p] as number)) <= highest,
    )
    .sort(
      (a, b) =>
        levelOf(site, a.places) - levelOf(site, b.places) ||
        around(site, a.hub) - around(site, b.hub) ||
        a.hub - b.hub,
    );
  const found: Group[] = [];
  for (let i = 0; i < stars.length; i++) {
    const { places } = stars[(i + from) % stars.length] as (typeof stars)[number];
    if (places.some((p) => taken[p]) || !mayLift(places)) continue;
    for (const p of places) taken[p] = 1;
    found.push({ places, made: 'made up' });
  }
  return found;
}

const levelOf = (site: OrderSite, places: readonly number[]): number =>
  Math.min(...places.map((p) => site.course[p] as number));

const around = ({ shell }: OrderSite, hub: number): number =>
  (2 * Math.PI - Math.atan2(shell.hubs[3 * hub + 1], shell.hubs[3 * hub])) % (2 * Math.PI);

/** The cap from a course upwards, as one group; null where a group given reaches over its edge or
 * it is not in one piece. */
export function capFrom(site: OrderSite, fixed: readonly Group[], course: number): Group | null {
  const places = [...site.course.keys()].filter(
    (p) => site.built[p] && !site.wayOut[p] && (site.course[p] as number) >= course,
  );
  const own = new Set(places);
  const over = fixed.some(({ places: group }) => {
    const inside = group.filter((p) => own.has(p)).length;
    return inside > 0 && inside < group.length;
  });
  return places.length < 2 || over || !isConnected(site, places) ? null : { places, made: 'cap' };
}
