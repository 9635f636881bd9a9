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
import { fansOf, starsOf } from '../shell/stars.ts';

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
  const found = netsLike(part).flatMap((net) => layings(part, net));
  found.sort((a, b) => a.rms - b.rms);
  const [best, second] = found;
  const shortest = Math.min(...Array.from(part.sideHub.keys(), (s) => lengthOf(part, s)));
  if (!best || best.rms > FAR * shortest) return null;
  return second && second.rms < PLAINLY * best.rms ? null : best;
}

/** What a net hangs together by; divisions only differ in where its hubs lie. */
type Hanging = Omit<NetSpec, 'division'>;

/** Nets with about so many places as the part has on its share of the sphere. */
function netsLike(part: Shell): Hanging[] {
  const share = areaOf(part) / (4 * Math.PI);
  const places = placeCount(part) / share;
  const nets: Hanging[] = [];
  for (const solid of ['icosahedron', 'octahedron', 'tetrahedron'] as const)
    for (let b = 1; b <= MOST_STEPS; b++)
      for (let c = 0; c <= MOST_STEPS; c++) {
        const own = solidOf(solid).faces.length * placesPerFace(b, c);
        if (own < placeCount(part) || Math.abs(own / places - 1) > COUNT_OFF) continue;
        nets.push({ solid, b, c });
      }
  return nets;
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

/** The best way to lay the part on this net, in the division that is nearest; one at most. */
function layings(part: Shell, net: Hanging): NamedBeyond[] {
  const plain = namedShell({ ...net, division: 'equal chords' });
  const ways: NamedBeyond[] = [];
  const { start, corners } = oddSide(part);
  const starts = starsOf(plain).filter(
    (star) => corners === null || star.corners.length === corners,
  );
  for (const at of starts.flatMap((star) => star.corners)) {
    const image = sideImage(part, start, plain, at);
    const turned = image && turnedOnto(part, plain, image);
    if (!image || !turned) continue;
    // Ways whose hubs are as far off differ by a rotation of the net.
    if (ways.some(({ rms }) => Math.abs(turned.rms - rms) < SAME * part.radius)) continue;
    ways.push({ spec: { ...net, division: 'equal chords' }, image, ...turned });
  }
  ways.sort((a, b) => a.rms - b.rms);
  const [best, second] = ways;
  if (!best || (second && second.rms < PLAINLY * best.rms)) return [];
  const others = net.b * net.c === 0 ? divisions.slice(1) : [];
  const divided = others.flatMap((division): NamedBeyond[] => {
    const spec = { ...net, division };
    const turned = turnedOnto(part, namedShell(spec), best.image);
    return turned ? [{ spec, image: best.image, ...turned }] : [];
  });
  return [[best, ...divided].reduce((a, b) => (b.rms < a.rms ? b : a))];
}

/** A side at a hub of other than six corners and how many they are, as few hubs of a net are like it; null
 * and any side where the part has none. */
function oddSide(part: Shell): { readonly start: SideId; readonly corners: number | null } {
  const odd = fansOf(part)
    .flat()
    .find(({ closed, corners }) => closed && corners.length !== 6);
  return { start: odd?.corners[0] ?? (0 as SideId), corners: odd?.corners.length ?? null };
}

function namedShell(spec: NetSpec): Shell {
  const { hubs, places } = namedNet(spec);
  const drafts = places.map((own) => ({ hubs: own, kind: 0, turn: 0 }));
  return makeShell({ radius: 1, hubs, places: drafts });
}

/** Root mean squares nearer than this are of one way, share of the radius. */
const SAME = 1e-9;

/** Side of one shell → side of another, laid so that `start` falls on `at` and the others follow over
 * their seams; null where they do not fit, or two fall on one, or an open side's neighbour on one. */
export function sideImage(
  shell: Shell,
  start: SideId,
  other: Shell,
  at: SideId,
): Int32Array | null {
  // Most ways fail within a few steps, so what is known of the sides is in maps until one does not.
  const image = new Map<SideId, SideId>([[start, at]]);
  const taken = new Set<SideId>([at]);
  for (const [side, to] of image) {
    const mate = mateOf(shell, side);
    const steps: [SideId, SideId | null][] = [[nextSide(shell, side), nextSide(other, to)]];
    if (mate !== null) steps.push([mate, mateOf(other, to)]);
    for (const [from, onto] of steps) {
      if (onto === null) return null;
      const known = image.get(from);
      if (known === undefined) {
        if (taken.has(onto)) return null;
        image.set(from, onto);
        taken.add(onto);
      } else if (known !== onto) return null;
    }
  }
  if (image.size < sideCount(shell)) return null;
  for (const [side, to] of image) {
    if (mateOf(shell, side) !== null) continue;
    const beyond = mateOf(other, to);
    if (beyond !== null && taken.has(beyond)) return null;
  }
  return Int32Array.from({ length: image.size }, (_, side) => image.get(side as SideId) as number);
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
