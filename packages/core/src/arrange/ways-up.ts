// The distinct ways up of a closed net: one for each hub, seam or place that no symmetry of the net
// takes to another. Each has a name made of kinds and a number that do not depend on how the net's
// hubs and places happen to be numbered, so that a decision keeps its meaning when the net is
// found anew.

import { turned } from '../math/cyclic.ts';
import { compareLists } from '../math/order.ts';
import type { Kind } from '../pile/kind.ts';
import { lowestCode } from '../shell/canonical.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import type { Crown, Lean } from '../shell/orient.ts';
import { placeAt, type Shell, sidesOf } from '../shell/shell.ts';
import { starsOf } from '../shell/stars.ts';
import {
  hubOrbits,
  placeOrbits,
  type Symmetry,
  seamOfSides,
  seamOrbits,
  symmetries,
} from '../shell/symmetry.ts';
import { type Family, familyIndex, labelsOf } from './families.ts';

/** What is uppermost. */
export type CrownAt = Crown['at'];

/** One way up. */
export interface WayUp {
  readonly at: CrownAt;
  /** Ids of the kinds at the crown, one for each family: those around the hub, anticlockwise seen
   * from outside; the two that meet in the seam; that of the place. */
  readonly kinds: readonly string[];
  /** Counts from 0 among the ways up with the same crown and kinds. */
  readonly orbit: number;
  /** The crown in the net, with the side that lies towards the datum. */
  readonly crown: Crown;
  /** How many hubs, seams or places of the net would do as well. */
  readonly alike: number;
  /** Index of the way up that is its mirror image, its own where it is one; null where the net's
   * mirror image is another net. */
  readonly mirror: number | null;
  /** How far off the crown what is uppermost lies; absent: not at all. As in `crown`. */
  readonly lean?: Lean;
}

/** The ways up of a net and the symmetry that joins the others to them. */
export interface WaysUp {
  readonly waysUp: readonly WayUp[];
  /** Number of rotations that lay the net on itself, with the one that moves nothing. */
  readonly rotations: number;
  /** These rotations. */
  readonly turns: readonly Symmetry[];
  /** True where the net is its own mirror image. */
  readonly mirrored: boolean;
}

/** All distinct ways up of a closed, sound net: hubs first, then places, then seams; within these
 * in the order of the kinds' list, then by the code of the whole net read from the crown. */
export function waysUpOf(
  shell: Shell,
  kinds: readonly Kind[],
  families: readonly Family[],
): WaysUp {
  const { labels, mirrored } = labelsOf(shell, kinds, families);
  const group = symmetries(shell, labels, { mirrored });
  const rotations = group.filter((g) => !g.reflected);
  const reflection = group.find((g) => g.reflected) ?? null;
  const family = familyIndex(kinds, families);
  const familyAt = (side: SideId): number =>
    family[shell.kind[placeAt(shell, side)] as number] as number;
  const found = orbitsOf(shell, rotations, reflection).map((orbit) => {
    const { side, code } = lowestCode(shell, labels, orbit.sides);
    return { ...orbit, side, code, families: orbit.around(side).map(familyAt) };
  });
  found.sort(
    (a, b) =>
      RANK[a.at] - RANK[b.at] ||
      compareLists(a.families, b.families) ||
      compareLists(a.code, b.code),
  );
  const waysUp = found.map((orbit, i): WayUp => {
    const same = found.slice(0, i).filter((o) => sameCrown(o, orbit)).length;
    const mirror = found.findIndex((o) => o.at === orbit.at && o.first === orbit.mirror);
    return {
      at: orbit.at,
      kinds: orbit.families.map((f) => kinds[families[f]?.kinds[0] as number]?.id as string),
      orbit: same,
      crown: { at: orbit.at, side: orbit.side },
      alike: orbit.alike,
      mirror: mirror < 0 ? null : mirror,
    };
  });
  return { waysUp, rotations: rotations.length, turns: rotations, mirrored: reflection !== null };
}

const RANK: Readonly<Record<CrownAt, number>> = { hub: 0, place: 1, seam: 2 };

interface Orbit {
  readonly at: CrownAt;
  /** Lowest element of the orbit, and of the orbit that a mirror takes it to (−1: none). */
  readonly first: number;
  readonly mirror: number;
  readonly alike: number;
  /** The sides that may name the crown. */
  readonly sides: readonly SideId[];
  /** The sides whose places stand at the crown, from the one that names it on. */
  readonly around: (from: SideId) => readonly SideId[];
}

function orbitsOf(
  shell: Shell,
  rotations: readonly Symmetry[],
  reflection: Symmetry | null,
): Orbit[] {
  const stars = starsOf(shell);
  const seamOf = seamOfSides(shell);
  const sidesOfSeam = (m: number): SideId[] =>
    [shell.seams[2 * m], shell.seams[2 * m + 1]] as SideId[];
  const hubs = orbitsAt(
    'hub',
    hubOrbits(shell, rotations),
    reflection && ((h) => reflection.hubs[h]),
    (h) => stars[h]?.corners ?? [],
  );
  const places = orbitsAt(
    'place',
    placeOrbits(shell, rotations),
    reflection && ((p) => reflection.places[p]),
    (p) => sidesOf(shell, p as PlaceId),
  );
  const seams = orbitsAt(
    'seam',
    seamOrbits(shell, rotations),
    reflection && ((m) => seamOf[reflection.sides[shell.seams[2 * m] as number] as number]),
    sidesOfSeam,
  );
  return [...hubs, ...places, ...seams];
}

/** Orbits of the hubs, places or seams: `orbit` gives the lowest element of each one's orbit,
 * `mirror` where a reflection takes it, where there is one. */
function orbitsAt(
  at: CrownAt,
  orbit: Int32Array,
  mirror: ((i: number) => number | undefined) | null,
  sidesAt: (i: number) => readonly SideId[],
): Orbit[] {
  const alike = new Map<number, number>();
  for (const first of orbit) alike.set(first, (alike.get(first) ?? 0) + 1);
  return [...alike].map(([first, count]) => {
    const sides = sidesAt(first);
    return {
      at,
      first,
      mirror: mirror ? (orbit[mirror(first) as number] as number) : -1,
      alike: count,
      sides,
      around: (from) => (at === 'place' ? [from] : turned(sides, sides.indexOf(from))),
    };
  });
}

function sameCrown(
  a: { readonly at: CrownAt; readonly families: readonly number[] },
  b: { readonly at: CrownAt; readonly families: readonly number[] },
): boolean {
  return a.at === b.at && compareLists(a.families, b.families) === 0;
}
