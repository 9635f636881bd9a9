// Kinds of which nobody noted the face they were read from. Such a kind is offered both ways round:
// as read, and as its mirror image, an added kind with the very same readings. A net may use either
// or both. Where no face of any kind with a hand is known, every net comes with its mirror image;
// only one of the two is searched for and listed. Counts of such a kind are those of both hands
// together, and are compared with the places of both.

import { turned } from '../math/cyclic.ts';
import type { Kind } from '../pile/kind.ts';
import { fromOtherFace, nearestTurn } from '../pile/polygon.ts';
import type { WorkingKinds } from './canonical-kinds.ts';
import { FINEST_SD, type SideBelief } from './side-belief.ts';

/** Kinds with those that are offered the other way round. */
export interface OfferedHands {
  /** The question's kinds, then the added ones. */
  readonly kinds: readonly Kind[];
  /** Number of the question's kinds. */
  readonly own: number;
  /** Added kind, from `own` on → the question's kind that it is the other hand of. */
  readonly of: readonly number[];
  /** Kind → which kind it is in the mirror (itself where it is its own mirror image), and where its
   * sides lie on that one's; null where its mirror image is not among the kinds. */
  readonly inMirror: readonly (Reflected | null)[];
  /** Whether no kind that has a hand has a known face: every net then has a mirror image. */
  readonly allUnknown: boolean;
}

/** A kind as it is seen in the mirror. */
export interface Reflected {
  readonly kind: number;
  /** Side → the side of that kind that it is in the mirror. */
  readonly side: readonly number[];
}

/** Chi-square beyond which a kind is not its own mirror image: 2 standard deviations of the
 * difference of two sides, which counts twice, would be 8. */
const HANDED = 9;
/** Chi-square a side below which another kind of the question is taken for the other hand. */
const OTHER_HAND = 4;

/** The kinds with every one of unknown face that has a hand added the other way round, unless its
 * other hand is in the list already. */
export function offeredHands(own: readonly Kind[]): OfferedHands {
  const kinds = [...own];
  const of: number[] = [];
  const inMirror: (Reflected | null)[] = own.map((kind, k) =>
    selfMisfit(kind) <= HANDED ? { kind: k, side: onItself(kind) } : null,
  );
  const isHanded = own.map((_, k) => inMirror[k] === null);
  own.forEach((kind, k) => {
    if (inMirror[k] !== null || !mayBeOther(kind)) return;
    const there = own.findIndex((other, j) => j !== k && isHanded[j] && isOtherHand(kind, other));
    if (there >= 0) {
      const back = own[there] as Kind;
      inMirror[k] = { kind: there, side: onOther(kind, back) };
      inMirror[there] = { kind: k, side: onOther(back, kind) };
      return;
    }
    const n = kind.sides.length;
    const reversed = Array.from({ length: n }, (_, i) => n - 1 - i);
    inMirror[k] = { kind: kinds.length, side: reversed };
    inMirror.push({ kind: k, side: reversed });
    of.push(k);
    kinds.push(otherHandOf(kind, kinds));
  });
  const handed = own.filter((_, k) => isHanded[k]);
  return {
    kinds,
    own: own.length,
    of,
    inMirror,
    allUnknown: of.length > 0 && handed.every((kind) => kind.faceUnknown === true),
  };
}

const mayBeOther = (kind: Kind): boolean => kind.faceUnknown === true || kind.bothHands === true;

const variance = (kind: Kind, side: number): number =>
  Math.max(kind.sideSds[side] as number, FINEST_SD) ** 2;

function selfMisfit(kind: Kind): number {
  return misfitInMirror(kind, kind).cost;
}

/** The mirror image of `a` laid on `b`; the turn is that of the reversed list. */
function misfitInMirror(a: Kind, b: Kind): { turn: number; cost: number } {
  const n = a.sides.length;
  return nearestTurn(
    fromOtherFace(a.sides),
    b.sides,
    (i, j) => 1 / (variance(a, n - 1 - i) + variance(b, j)),
  );
}

