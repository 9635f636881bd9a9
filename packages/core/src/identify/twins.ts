// Twins of a net: other nets of the very same panels. Where a closed ring of seams lies in a plane
// and its lengths repeat, what lies on one side of it can be turned by a step and bolted up again;
// every star at the ring still closes, since each side of the ring is unchanged. The flat equator
// of even class I nets is such a ring, and so is the rim of a cupola.

import {
  add,
  cross,
  dot,
  normalize,
  pointAt,
  rotateAbout,
  scale,
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

/** All rings of seams that pass a side of `starts`, lie in a plane within `tolerance` metres and have
 * more than one place on either side. */
export function flatRings(shell: Shell, starts: Iterable<number>, tolerance: number): FlatRing[] {
  const rings: FlatRing[] = [];
  const seen = new Set<number>();
  const key = (a: SideId, b: SideId): number => a * sideCount(shell) + b;
  for (const s of starts) {
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
 * `tolerance` metres and the turned cap is not the cap again; of rings that a rotation of the net
 * lays on each other, some are passed over. `labels`: side → label that says which panels may stand
 * for one another (alike.ts); `leader`: side → lowest side that sees the same net (net-code.ts). */
export function twinsOf(
  shell: Shell,
  labels: ArrayLike<number>,
  leader: Int32Array,
  tolerance: number,
): Twin[] {
  const twins: Twin[] = [];
  for (const ring of flatRings(shell, new Set(leader), tolerance))
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

/** The ring that goes on from two sides, each next side in the plane of the last three hubs; null
 * where it does not come back, or its hubs lie further than `tolerance` from their common plane. */
function followPlane(
  shell: Shell,
  first: SideId,
  second: SideId,
  tolerance: number,
): SideId[] | null {
  const loop = [first, second];
  for (;;) {
    const last = loop[loop.length - 1] as SideId;
    const onward = onwardInPlane(shell, loop[loop.length - 2] as SideId, last, tolerance);
    if (onward === null || mateOf(shell, onward) === null) return null;
    if (onward === first) break;
    if (loop.length > hubCount(shell) || loop.includes(onward)) return null;
    loop.push(onward);
  }
  const { normal, middle } = planeOf(shell, loop);
  const off = loop.map((side) => Math.abs(dot(normal, subtract(point(shell, side), middle))));
  return Math.max(...off) <= tolerance ? loop : null;
}

/** A hub this far (times the tolerance of the whole ring) from the plane of three others next to
 * it can't be of one plane with them. */
const NEAR_PLANE = 4;

function onwardInPlane(
  shell: Shell,
  before: SideId,
  last: SideId,
  tolerance: number,
): SideId | null {
  const origin = point(shell, last);
  const normal = normalize(
    cross(
      subtract(origin, point(shell, before)),
      subtract(point(shell, nextSide(shell, last)), origin),
    ),
  );
  const back = mateOf(shell, last);
  for (const side of sidesFrom(shell, nextSide(shell, last))) {
    const off = dot(normal, subtract(point(shell, nextSide(shell, side)), origin));
    if (side !== back && Math.abs(off) <= NEAR_PLANE * tolerance) return side;
  }
  return null;
}

/** The plane of a ring: its mean point and the direction of its vector area, towards the left. */
function planeOf(shell: Shell, loop: readonly SideId[]): { normal: Vec3; middle: Vec3 } {
  let area: Vec3 = [0, 0, 0];
  let sum: Vec3 = [0, 0, 0];
  for (const side of loop) {
    const from = point(shell, side);
    area = add(area, cross(from, point(shell, nextSide(shell, side))));
    sum = add(sum, from);
  }
  return { normal: normalize(area), middle: scale(sum, 1 / loop.length) };
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
  const axis = planeOf(shell, ring.sides).normal;
  const to = point(shell, ring.sides[steps] as SideId);
  const angle = angleAbout(axis, point(shell, ring.sides[0] as SideId), to);
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
  const flat = (v: Vec3): Vec3 => subtract(v, scale(axis, dot(axis, v)));
  const [p, q] = [flat(a), flat(b)];
  return Math.atan2(dot(axis, cross(p, q)), dot(p, q));
}
