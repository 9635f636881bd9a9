// Names a net after it has been assembled: counts its odd hubs, walks from one to the next for
// (b, c), lays the named net beside it and compares the lengths with every division's. The
// divisions that the readings can't tell apart are all named.

import { type Division, divisions } from '../nets/division.ts';
import { netShell } from '../nets/kinds.ts';
import { type NetSpec, placesPerFace } from '../nets/named.ts';
import type { SolidName } from '../nets/solid.ts';
import { sideLength } from '../shell/geometry.ts';
import type { SideId } from '../shell/ids.ts';
import {
  hubAt,
  hubCount,
  mateOf,
  nextSide,
  placeCount,
  type Shell,
  sideCount,
} from '../shell/shell.ts';
import { starsOf } from '../shell/stars.ts';
import type { Subdivision } from './shape.ts';

/** Solids by the number of corners at their odd hubs. */
const solids: readonly { name: SolidName; degree: number; hubs: number; faces: number }[] = [
  { name: 'icosahedron', degree: 5, hubs: 12, faces: 20 },
  { name: 'octahedron', degree: 4, hubs: 6, faces: 8 },
  { name: 'tetrahedron', degree: 3, hubs: 4, faces: 4 },
];

/** A named net fits where no length is further off than this many standard deviations. */
const FAR = 4;

/** A net's name, and what it says of the sides. */
export interface NamedSides {
  readonly subdivision: Subdivision;
  /** Side of the shell → exact length under the first of the named divisions, metres. */
  readonly lengths: Float64Array;
}

/** The subdivision that a net of triangles follows, or null. `sd`: standard deviation of a fitted
 * side, metres; two divisions nearer to each other than that are both named. */
export function nameNet(shell: Shell, sd: number): NamedSides | null {
  const grid = gridOf(shell);
  if (!grid) return null;
  const { start, ...steps } = grid;
  const names = fittingDivisions(shell, start, steps, sd);
  const [division] = names;
  const lengths = division && namedLengths(shell, start, { ...steps, division });
  return lengths ? { subdivision: { ...steps, division: names.join(' or ') }, lengths } : null;
}

/** The triangular grid on the faces of a solid that a net is, with a side from one of its odd hubs. */
function gridOf(shell: Shell): (Omit<NetSpec, 'division'> & { start: SideId }) | null {
  const stars = starsOf(shell);
  if (shell.sideHub.length !== 3 * placeCount(shell) || stars.some((star) => !star.closed))
    return null;
  const odd = stars.filter((star) => star.corners.length !== 6);
  const solid = solids.find(
    ({ hubs, degree }) =>
      odd.length === hubs && odd.every((star) => star.corners.length === degree),
  );
  if (!solid) return null;
  const isOdd = new Uint8Array(hubCount(shell));
  for (const star of odd) isOdd[star.hub] = 1;
  const starts = odd.flatMap((star) => star.corners);
  const steps = stepsBetween(shell, isOdd, starts, placeCount(shell) / solid.faces);
  return steps && { solid: solid.name, ...steps, start: starts[0] as SideId };
}

/** (b, c) such that from every odd hub, along each of its seams, b steps ahead, a turn of 60° to
 * the left and c steps on lead to an odd hub; null where there is none. */
function stepsBetween(
  shell: Shell,
  isOdd: Uint8Array,
  starts: readonly SideId[],
  perFace: number,
): { b: number; c: number } | null {
  for (let b = 1; b * b <= perFace; b++)
    for (let c = 0; placesPerFace(b, c) <= perFace; c++)
      if (placesPerFace(b, c) === perFace && starts.every((s) => leadsToOdd(shell, isOdd, s, b, c)))
        return { b, c };
  return null;
}

function leadsToOdd(shell: Shell, isOdd: Uint8Array, start: SideId, b: number, c: number): boolean {
  let side = start;
  for (let i = 1; i < b; i++) side = straightOn(shell, side);
  if (c > 0) side = leftOfStraight(shell, side);
  for (let i = 1; i < c; i++) side = straightOn(shell, side);
  return isOdd[hubAt(shell, nextSide(shell, side))] === 1;
}

/** Where a side leads to a hub of six: the side straight on. */
const straightOn = (shell: Shell, side: SideId): SideId =>
  clockwise(shell, leftOfStraight(shell, side));

/** The side 60° to the left of straight on; the next of the same place turns back, by 120°. */
const leftOfStraight = (shell: Shell, side: SideId): SideId =>
  clockwise(shell, nextSide(shell, side));

/** The side that starts at the same hub, one to the right. */
const clockwise = (shell: Shell, side: SideId): SideId =>
  nextSide(shell, mateOf(shell, side) as SideId);

function fittingDivisions(
  shell: Shell,
  start: SideId,
  steps: Omit<NetSpec, 'division'>,
  sd: number,
): Division[] {
  const allowed = steps.b * steps.c === 0 ? divisions : divisions.slice(0, 1);
  return allowed.filter((division) => misfitOf(shell, start, { ...steps, division }) <= FAR * sd);
}

/** Largest difference of a seam's length between the shell and a named net laid beside it; infinite
 * where the nets are not the same. */
function misfitOf(shell: Shell, start: SideId, spec: NetSpec): number {
  const lengths = namedLengths(shell, start, spec);
  if (!lengths) return Number.POSITIVE_INFINITY;
  return lengths.reduce(
    (most, length, s) => Math.max(most, Math.abs(length - sideLength(shell, s as SideId))),
    0,
  );
}

/** Side of the shell → its length in a named net laid beside it from one odd hub on, metres, at the
 * radius that fits best; null where the nets are not the same. */
function namedLengths(shell: Shell, start: SideId, spec: NetSpec): Float64Array | null {
  const named = netShell(spec, shell.radius).shell;
  const image = sameNet(shell, start, named);
  if (!image) return null;
  const lengths = Float64Array.from(image, (t) => sideLength(named, t as SideId));
  let both = 0;
  let own = 0;
  lengths.forEach((length, s) => {
    both += length * sideLength(shell, s as SideId);
    own += length ** 2;
  });
  return lengths.map((length) => (length * both) / own);
}

/** Side of one net → side of the other, laid beside it so that `start` falls on a side from an odd
 * hub of the other (its first hub, where a corner of the solid lies); null where they differ. */
function sameNet(shell: Shell, start: SideId, other: Shell): Int32Array | null {
  if (sideCount(shell) !== sideCount(other)) return null;
  const image = new Int32Array(sideCount(shell)).fill(-1);
  const queue: SideId[] = [start];
  image[start] = other.sideHub.indexOf(0);
  for (const side of queue) {
    const to = image[side] as SideId;
    for (const [from, onto] of [
      [nextSide(shell, side), nextSide(other, to)],
      [mateOf(shell, side), mateOf(other, to)],
    ] as const) {
      if (from === null || onto === null) return null;
      if (image[from] === -1) {
        image[from] = onto;
        queue.push(from);
      } else if (image[from] !== onto) return null;
    }
  }
  return image;
}
