// What may be wrong with a pile, as a changed question: kinds left out, kinds with other sides, sides
// free to be wrong. The answer to the changed question is put back into the kinds of the one asked:
// what was left out is a stranger, what was changed is a mend. Metres.

import type { Kind } from '../pile/kind.ts';
import {
  type GrownPart,
  type Identification,
  type Mend,
  type Shape,
  type ShapeQuestion,
  strangerRenumbered,
} from './shape.ts';
import { FINEST_SD } from './side-belief.ts';
import { againFirst } from './telling.ts';

/** What is supposed of a pile; kinds by index. */
export interface Supposition {
  readonly leftOut: ReadonlySet<number>;
  /** Kind → its sides as they should have been written down, and the slip that made them what they
   * are. In the order of the kind's own. */
  readonly rewritten: ReadonlyMap<number, Rewritten>;
  /** Kind → sides (from 0) that may be wrong by some centimetres. */
  readonly doubted: ReadonlyMap<number, ReadonlySet<number>>;
}

/** Sides as they should have been written down. */
export interface Rewritten {
  readonly slip: Mend['slip'];
  readonly sides: readonly number[];
}

/** Nothing is wrong. */
export const nothingWrong: Supposition = {
  leftOut: new Set(),
  rewritten: new Map(),
  doubted: new Map(),
};

/** A mis-measured side is taken to be off by this much: one standard deviation. */
const BLUNDER_SD = 0.025;
/** Nobody is believed to have misread a side by more of these. */
const MOST_BLUNDER = 3;
/** A side is wrong where the net has it further off than this many deviations of its reading. */
const OFF = 4;

/** The question that a supposition makes of the one asked. */
export function supposed(question: ShapeQuestion, what: Supposition): ShapeQuestion {
  const out = new Set([...what.leftOut].map((k) => (question.kinds[k] as Kind).id));
  const has = (ids: readonly string[]): boolean => ids.some((id) => !out.has(id));
  const loose = question.looseGroups?.filter(({ around }) => around.every(has));
  return {
    ...question,
    kinds: question.kinds
      .map((kind, k) => supposedKind(kind, k, what))
      .filter((_, k) => !what.leftOut.has(k)),
    groups: question.groups.filter(({ around }) => !around.some((id) => out.has(id))),
    ...(loose && { looseGroups: loose }),
  };
}

function supposedKind(kind: Kind, k: number, { rewritten, doubted }: Supposition): Kind {
  const sides = rewritten.get(k)?.sides ?? kind.sides;
  const wrong = doubted.get(k);
  const sideSds = wrong
    ? kind.sideSds.map((sd, i) => (wrong.has(i) ? BLUNDER_SD : sd))
    : kind.sideSds;
  return { ...kind, sides, sideSds };
}

/** The answer to a supposed question as one to the question asked. `trust`: probability that the
 * supposition is right where its shapes fit. */
export function asAsked(
  answer: Identification,
  question: ShapeQuestion,
  what: Supposition,
  trust: number,
): Identification {
  const kept = question.kinds.flatMap((_, k) => (what.leftOut.has(k) ? [] : [k]));
  const shapes = answer.shapes.map((shape) => shapeAsked(shape, question, what, kept, trust));
  return {
    ...answer,
    shapes,
    settle: [...new Set([...againFirst(shapes[0]), ...answer.settle])],
    furthest: answer.furthest && partAsked(answer.furthest, kept),
  };
}

const partAsked = (part: GrownPart, kept: readonly number[]): GrownPart => ({
  ...part,
  kind: part.kind.map((k) => kept[k] as number),
});

function shapeAsked(
  shape: Shape,
  { kinds }: ShapeQuestion,
  what: Supposition,
  kept: readonly number[],
  trust: number,
): Shape {
  const at = (k: number): number => kept[k] ?? kinds.length + k - kept.length;
  const own = kinds.map((kind, k) => shape.fittedSides[kept.indexOf(k)] ?? kind.sides);
  const out = kinds.filter((_, k) => what.leftOut.has(k)).map(({ id }) => id);
  const strangers = new Set([...shape.strangers, ...out]);
  const mends = mendsOf(kinds, own, what).filter(({ kind }) => !strangers.has(kind));
  const mended = new Set(mends.map(({ kind }) => kind));
  return {
    ...shape,
    shell: { ...shape.shell, kind: shape.shell.kind.map(at) },
    fittedSides: [...own, ...shape.fittedSides.slice(kept.length)],
    probability: shape.probability * trust,
    strangers: kinds.map(({ id }) => id).filter((id) => strangers.has(id)),
    explained: [
      ...shape.explained.map((one) => strangerRenumbered(one, at)),
      ...out.map((kind) => ({ kind, as: 'nothing' as const })),
    ],
    added: shape.added.map((one) => (one.of === null ? one : { ...one, of: at(one.of) })),
    mends: [...shape.mends, ...mends],
    suspects: [
      ...mends.flatMap(({ kind, slip, sides, measured, expected }) =>
        slip !== 'length'
          ? []
          : sides.map((side) => ({
              kind,
              side,
              measured: measured[side] as number,
              expected: expected[side] as number,
            })),
      ),
      ...shape.suspects.filter(({ kind }) => !mended.has(kind)),
    ],
  };
}

/** What was wrong with the kinds that are taken to be wrong, by the sides that the net gives them. */
function mendsOf(
  kinds: readonly Kind[],
  fitted: readonly (readonly number[])[],
  { rewritten, doubted }: Supposition,
): Mend[] {
  const mends = kinds.flatMap((kind, k): Mend[] => {
    const expected = fitted[k] as readonly number[];
    const other = rewritten.get(k);
    const whole = { kind: kind.id, measured: kind.sides, expected };
    if (other) return [{ ...whole, slip: other.slip, sides: kind.sides.map((_, i) => i) }];
    const sides = [...(doubted.get(k) ?? [])].filter((i) => isOff(kind, i, expected));
    return sides.length === 0 ? [] : [{ ...whole, slip: 'length', sides }];
  });
  const worst = ({ measured, expected }: Mend): number =>
    Math.max(...measured.map((x, i) => Math.abs(x - (expected[i] as number))));
  return mends.sort((a, b) => worst(b) - worst(a));
}

/** Whether a reading is further off what it should be than readings are. */
export const isOff = (kind: Kind, side: number, expected: readonly number[]): boolean =>
  Math.abs((kind.sides[side] as number) - (expected[side] as number)) >
  OFF * Math.max(kind.sideSds[side] as number, FINEST_SD);

/** Whether a side would have been misread by more than one is. */
export const isTooFarOff = (kind: Kind, side: number, expected: readonly number[]): boolean =>
  Math.abs((kind.sides[side] as number) - (expected[side] as number)) > MOST_BLUNDER * BLUNDER_SD;
