// What laps and holes forbid. A side that nothing in the pile answers is told before any search.
// Where no net closes with the joints as they were noted, one is sought without them; the fewest
// sides whose joints contradict it are those to look at again. A net with fewer such sides is the
// more probable: each is a slip.

import type { Kind } from '../pile/kind.ts';
import type { SideId } from '../shell/ids.ts';
import { kindSide, placeAt, type Shell } from '../shell/shell.ts';
import { type Joints, jointsOf, mayJoin, type SideJoint } from './joints.ts';
import {
  type Identification,
  type JointConflict,
  kindsOfShape,
  type Shape,
  type ShapeQuestion,
} from './shape.ts';
import { FINEST_SD } from './side-belief.ts';

/** Sides that differ by more than this many standard deviations are not of one length. */
const GATE = 4.5;
/** Chance that the lap or the holes of a side were noted wrong: common practice, no source. */
const JOINT_SLIP = 0.01;
/** Most sides that the exact search for the fewest is made for. */
const MOST_EXACT = 8;

/** The answer to a question whose kinds may have laps or holes. `solve` answers one question. */
export function withConflicts(
  question: ShapeQuestion,
  solve: (question: ShapeQuestion) => Identification,
): Identification {
  const { kinds } = question;
  const joints = jointsOf(kinds);
  if (!joints) return solve(question);
  const unanswered = unansweredSides(kinds, joints);
  const found = unanswered.length > 0 ? null : solve(question);
  if (found && isWhole(found)) return found;
  const free = solve({ ...question, kinds: kinds.map(unlabelled) });
  if (free.shapes.length === 0 || (found && !isBetter(free, found)))
    return { ...(found ?? free), conflicts: unanswered };
  const cases = free.shapes.map((shape) => {
    const sides = fewestSides(contradictions(shape.shell, kindsOfShape(shape, kinds)));
    return { shape, sides, weight: shape.probability * JOINT_SLIP ** sides.length };
  });
  const unfound = Math.max(0, 1 - free.shapes.reduce((sum, one) => sum + one.probability, 0));
  const total = cases.reduce((sum, one) => sum + one.weight, 0);
  cases.sort((a, b) => b.weight - a.weight);
  const best = cases[0] as (typeof cases)[number];
  const conflicts = [
    ...unanswered,
    ...(unanswered.some((one) => isWithin(one, best.sides, kinds)) || best.sides.length === 0
      ? []
      : [conflictOf(best.sides, best.shape, kinds)]),
  ];
  return {
    ...free,
    shapes: cases.map(({ shape, weight }) => ({
      ...shape,
      probability: ((1 - unfound) * weight) / total,
    })),
    conflicts: conflicts.sort((a, b) => a.sides.length - b.sides.length),
  };
}

/** Whether the answer leaves nothing over and doubts nothing. */
const isWhole = ({ shapes }: Identification): boolean => {
  const [best] = shapes;
  return best !== undefined && best.strangers.length + best.suspects.length === 0;
};

const isBetter = (free: Identification, found: Identification): boolean => {
  const flaws = ({ shapes: [best] }: Identification): number =>
    best ? best.strangers.length + best.suspects.length + best.added.length : Infinity;
  return flaws(free) < flaws(found);
};

function unlabelled(kind: Kind): Kind {
  const { laps: _laps, holes: _holes, ...rest } = kind;
  return rest;
}

/** A side of a kind by index. */
interface KindSide {
  readonly kind: number;
  readonly side: number;
}

/** Sides whose joint nothing of their length answers, each a conflict of its own. */
function unansweredSides(kinds: readonly Kind[], joints: Joints): JointConflict[] {
  const all = kinds.flatMap((kind, k) => kind.sides.map((_, side) => ({ kind: k, side })));
  const joint = ({ kind, side }: KindSide): SideJoint =>
    (joints[kind] as SideJoint[])[side] as SideJoint;
  return all.flatMap((own): JointConflict[] => {
    const { lap, holes } = joint(own);
    if (lap === null && holes === null) return [];
    if (all.some((other) => isOneLength(kinds, own, other) && mayJoin(joint(own), joint(other))))
      return [];
    const noLap = !all.some(
      (other) =>
        isOneLength(kinds, own, other) &&
        mayJoin({ ...joint(own), holes: null }, { ...joint(other), holes: null }),
    );
    const has =
      lap !== null && noLap ? lapWords(lap) : `has ${holes} ${holes === 1 ? 'hole' : 'holes'}`;
    const wanted =
      lap !== null && noLap
        ? `no side of that length ${lap === 'over' ? 'laps under' : lap === 'under' ? 'laps over' : 'meets flush'}`
        : `no side of that length that could meet it has as many`;
    return [
      {
        sides: [named(kinds, own)],
        words: `${sideWords(kinds, own)} ${has}, and ${wanted}: look at it again`,
      },
    ];
  });
}