const isOtherHand = (a: Kind, b: Kind): boolean =>
  misfitInMirror(a, b).cost <= OTHER_HAND * a.sides.length;

/** Side of `a` → the side of `b` that it lies on in the mirror. */
function onOther(a: Kind, b: Kind): number[] {
  const n = a.sides.length;
  const { turn } = misfitInMirror(a, b);
  const reversed = turned(
    Array.from({ length: n }, (_, i) => n - 1 - i),
    turn,
  );
  const side: number[] = [];
  reversed.forEach((of, at) => {
    side[of] = at;
  });
  return side;
}

const onItself = (kind: Kind): number[] => onOther(kind, kind);

/** The kind the other way round, under an id that no other has; it has no counts of its own. */
function otherHandOf(kind: Kind, kinds: readonly Kind[]): Kind {
  const { laps, holes, dihedrals } = kind;
  return {
    ...kind,
    id: otherId(kind.id, new Set(kinds.map((one) => one.id))),
    sides: fromOtherFace(kind.sides),
    sideSds: fromOtherFace(kind.sideSds),
    ...(laps && { laps: fromOtherFace(laps) }),
    ...(holes && { holes: fromOtherFace(holes) }),
    ...(dihedrals && { dihedrals: fromOtherFace(dihedrals) }),
    hand: kind.hand === 'L' ? 'R' : kind.hand === 'R' ? 'L' : null,
    good: 0,
    repair: 0,
    scrap: 0,
    counted: false,
  };
}

function otherId(id: string, taken: ReadonlySet<string>): string {
  const letter = /^(.*)([LR])$/.exec(id);
  const swapped = letter ? `${letter[1]}${letter[2] === 'L' ? 'R' : 'L'}` : null;
  if (swapped !== null && !taken.has(swapped)) return swapped;
  let free = `${id} mirrored`;
  while (taken.has(free)) free += "'";
  return free;
}

/** The readings with what is known of kinds offered both ways round; `working` holds the offered
 * kinds in working order. */
export function withBothWays(
  readings: SideBelief,
  working: WorkingKinds,
  hands: OfferedHands,
): SideBelief {
  if (hands.of.length === 0) return readings;
  const place = new Map(working.source.map((source, w) => [source, w]));
  const first: number[] = [];
  let sides = 0;
  for (const kind of working.kinds) {
    first.push(sides);
    sides += kind.sides.length;
  }
  const same = Array.from({ length: sides }, (_, s) => s);
  const isAdded = working.source.map((source) => source >= hands.own);
  working.source.forEach((source, w) => {
    if (source < hands.own) return;
    const base = place.get(hands.of[source - hands.own] as number) as number;
    const n = (working.kinds[w] as Kind).sides.length;
    for (let i = 0; i < n; i++) {
      const onSource = (i + (working.offset[w] as number)) % n;
      const onBase = (2 * n - 1 - onSource - (working.offset[base] as number)) % n;
      same[(first[w] as number) + i] = (first[base] as number) + onBase;
    }
  });
  return {
    ...readings,
    bothWays: {
      other: working.source.map((source) => {
        const at = hands.inMirror[source]?.kind ?? source;
        const isPair = at !== source && (at >= hands.own || source >= hands.own);
        return isPair ? (place.get(at) as number) : null;
      }),
      same,
      added: isAdded,
      mirrored: isAdded.map((added) => added && hands.allUnknown),
    },
  };
}

/** Places of each of the offered kinds, those of a kind and its other hand put together where they
 * share one count. In working order. */
export function placesTogether(
  places: readonly number[],
  bothWays: SideBelief['bothWays'],
): readonly number[] {
  if (!bothWays) return places;
  return places.map((count, k) => {
    const other = bothWays.other[k] ?? null;
    if (bothWays.added[k]) return 0;
    return other === null ? count : count + (places[other] as number);
  });
}
