// What the judges of all cases share: which true sides a shape's kinds have, whether a shape is the
// truth, and the outcome that follows.

import type { Identification, Shape } from '../../src/identify/shape.ts';
import { turned } from '../../src/math/cyclic.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { nearestTurn } from '../../src/pile/polygon.ts';
import { placeCount } from '../../src/shell/shell.ts';
import type { HardVerdict, Run } from './heap.ts';
import type { Written } from './rows.ts';
import { type KnownSides, liesOn } from './same-net.ts';

/** Sides nearer than this many deviations of a reading may stand for one another where the answer
 * lists exchanges or free turns or says that the mirror image fits as well, and those of the kinds that it lists where they are nearer than
 * the second. */
const WITHIN_NOISE = [2.5, 4] as const;

/** The radius must be this near, deviations, or the shape has the wrong size. */
const RADIUS_Z = 6;

/** A wanted kind's sides must be this near, deviations of theirs. */
const WANTED_Z = 5;

/** From this probability an answer is certain. */
export const CERTAIN = 0.9;

/** The truth that shapes are held against. */
export interface Truth {
  readonly net: NetShell;
  readonly rows: readonly Written[];
  readonly sd: number;
}

/** `whole`: the true ball. `part`: an open part of it. */
export type Likeness = 'whole' | 'part' | null;

/** Whether a shape is the truth. */
export function likeness(shape: Shape, kinds: readonly Kind[], truth: Truth): Likeness {
  const places = placeCount(shape.shell);
  if (shape.closed && places !== placeCount(truth.net.shell)) return null;
  const exact = 1e-7 * truth.net.shell.radius;
  const listed = new Set([...shape.interchangeable.flat(), ...shape.freeTurns]);
  const [all, some] = WITHIN_NOISE.map((z) => z * truth.sd) as [number, number];
  const loose = (kind: string): number => (listed.has(kind) ? some : all);
  const isLoose = listed.size > 0 || shape.hands === 'mirrored';
  for (const within of isLoose ? [() => exact, loose] : [() => exact])
    if (liesOn(shape.shell, knownSides(shape, kinds, truth, within), truth.net))
      return shape.closed ? 'whole' : 'part';
  return null;
}

/** Kind of the shape (the question's, then the added ones) → its true sides. */
function knownSides(
  shape: Shape,
  kinds: readonly Kind[],
  truth: Truth,
  within: (kind: string) => number,
): (KnownSides | null)[] {
  const byId = new Map(truth.rows.map((row) => [row.id, row]));
  const mended = new Set(shape.mends.map(({ kind }) => kind));
  const own = kinds.map((kind, k): KnownSides | null => {
    const row = byId.get(kind.id);
    if (row && row.kind < 0) return null;
    const plain = row && !mended.has(kind.id) && !kind.faceUnknown;
    const sides = plain
      ? inOrderOf(kind.sides, row)
      : nearestKind(shape.fittedSides[k] ?? kind.sides, truth.net, row?.kind);
    return { sides, within: within(kind.id) };
  });
  const added = shape.added.map(({ why, kind }, i): KnownSides => {
    const fitted = shape.fittedSides[kinds.length + i] ?? kind.sides;
    if (why === 'other hand')
      return { sides: nearestKind(fitted, truth.net), within: within(kind.id) };
    const sd = Math.max(truth.sd, ...kind.sideSds);
    return { sides: kind.sides, within: WANTED_Z * sd };
  });
  return [...own, ...added];
}

/** The true sides of a row in the order in which the question has them. */
function inOrderOf(sides: readonly number[], row: Written): number[] {
  const { turn } = nearestTurn(centred(row.sides), centred(sides));
  return turned(row.truth, turn);
}

const centred = (sides: readonly number[]): number[] => {
  const mean = sides.reduce((sum, x) => sum + x, 0) / sides.length;
  return sides.map((x) => x - mean);
};

/** The true kind nearest these sides, in their order; `kind` where it is known which. */
function nearestKind(sides: readonly number[], net: NetShell, kind?: number): number[] {
  const candidates = kind === undefined ? net.kinds : [net.kinds[kind] as (typeof net.kinds)[0]];
  let best: number[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (const { sides: own } of candidates) {
    const { turn, cost } = nearestTurn(own, sides);
    if (cost >= least) continue;
    least = cost;
    best = turned(own, turn);
  }
  return best;
}

const isLike = (like: Likeness, likes: readonly Likeness[]): boolean =>
  like !== null && likes.includes(like);

/** A demand of a case: whether it is met, and what lacks where it is not. */
export type Demand = readonly [met: boolean, lacks: string];

/** The outcome by which shapes are right and what the right one must say. */
export function verdictOf(
  answer: Identification,
  isRight: (shape: Shape) => boolean,
  demands: (shape: Shape) => readonly Demand[],
): HardVerdict {
  const { shapes } = answer;
  const [best] = shapes;
  if (!best) return { outcome: 'no', lacks: [], bestRight: null };
  const bestRight = isRight(best);
  const right = bestRight ? best : shapes.find(isRight);
  if (!right)
    return { outcome: isCertain(answer) ? 'certain' : 'wrong', lacks: [], bestRight: false };
  const lacks = demands(right)
    .filter(([met]) => !met)
    .map(([, what]) => what);
  return { outcome: lacks.length > 0 ? 'short' : 'right', lacks, bestRight };
}

/** Whether an answer would be taken for the truth: alone, complete, at 90 % or more. */
export const isCertain = ({ shapes, complete }: Identification): boolean =>
  shapes.length === 1 && complete && (shapes[0] as Shape).probability >= CERTAIN;

/** The usual judge: the whole ball (or an open part, where `likes` has it), and what the case
 * demands. */
export const wholeJudge =
  (
    truth: Truth,
    demands: (shape: Shape, run: Run) => readonly Demand[] = () => [],
    likes: readonly Likeness[] = ['whole'],
  ) =>
  (run: Run): HardVerdict =>
    verdictOf(
      run.answer,
      (shape) => isLike(likeness(shape, run.question.kinds, truth), likes),
      (shape) => [sizeDemand(shape, truth), ...demands(shape, run)],
    );

/** That a shape has the true size. */
export function sizeDemand({ radius, radiusSd }: Shape, { net }: Truth): Demand {
  const z = (radius - net.shell.radius) / radiusSd;
  return [Math.abs(z) < RADIUS_Z, `the true size (${z.toFixed(1)} sd off)`];
}

/** Two lists hold the same texts. */
export const sameSet = (a: readonly string[], b: readonly string[]): boolean =>
  new Set(a).size === new Set(b).size && a.every((x) => b.includes(x));