const lapWords = (lap: 'over' | 'under' | 'flush'): string =>
  lap === 'flush' ? 'meets flush' : `laps ${lap}`;

function isOneLength(kinds: readonly Kind[], a: KindSide, b: KindSide): boolean {
  const [x, y] = [kinds[a.kind] as Kind, kinds[b.kind] as Kind];
  const off = (x.sides[a.side] as number) - (y.sides[b.side] as number);
  const sd = Math.hypot(
    Math.max(FINEST_SD, x.sideSds[a.side] as number),
    Math.max(FINEST_SD, y.sideSds[b.side] as number),
  );
  return Math.abs(off) <= GATE * sd;
}

/** Pairs of kind-sides that the net joins although their joints do not go together, each once. */
function contradictions(shell: Shell, kinds: readonly Kind[]): (readonly [KindSide, KindSide])[] {
  const joints = jointsOf(kinds) as Joints;
  const at = (side: SideId): KindSide => ({
    kind: shell.kind[placeAt(shell, side)] as number,
    side: kindSide(shell, side),
  });
  const pairs = new Map<string, readonly [KindSide, KindSide]>();
  for (let i = 0; i < shell.seams.length; i += 2) {
    const pair = [at(shell.seams[i] as SideId), at(shell.seams[i + 1] as SideId)].sort(
      (a, b) => a.kind - b.kind || a.side - b.side,
    ) as [KindSide, KindSide];
    const [a, b] = pair.map(({ kind, side }) => joints[kind]?.[side] as SideJoint) as [
      SideJoint,
      SideJoint,
    ];
    if (!mayJoin(a, b)) pairs.set(pair.map(keyOf).join(), pair);
  }
  return [...pairs.values()];
}

const keyOf = ({ kind, side }: KindSide): string => `${kind}.${side}`;

/** The fewest kind-sides of which every pair has one: exact up to `MOST_EXACT`, beyond that the side
 * in most pairs first. */
export function fewestSides(pairs: readonly (readonly [KindSide, KindSide])[]): KindSide[] {
  for (let most = 0; most <= MOST_EXACT; most++) {
    const cover = coverWithin(pairs, most);
    if (cover) return cover;
  }
  const cover: KindSide[] = [];
  let left = pairs;
  while (left.length > 0) {
    const counts = new Map<string, { side: KindSide; n: number }>();
    for (const side of left.flat()) {
      const known = counts.get(keyOf(side));
      counts.set(keyOf(side), { side, n: (known?.n ?? 0) + 1 });
    }
    const { side } = [...counts.values()].reduce((a, b) => (b.n > a.n ? b : a));
    cover.push(side);
    left = without(left, side);
  }
  return cover;
}

function coverWithin(
  pairs: readonly (readonly [KindSide, KindSide])[],
  most: number,
): KindSide[] | null {
  const [pair] = pairs;
  if (!pair) return [];
  if (most === 0) return null;
  for (const side of new Map(pair.map((one) => [keyOf(one), one])).values()) {
    const rest = coverWithin(without(pairs, side), most - 1);
    if (rest) return [side, ...rest];
  }
  return null;
}

const without = (
  pairs: readonly (readonly [KindSide, KindSide])[],
  side: KindSide,
): (readonly [KindSide, KindSide])[] =>
  pairs.filter((pair) => !pair.some((one) => keyOf(one) === keyOf(side)));

const isWithin = (
  conflict: JointConflict,
  sides: readonly KindSide[],
  kinds: readonly Kind[],
): boolean =>
  sides.every((side) => {
    const { kind, side: i } = named(kinds, side);
    return conflict.sides.some((one) => one.kind === kind && one.side === i);
  });

function conflictOf(
  sides: readonly KindSide[],
  shape: Shape,
  kinds: readonly Kind[],
): JointConflict {
  const all = kindsOfShape(shape, kinds);
  const list = sides.map((side) => sideWords(all, side)).join(', ');
  const its = sides.length === 1 ? 'its lap and holes' : 'their laps and holes';
  return {
    sides: sides.map((side) => named(all, side)),
    words: `no shell closes with laps and holes as noted; one does if ${its} are left out of account: ${list}. Look there again`,
  };
}

const named = (
  kinds: readonly Kind[],
  { kind, side }: KindSide,
): JointConflict['sides'][number] => ({
  kind: (kinds[kind] as Kind).id,
  side,
});

const sideWords = (kinds: readonly Kind[], { kind, side }: KindSide): string =>
  `side ${side + 1} of kind ${(kinds[kind] as Kind).id}`;
