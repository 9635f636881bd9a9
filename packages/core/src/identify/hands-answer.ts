// The answer for kinds offered both ways round, put back into the question's kinds: the other hands
// that a shape uses become its added kinds, those that it does not use are forgotten.

import type { Kind } from '../pile/kind.ts';
import { fromOtherFace } from '../pile/polygon.ts';
import { placesByKind } from '../shell/shell.ts';
import { handTest } from './hand-test.ts';
import type { OfferedHands } from './hands.ts';
import {
  type AddedKind,
  type GrownPart,
  type Identification,
  type IdentifyProgress,
  type Shape,
  strangerRenumbered,
} from './shape.ts';

/** An identification of the offered kinds as one of the question's kinds. */
export function settledHands(found: Identification, hands: OfferedHands): Identification {
  if (hands.of.length === 0) return found;
  const back = sidesBack(hands);
  return withHandLook(hands.kinds.slice(0, hands.own), {
    ...found,
    shapes: found.shapes.map((shape) => settledShape(shape, hands, back)),
    furthest: found.furthest && ownKinds(found.furthest, hands),
    stuck: found.stuck.map((one) => ({ ...one, ...back(one.kind, one.side) })),
    next: found.next.map((one) =>
      one.kind === null || one.side === null ? one : { ...one, ...back(one.kind, one.side) },
    ),
    conflicts: found.conflicts.map((conflict) => ({
      ...conflict,
      sides: conflict.sides.map(({ kind, side }) => back(kind, side)),
    })),
  });
}

/** The answer with the look that settles the best shape's hand, where that is open. It leaves the
 * shapes as probable as they are. */
function withHandLook(kinds: readonly Kind[], found: Identification): Identification {
  const [best] = found.shapes;
  const look = best ? handTest(best, kinds) : null;
  if (!look) return found;
  const odds = found.shapes.map((shape) => shape.probability);
  const none = Math.max(0, 1 - odds.reduce((sum, p) => sum + p, 0));
  const outcomes = look.next.outcomes.map(({ find }) => ({ find, shapes: [...odds, none] }));
  return {
    ...found,
    next: [{ ...look.next, outcomes }, ...found.next],
    settle: [look.next.words, ...found.settle],
  };
}

/** Progress with the part in the question's kinds. */
export const settledProgress = (
  progress: IdentifyProgress,
  hands: OfferedHands,
): IdentifyProgress =>
  progress.part === null || hands.of.length === 0
    ? progress
    : { ...progress, part: ownKinds(progress.part, hands) };

const parts = new WeakMap<GrownPart, GrownPart>();

/** The same object for the same part, as whoever watches asks whether it has grown. */
function ownKinds(part: GrownPart, hands: OfferedHands): GrownPart {
  const known = parts.get(part);
  if (known) return known;
  const made = {
    ...part,
    kind: part.kind.map((k) => (k < hands.own ? k : (hands.of[k - hands.own] as number))),
  };
  parts.set(part, made);
  return made;
}

type SideBack = (kind: string, side: number) => { kind: string; side: number };

/** A side of any offered kind as the side of the question's kind that was read. */
function sidesBack(hands: OfferedHands): SideBack {
  const base = baseOf(hands);
  return (kind, side) => {
    const own = base.get(kind);
    return own ? { kind: own.id, side: own.sides.length - 1 - side } : { kind, side };
  };
}

/** Id of an added kind → the question's kind that it is the other hand of. */
const baseOf = (hands: OfferedHands): ReadonlyMap<string, Kind> =>
  new Map(
    hands.of.map((of, i) => [(hands.kinds[hands.own + i] as Kind).id, hands.kinds[of] as Kind]),
  );

function settledShape(shape: Shape, hands: OfferedHands, back: SideBack): Shape {
  const { own, kinds } = hands;
  const offered = kinds.length;
  const places = placesByKind(shape.shell, offered);
  const cutFrom = shape.explained.flatMap((one) => (one.as === 'cut' ? [one.from] : []));
  const used = hands.of
    .map((_, i) => own + i)
    .filter((k) => (places[k] as number) > 0 || cutFrom.includes(k));
  const at = (k: number): number =>
    k < own ? k : k < offered ? own + used.indexOf(k) : own + used.length + k - offered;
  const base = baseOf(hands);
  const isUnused = (id: string): boolean => {
    const k = kinds.findIndex((kind) => kind.id === id);
    return k >= own && !used.includes(k);
  };
  const hasOther = new Set(used.map((k) => (kinds[hands.of[k - own] as number] as Kind).id));
  const isStranger = (id: string): boolean => !base.has(id) && !hasOther.has(id);
  const alike = shape.interchangeable.map((ids, i) => ({
    ids: ids.filter((id) => !isUnused(id)),
    cost: shape.interchangeCosts[i],
  }));
  const listed = alike.filter(({ ids }) => ids.length > 1);
  return {
    ...shape,
    shell: { ...shape.shell, kind: shape.shell.kind.map(at) },
    fittedSides: [
      ...shape.fittedSides.slice(0, own),
      ...used.map((k) => shape.fittedSides[k] as readonly number[]),
      ...shape.fittedSides.slice(offered),
    ],
    added: [
      ...used.map((k) => addedHand(k, places, hands)),
      ...shape.added.map((one) => (one.of === null ? one : { ...one, of: at(one.of) })),
    ],
    strangers: shape.strangers.filter(isStranger),
    explained: shape.explained
      .filter((one) => isStranger(one.kind))
      .map((one) => strangerRenumbered(one, at)),
    suspects: firstOfEach(shape.suspects.map((one) => ({ ...one, ...back(one.kind, one.side) }))),
    mends: firstOfEach(
      shape.mends.map((one) => {
        const kind = base.get(one.kind);
        if (!kind) return one;
        return {
          ...one,
          kind: kind.id,
          sides: one.sides.map((side) => kind.sides.length - 1 - side),
          measured: fromOtherFace(one.measured),
          expected: fromOtherFace(one.expected),
        };
      }),
    ),
    interchangeable: listed.map(({ ids }) => ids),
    interchangeCosts: listed.flatMap(({ cost }) => (cost === undefined ? [] : [cost])),
    freeTurns: shape.freeTurns.filter((id) => !isUnused(id)),
  };
}

/** The other hand with the part of the count that is its by places; it is among the count of the kind
 * as it was read. */
function addedHand(k: number, places: readonly number[], hands: OfferedHands): AddedKind {
  const of = hands.of[k - hands.own] as number;
  const read = hands.kinds[of] as Kind;
  const [own, both] = [places[k] as number, (places[k] as number) + (places[of] as number)];
  const part = (count: number): number => (both === 0 ? 0 : Math.round((count * own) / both));
  return {
    why: 'other hand',
    of,
    kind: {
      ...(hands.kinds[k] as Kind),
      good: part(read.good),
      repair: part(read.repair),
      scrap: part(read.scrap),
      counted: read.counted,
    },
  };
}

/** A reading counts both ways round, so what is said of it is said once. */
function firstOfEach<T extends { kind: string; side?: number }>(list: readonly T[]): T[] {
  const seen = new Set<string>();
  return list.filter(({ kind, side }) => {
    const key = JSON.stringify([kind, side ?? null]);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
