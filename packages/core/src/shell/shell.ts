// A shell as plain arrays: hubs on a sphere, places between them, and which sides meet.
// Origin at the sphere's centre, z up, x towards the datum, metres. The hubs of a place run
// anticlockwise seen from outside; its side s leads from hub s to hub s + 1.
//
//        hub(next)                  Sides are numbered through the whole shell: place p owns
//          / \                      sides placeStart[p] … placeStart[p + 1] − 1. mate[s] is the
//   side  /   \  side               side on the other face of the same seam, −1 where the side
//        / p   \                    is open. A side is also the name of the corner at its hub.
//   hub ——side—— hub

import type { HubId, PlaceId, SideId } from './ids.ts';

/** A shell, whole sphere or part. All arrays are read-only by agreement. */
export interface Shell {
  /** Radius of the sphere through the hubs, metres. */
  readonly radius: number;
  /** Hub positions, stride 3, metres. */
  readonly hubs: Float64Array;
  /** First side of each place; one longer than the number of places. */
  readonly placeStart: Int32Array;
  /** Side → the hub it starts from. */
  readonly sideHub: Int32Array;
  /** Side → the place it belongs to. */
  readonly sidePlace: Int32Array;
  /** Side → the side it is bolted to, or −1 where it is open. */
  readonly mate: Int32Array;
  /** Seams, stride 2: the two sides of each, the lower side first, in order of that side. */
  readonly seams: Int32Array;
  /** Place → index of its kind in the list of kinds that goes with the shell. */
  readonly kind: Int32Array;
  /** Place → which of its kind's sides lies on the place's first side. */
  readonly turn: Int32Array;
}

/** One place of a shell to be made. */
export interface PlaceDraft {
  /** Hub indices, anticlockwise seen from outside. */
  readonly hubs: readonly number[];
  readonly kind: number;
  readonly turn: number;
}

/** What a shell is made from. */
export interface ShellDraft {
  readonly radius: number;
  /** Hub positions, metres. */
  readonly hubs: Float64Array;
  readonly places: readonly PlaceDraft[];
}

/** A shell with its adjacency worked out. Throws where a radius, hub position or hub index is not
 * what it should be, and where two places run along a side in the same direction: such places do
 * not form an oriented surface. Nothing of ours should draft any of these. */
export function makeShell(draft: ShellDraft): Shell {
  assertDraft(draft);
  const placeStart = new Int32Array(draft.places.length + 1);
  draft.places.forEach((place, p) => {
    placeStart[p + 1] = (placeStart[p] as number) + place.hubs.length;
  });
  const sideCount = placeStart[draft.places.length] as number;
  const sideHub = new Int32Array(sideCount);
  const sidePlace = new Int32Array(sideCount);
  draft.places.forEach((place, p) => {
    place.hubs.forEach((hub, i) => {
      sideHub[(placeStart[p] as number) + i] = hub;
      sidePlace[(placeStart[p] as number) + i] = p;
    });
  });
  const mate = matesOf(placeStart, sideHub, sidePlace, draft.hubs.length / 3);
  const seams: number[] = [];
  mate.forEach((other, side) => {
    if (other > side) seams.push(side, other);
  });
  return {
    radius: draft.radius,
    hubs: draft.hubs,
    placeStart,
    sideHub,
    sidePlace,
    mate,
    seams: Int32Array.from(seams),
    kind: Int32Array.from(draft.places, (place) => place.kind),
    turn: Int32Array.from(draft.places, (place) => place.turn),
  };
}

/** Number of hubs. */
export const hubCount = (shell: Shell): number => shell.hubs.length / 3;

/** Number of places. */
export const placeCount = (shell: Shell): number => shell.placeStart.length - 1;

/** Number of sides, open ones and both of each seam. */
export const sideCount = (shell: Shell): number => shell.sideHub.length;

/** Number of seams. */
export const seamCount = (shell: Shell): number => shell.seams.length / 2;

/** Number of sides (and corners) of a place. */
export const cornerCount = (shell: Shell, place: PlaceId): number =>
  (shell.placeStart[place + 1] as number) - (shell.placeStart[place] as number);

/** The sides of a place, anticlockwise seen from outside. */
export function sidesOf(shell: Shell, place: PlaceId): SideId[] {
  const sides: SideId[] = [];
  for (let s = shell.placeStart[place] as number; s < (shell.placeStart[place + 1] as number); s++)
    sides.push(s as SideId);
  return sides;
}

