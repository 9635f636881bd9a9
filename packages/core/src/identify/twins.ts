// Twins of a net: other nets of the very same panels. Where a closed ring of seams lies in a plane
// and its lengths repeat, what lies on one side of it can be turned by a step and bolted up again;
// every star at the ring still closes, since each side of the ring is unchanged. The flat equator
// of even class I nets is such a ring, and so is the rim of a cupola.

import {
  cross,
  dot,
  normalize,
  pointAt,
  rotateAbout,
  subtract,
  type Vec3,
} from '../math/vector.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import {
  hubAt,
  hubCount,
  hubsOf,
  makeShell,
  mateOf,
  nextSide,
  type PlaceDraft,
  placeAt,
  placeCount,
  previousSide,
  type Shell,
  sideCount,
  sidesOf,
} from '../shell/shell.ts';

/** A closed ring of seams in one plane. */
export interface FlatRing {
  /** Sides along the ring in order, the cap on their left. */
  readonly sides: readonly SideId[];
  /** The places on the left, no more than half of all. */
  readonly cap: readonly PlaceId[];
}

/** A twin and how it came about. */
export interface Twin {
  readonly shell: Shell;
  readonly ring: FlatRing;
  /** Seams that the cap was turned by, anticlockwise seen from outside it. */
  readonly steps: number;
}

/** All rings of seams that lie in a plane within `tolerance` metres and have more than one place
 * on either side. */
export function flatRings(shell: Shell, tolerance: number): FlatRing[] {
  const rings: FlatRing[] = [];
  const seen = new Set<number>();
  const key = (a: SideId, b: SideId): number => a * sideCount(shell) + b;
  for (let s = 0; s < sideCount(shell); s++) {
    for (const next of sidesFrom(shell, nextSide(shell, s as SideId))) {
      if (next === mateOf(shell, s as SideId) || seen.has(key(s as SideId, next))) continue;
      const loop = followPlane(shell, s as SideId, next, tolerance);
      if (!loop) continue;
      loop.forEach((side, i) => {
        const after = loop[(i + 1) % loop.length] as SideId;
        seen.add(key(side, after));
        seen.add(key(mateOf(shell, after) as SideId, mateOf(shell, side) as SideId));
      });
      const ring = ringOf(shell, loop);
      if (ring) rings.push(ring);
    }
  }
  return rings;
}

/** Every twin that turning one cap by some steps makes, where the ring's lengths repeat within
 * `tolerance` metres and the turned cap is not the cap again. `labels`: side → label that says
 * which panels may stand for one another (see alike.ts). */
export function twinsOf(shell: Shell, labels: ArrayLike<number>, tolerance: number): Twin[] {
  const twins: Twin[] = [];
  for (const ring of flatRings(shell, tolerance))
    for (let steps = 1; steps < ring.sides.length; steps++) {
      if (!repeats(shell, ring.sides, steps, tolerance)) continue;
      if (looksTheSame(shell, labels, ring.sides, steps, 'left')) continue;
      if (looksTheSame(shell, labels, ring.sides, steps, 'right')) continue;
      twins.push({ shell: turnCap(shell, ring, steps), ring, steps });
    }
  return twins;
}

const point = (shell: Shell, side: SideId): Vec3 => pointAt(shell.hubs, hubAt(shell, side));

/** All sides that start at the hub where this one starts; a closed star only. */
function sidesFrom(shell: Shell, side: SideId): SideId[] {
  const out: SideId[] = [];
  let s = side;
  do {
    out.push(s);
    const next = mateOf(shell, previousSide(shell, s));
    if (next === null) return out;
    s = next;
  } while (s !== side);
  return out;
}

/** The ring that goes on from two sides in their plane, or null where it does not come back. */
function followPlane(
  shell: Shell,
  first: SideId,
  second: SideId,
  tolerance: number,
): SideId[] | null {
  const origin = point(shell, first);
  const normal = normalize(
    cross(
      subtract(point(shell, second), origin),
      subtract(point(shell, nextSide(shell, second)), origin),
    ),
  );
  const loop = [first, second];
  for (;;) {
    const last = loop[loop.length - 1] as SideId;
    const onward = sidesFrom(shell, nextSide(shell, last)).find(
      (side) =>
        side !== mateOf(shell, last) &&
        Math.abs(dot(normal, subtract(point(shell, nextSide(shell, side)), origin))) <= tolerance,
    );
    if (onward === undefined || mateOf(shell, onward) === null) return null;
    if (onward === first) return loop;
    if (loop.length > hubCount(shell) || loop.includes(onward)) return null;
    loop.push(onward);
  }
}

