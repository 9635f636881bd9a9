// What lies beyond the rim of a part: the named net that the part's hubs and seams are a piece of. The
// part's sides are laid on those of the named net, one first and the others over their seams; where that
// goes in one way alone, up to the net's rotations, the rest of the net is what lacks. Its hubs are
// where the named net has them when it is turned onto the part's.

import { turnOnto } from '../math/turn-onto.ts';
import { cross, distance, dot, norm, pointAt, scale, type Vec3 } from '../math/vector.ts';
import { divisions } from '../nets/division.ts';
import { type NetSpec, namedNet, placesPerFace } from '../nets/named.ts';
import { solidOf } from '../nets/solid.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import {
  hubCount,
  hubsOf,
  makeShell,
  mateOf,
  nextSide,
  placeCount,
  type Shell,
  sideCount,
} from '../shell/shell.ts';

/** A part laid on a named net. */
export interface NamedBeyond {
  readonly spec: NetSpec;
  /** The named net turned onto the part, at its radius. */
  readonly named: Shell;
  /** Side of the part → side of the named net. */
  readonly image: Int32Array;
  /** Root mean square distance of the part's hubs from those of the named net, metres. */
  readonly rms: number;
}

/** The number of places that the part's share of the sphere tells is right within this share. */
const COUNT_OFF = 0.15;
/** Hubs of a part lie within this share of its shortest side of those of its net, root mean square. */
const FAR = 0.12;
/** Another way to lay the part is none where its hubs are so many times as far off. */
const PLAINLY = 2;
/** Most steps along a face's edge. */
const MOST_STEPS = 9;

/** The named net that a part of triangles is a piece of; null where there is none, or several. */
export function namedBeyond(part: Shell): NamedBeyond | null {
  if (sideCount(part) !== 3 * placeCount(part)) return null;
  const found = specsFor(part).flatMap((spec) => layings(part, spec));
  found.sort((a, b) => a.rms - b.rms);
  const [best, ...others] = found;
  const shortest = Math.min(...Array.from(part.sideHub.keys(), (s) => lengthOf(part, s)));
  if (!best || best.rms > FAR * shortest) return null;
  const isOther = (one: NamedBeyond): boolean =>
    one.rms < PLAINLY * best.rms && !isSameNet(one.spec, best.spec);
  return others.some(isOther) ? null : best;
}

/** Divisions differ in where the hubs lie, not in how they hang together. */
const isSameNet = (a: NetSpec, b: NetSpec): boolean =>
  a.solid === b.solid && a.b === b.b && a.c === b.c;

/** Names of nets with about so many places as the part has on its share of the sphere. */
function specsFor(part: Shell): NetSpec[] {
  const share = areaOf(part) / (4 * Math.PI);
  const places = placeCount(part) / share;
  const specs: NetSpec[] = [];
  for (const solid of ['icosahedron', 'octahedron', 'tetrahedron'] as const)
    for (let b = 1; b <= MOST_STEPS; b++)
      for (let c = 0; c <= MOST_STEPS; c++) {
        const own = solidOf(solid).faces.length * placesPerFace(b, c);
        if (own < placeCount(part) || Math.abs(own / places - 1) > COUNT_OFF) continue;
        const plain = b * c === 0 ? divisions : (['equal chords'] as const);
        specs.push(...plain.map((division): NetSpec => ({ solid, b, c, division })));
      }
  return specs;
}

/** Solid angle of all places. */
function areaOf(shell: Shell): number {
  let sum = 0;
  for (let p = 0; p < placeCount(shell); p++) {
    const [a, b, c] = hubsOf(shell, p as PlaceId).map((hub) =>
      scale(pointAt(shell.hubs, hub), 1 / shell.radius),
    ) as [Vec3, Vec3, Vec3];
    sum += 2 * Math.atan2(dot(a, cross(b, c)), 1 + dot(a, b) + dot(b, c) + dot(c, a));
  }
  return sum;
}

