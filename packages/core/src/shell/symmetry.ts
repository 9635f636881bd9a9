// The ways in which a shell can be laid upon itself so that every side meets a side of the same
// label. Combinatorial: no coordinates are read. One side and its image settle all the rest, so
// each candidate image of one rare side is carried through the shell once, in linear time.

import { endHubAt } from './geometry.ts';
import type { SideId } from './ids.ts';
import {
  hubCount,
  nextSide,
  placeCount,
  previousSide,
  type Shell,
  seamCount,
  sideCount,
} from './shell.ts';

/** One way to lay a shell upon itself: where each side, hub and place comes to lie. */
export interface Symmetry {
  /** True for a mirror image, false for a rotation. */
  readonly reflected: boolean;
  readonly sides: Int32Array;
  /** A loose hub stays. */
  readonly hubs: Int32Array;
  readonly places: Int32Array;
}

/** Options of `symmetries`. */
export interface SymmetryOptions {
  /** Side → label that the side bears in a mirror; when given, mirror images are sought too. */
  readonly mirrored?: ArrayLike<number>;
}

/** All rotations (the identity first), then the mirror images if asked for. `labels` gives each
 * side a whole number that a symmetry must keep: same kind and same side of it, sides that a turn
 * of the panel makes equal sharing one label. Throws for a shell in several pieces. */
export function symmetries(
  shell: Shell,
  labels: ArrayLike<number>,
  options: SymmetryOptions = {},
): Symmetry[] {
  const links = linksOf(shell);
  if (sideCount(shell) === 0) return [];
  const rare = rarestSide(shell, labels);
  const identity = carry(links, labels, labels, rare, rare, false);
  if (!identity || identity.includes(-1)) throw new Error('symmetries need a shell in one piece');
  const found = [symmetryOf(shell, identity, false)];
  for (let image = 0; image < sideCount(shell); image++) {
    if (image === rare) continue;
    const sides = carry(links, labels, labels, rare, image, false);
    if (sides) found.push(symmetryOf(shell, sides, false));
  }
  const { mirrored } = options;
  if (!mirrored) return found;
  for (let image = 0; image < sideCount(shell); image++) {
    const sides = carry(links, labels, mirrored, rare, image, true);
    if (sides) found.push(symmetryOf(shell, sides, true));
  }
  return found;
}

/** Hub → lowest hub of its orbit under a group of symmetries. */
export const hubOrbits = (shell: Shell, group: readonly Symmetry[]): Int32Array =>
  orbits(
    hubCount(shell),
    group.map((g) => g.hubs),
  );

/** Place → lowest place of its orbit. */
export const placeOrbits = (shell: Shell, group: readonly Symmetry[]): Int32Array =>
  orbits(
    placeCount(shell),
    group.map((g) => g.places),
  );

/** Seam → lowest seam of its orbit; the two sides of a seam are not told apart. */
export function seamOrbits(shell: Shell, group: readonly Symmetry[]): Int32Array {
  const seam = seamOfSides(shell);
  const images = group.map((g) =>
    Int32Array.from(
      { length: seamCount(shell) },
      (_, m) => seam[g.sides[shell.seams[2 * m] as number] as number] as number,
    ),
  );
  return orbits(seamCount(shell), images);
}

/** Side → its seam, −1 where it is open. */
export function seamOfSides(shell: Shell): Int32Array {
  const seam = new Int32Array(sideCount(shell)).fill(-1);
  shell.seams.forEach((side, i) => {
    seam[side] = i >> 1;
  });
  return seam;
}

/** Of a whole group: each thing's lowest image. */
function orbits(count: number, images: readonly Int32Array[]): Int32Array {
  return Int32Array.from({ length: count }, (_, i) =>
    images.reduce((lowest, image) => Math.min(lowest, image[i] as number), i),
  );
}

interface Links {
  readonly next: Int32Array;
  readonly previous: Int32Array;
  readonly mate: Int32Array;
}

function linksOf(shell: Shell): Links {
  const length = sideCount(shell);
  return {
    next: Int32Array.from({ length }, (_, s) => nextSide(shell, s as SideId)),
    previous: Int32Array.from({ length }, (_, s) => previousSide(shell, s as SideId)),
    mate: shell.mate,
  };
}

/** The map of sides that sends `from` to `to`, −1 for sides of other pieces; null where labels or
 * adjacency forbid it. A mirror image runs round each place the other way. */
function carry(
  links: Links,
  labels: ArrayLike<number>,
  imageLabels: ArrayLike<number>,
  from: number,
  to: number,
  reflected: boolean,
): Int32Array | null {
  const { next, mate } = links;
  const step = reflected ? links.previous : links.next;
  const image = new Int32Array(next.length).fill(-1);
  const stack = [from];
  image[from] = to;
  const meet = (side: number, at: number): boolean => {
    if (image[side] === -1) {
      image[side] = at;
      stack.push(side);
    }
    return image[side] === at;
  };
  for (let s = stack.pop(); s !== undefined; s = stack.pop()) {
    const t = image[s] as number;
    if (labels[s] !== imageLabels[t]) return null;
    if (!meet(next[s] as number, step[t] as number)) return null;
    const [m, n] = [mate[s] as number, mate[t] as number];
    if (m < 0 !== n < 0) return null;
    if (m >= 0 && !meet(m, n)) return null;
  }
  return image;
}

/** The side whose surroundings are rarest, so that few images need a try. */
function rarestSide(shell: Shell, labels: ArrayLike<number>): number {
  const corners = new Int32Array(hubCount(shell));
  for (const hub of shell.sideHub) corners[hub] = (corners[hub] as number) + 1;
  const keys = Array.from(shell.mate, (mate, s) => {
    const hub = shell.sideHub[s] as number;
    return `${labels[s]},${mate < 0 ? 'open' : labels[mate]},${corners[hub]}`;
  });
  const count = new Map<string, number>();
  for (const key of keys) count.set(key, (count.get(key) ?? 0) + 1);
  const least = Math.min(...count.values());
  return keys.findIndex((key) => count.get(key) === least);
}

function symmetryOf(shell: Shell, sides: Int32Array, reflected: boolean): Symmetry {
  const hubs = Int32Array.from({ length: hubCount(shell) }, (_, h) => h);
  const places = new Int32Array(placeCount(shell));
  sides.forEach((image, s) => {
    const at = image as SideId;
    hubs[shell.sideHub[s] as number] = reflected
      ? endHubAt(shell, at)
      : (shell.sideHub[at] as number);
    places[shell.sidePlace[s] as number] = shell.sidePlace[at] as number;
  });
  return { reflected, sides, hubs, places };
}