function ringOf(shell: Shell, loop: readonly SideId[]): FlatRing | null {
  const left = placesLeftOf(shell, loop);
  const small = left.length <= placeCount(shell) / 2;
  const sides = small ? loop : [...loop].reverse().map((side) => mateOf(shell, side) as SideId);
  const cap = small ? left : placesLeftOf(shell, sides);
  return cap.length > 1 && cap.length <= placeCount(shell) / 2 ? { sides, cap } : null;
}

function placesLeftOf(shell: Shell, loop: readonly SideId[]): PlaceId[] {
  const wall = new Set<SideId>(loop);
  const seen = new Set<PlaceId>();
  const queue = loop.map((side) => placeAt(shell, side));
  for (const place of queue) {
    if (seen.has(place)) continue;
    seen.add(place);
    for (const side of sidesOf(shell, place)) {
      const mate = mateOf(shell, side);
      if (mate !== null && !wall.has(side)) queue.push(placeAt(shell, mate));
    }
  }
  return [...seen];
}

function repeats(
  shell: Shell,
  sides: readonly SideId[],
  steps: number,
  tolerance: number,
): boolean {
  const length = (side: SideId): number => {
    const [dx, dy, dz] = subtract(point(shell, nextSide(shell, side)), point(shell, side));
    return Math.hypot(dx, dy, dz);
  };
  return sides.every((side, i) => {
    const other = sides[(i + steps) % sides.length] as SideId;
    return Math.abs(length(side) - length(other)) <= tolerance;
  });
}

/** Whether the part left (or right) of the ring, turned by so many steps, is itself again. */
function looksTheSame(
  shell: Shell,
  labels: ArrayLike<number>,
  ring: readonly SideId[],
  steps: number,
  part: 'left' | 'right',
): boolean {
  const own = (side: SideId): SideId => (part === 'left' ? side : (mateOf(shell, side) as SideId));
  const wall = new Set(ring.map(own));
  const image = new Map<SideId, SideId>();
  const queue: SideId[] = [own(ring[0] as SideId)];
  image.set(queue[0] as SideId, own(ring[steps] as SideId));
  for (const side of queue) {
    const to = image.get(side) as SideId;
    if (labels[side] !== labels[to] || wall.has(side) !== wall.has(to)) return false;
    const pairs: [SideId, SideId][] = [[nextSide(shell, side), nextSide(shell, to)]];
    if (!wall.has(side)) pairs.push([mateOf(shell, side) as SideId, mateOf(shell, to) as SideId]);
    for (const [from, onto] of pairs) {
      const there = image.get(from);
      if (there === undefined) {
        image.set(from, onto);
        queue.push(from);
      } else if (there !== onto) return false;
    }
  }
  return true;
}

function turnCap(shell: Shell, ring: FlatRing, steps: number): Shell {
  const rim = ring.sides.map((side) => hubAt(shell, side));
  const onto = new Map(rim.map((hub, i) => [hub, rim[(i + steps) % rim.length] as number]));
  const [a, b] = [point(shell, ring.sides[0] as SideId), point(shell, ring.sides[1] as SideId)];
  const c = point(shell, ring.sides[2] as SideId);
  const axis = normalize(cross(subtract(b, a), subtract(c, a)));
  const to = pointAt(shell.hubs, onto.get(rim[0] as never) as number);
  const angle = angleAbout(axis, a, to);
  const hubs = Float64Array.from(shell.hubs);
  const inCap = new Set<PlaceId>(ring.cap);
  const turned = new Set<number>();
  const places: PlaceDraft[] = [];
  for (let p = 0; p < placeCount(shell); p++) {
    const place = p as PlaceId;
    const own = hubsOf(shell, place);
    if (inCap.has(place))
      for (const hub of own)
        if (!onto.has(hub) && !turned.has(hub)) {
          turned.add(hub);
          hubs.set(rotateAbout(pointAt(shell.hubs, hub), axis, angle), 3 * hub);
        }
    places.push({
      hubs: inCap.has(place) ? own.map((hub) => onto.get(hub) ?? hub) : own,
      kind: shell.kind[p] as number,
      turn: shell.turn[p] as number,
    });
  }
  return makeShell({ radius: shell.radius, hubs, places });
}

/** Angle from a to b about a unit axis through the origin, radians. */
function angleAbout(axis: Vec3, a: Vec3, b: Vec3): number {
  const flat = (v: Vec3): Vec3 =>
    subtract(v, [axis[0] * dot(axis, v), axis[1] * dot(axis, v), axis[2] * dot(axis, v)]);
  const [p, q] = [flat(a), flat(b)];
  return Math.atan2(dot(axis, cross(p, q)), dot(p, q));
}