const lengthOf = (shell: Shell, side: number): number =>
  distance(
    pointAt(shell.hubs, shell.sideHub[side] as number),
    pointAt(shell.hubs, shell.sideHub[nextSide(shell, side as SideId)] as number),
  );

/** The best way to lay the part on this net; one at most. */
function layings(part: Shell, spec: NetSpec): NamedBeyond[] {
  const net = namedNet(spec);
  const places = net.places.map((hubs) => ({ hubs: [...hubs], kind: 0, turn: 0 }));
  const named = makeShell({ radius: 1, hubs: net.hubs, places });
  let best: NamedBeyond | null = null;
  let second = Number.POSITIVE_INFINITY;
  for (let at = 0; at < sideCount(named); at++) {
    const image = sideImage(part, 0 as SideId, named, at as SideId);
    const turned = image && turnedOnto(part, named, image);
    if (!image || !turned) continue;
    if (best && Math.abs(turned.rms - best.rms) < SAME * part.radius) continue;
    second = Math.min(second, Math.max(turned.rms, best?.rms ?? Number.POSITIVE_INFINITY));
    if (!best || turned.rms < best.rms) best = { spec, image, ...turned };
  }
  return best && second > PLAINLY * best.rms ? [best] : [];
}

/** Ways whose hubs are as far off as this differ by a rotation of the net, share of the radius. */
const SAME = 1e-9;

/** Side of one shell → side of another, laid so that `start` falls on `at` and the others follow over
 * their seams; null where they do not fit, or two fall on one, or an open side's neighbour on one. */
export function sideImage(
  shell: Shell,
  start: SideId,
  other: Shell,
  at: SideId,
): Int32Array | null {
  const image = new Int32Array(sideCount(shell)).fill(-1);
  const taken = new Uint8Array(sideCount(other));
  const queue: SideId[] = [start];
  image[start] = at;
  taken[at] = 1;
  for (const side of queue) {
    const to = image[side] as SideId;
    const mate = mateOf(shell, side);
    const steps: [SideId, SideId | null][] = [[nextSide(shell, side), nextSide(other, to)]];
    if (mate !== null) steps.push([mate, mateOf(other, to)]);
    for (const [from, onto] of steps) {
      if (onto === null) return null;
      if (image[from] === -1) {
        if (taken[onto]) return null;
        image[from] = onto;
        taken[onto] = 1;
        queue.push(from);
      } else if (image[from] !== onto) return null;
    }
  }
  const isCovered = (side: number): boolean => {
    const beyond = mateOf(other, image[side] as SideId);
    return beyond !== null && taken[beyond] === 1;
  };
  for (let side = 0; side < image.length; side++)
    if (mateOf(shell, side as SideId) === null && isCovered(side)) return null;
  return queue.length === image.length ? image : null;
}

/** The named net turned onto the part, and how far off the part's hubs are then. */
function turnedOnto(
  part: Shell,
  named: Shell,
  image: Int32Array,
): Pick<NamedBeyond, 'named' | 'rms'> | null {
  const onto = new Int32Array(hubCount(part)).fill(-1);
  image.forEach((to, side) => {
    onto[part.sideHub[side] as number] = named.sideHub[to] as number;
  });
  const hubs = [...onto.keys()].filter((hub) => (onto[hub] as number) >= 0);
  const own = hubs.map((hub) => pointAt(part.hubs, hub));
  const theirs = hubs.map((hub) => scale(pointAt(named.hubs, onto[hub] as number), part.radius));
  const turn = turnOnto(theirs, own);
  if (!turn) return null;
  const squares = theirs.map((point, i) => {
    const there = turn(point);
    return norm([0, 1, 2].map((m) => (there[m] as number) - (own[i]?.[m] as number)) as never) ** 2;
  });
  const all = Array.from({ length: hubCount(named) }, (_, hub) =>
    turn(scale(pointAt(named.hubs, hub), part.radius)),
  );
  return {
    named: { ...named, radius: part.radius, hubs: Float64Array.from(all.flat()) },
    rms: Math.sqrt(squares.reduce((sum, x) => sum + x, 0) / squares.length),
  };
}