/** The hubs of a place, anticlockwise seen from outside. */
export const hubsOf = (shell: Shell, place: PlaceId): HubId[] =>
  sidesOf(shell, place).map((side) => hubAt(shell, side));

/** The hub that a side starts from. */
export const hubAt = (shell: Shell, side: SideId): HubId => shell.sideHub[side] as HubId;

/** The place that a side belongs to. */
export const placeAt = (shell: Shell, side: SideId): PlaceId => shell.sidePlace[side] as PlaceId;

/** The side that follows in the same place, anticlockwise seen from outside. */
export function nextSide(shell: Shell, side: SideId): SideId {
  const place = shell.sidePlace[side] as number;
  const last = side + 1 === shell.placeStart[place + 1];
  return (last ? shell.placeStart[place] : side + 1) as SideId;
}

/** The side before in the same place. */
export function previousSide(shell: Shell, side: SideId): SideId {
  const place = shell.sidePlace[side] as number;
  const first = side === shell.placeStart[place];
  return (first ? (shell.placeStart[place + 1] as number) - 1 : side - 1) as SideId;
}

/** The side on the other face of the seam, or null where the side is open. */
export function mateOf(shell: Shell, side: SideId): SideId | null {
  const mate = shell.mate[side] as number;
  return mate < 0 ? null : (mate as SideId);
}

/** Which side of its kind (counted from 0) lies on this side of the shell. */
export function kindSide(shell: Shell, side: SideId): number {
  const place = shell.sidePlace[side] as PlaceId;
  const first = shell.placeStart[place] as number;
  return ((shell.turn[place] as number) + side - first) % cornerCount(shell, place);
}

function assertDraft({ radius, hubs, places }: ShellDraft): void {
  if (!(radius > 0 && radius < Infinity)) throw new Error(`the radius is ${radius}, not a length`);
  const odd = hubs.findIndex((x) => !Number.isFinite(x));
  if (odd >= 0) throw new Error(`hub ${Math.floor(odd / 3)} stands at ${hubs[odd]}`);
  const count = hubs.length / 3;
  if (!Number.isInteger(count)) throw new Error(`${hubs.length} coordinates are no points`);
  places.forEach((place, p) => {
    const own = new Set(place.hubs).size;
    if (own < 3 || own < place.hubs.length) throw new Error(`place ${p} has hubs ${place.hubs}`);
    for (const hub of place.hubs)
      if (!(Number.isInteger(hub) && hub >= 0 && hub < count))
        throw new Error(`place ${p} has hub ${hub}, there are ${count}`);
  });
}

/** Kind → its places in a shell, for kinds 0 to `kinds` − 1, without those `leftOut`, by index; places of
 * further kinds are passed over. */
export function placesByKind(
  { kind }: Pick<Shell, 'kind'>,
  kinds: number,
  leftOut: readonly number[] = [],
): number[] {
  const places = new Array<number>(kinds).fill(0);
  const out = new Set(leftOut);
  kind.forEach((k, place) => {
    if (k < kinds && !out.has(place)) places[k] = (places[k] as number) + 1;
  });
  return places;
}

function matesOf(
  placeStart: Int32Array,
  sideHub: Int32Array,
  sidePlace: Int32Array,
  hubs: number,
): Int32Array {
  const mate = new Int32Array(sideHub.length).fill(-1);
  const byEnds = new Map<number, number>();
  const endHub = (side: number): number => {
    const place = sidePlace[side] as number;
    const next = side + 1 === placeStart[place + 1] ? (placeStart[place] as number) : side + 1;
    return sideHub[next] as number;
  };
  for (let side = 0; side < sideHub.length; side++) {
    const key = (sideHub[side] as number) * hubs + endHub(side);
    if (byEnds.has(key))
      throw new Error(
        `sides ${byEnds.get(key)} and ${side} both run from hub ${sideHub[side]} to hub ${endHub(side)}`,
      );
    byEnds.set(key, side);
  }
  for (let side = 0; side < sideHub.length; side++) {
    const other = byEnds.get(endHub(side) * hubs + (sideHub[side] as number));
    if (other !== undefined) mate[side] = other;
  }
  return mate;
}
