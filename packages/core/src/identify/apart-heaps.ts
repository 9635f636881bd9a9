// Two shells in one heap. No panel of one has a side as long as the other's but by chance, so kinds that
// are linked by sides of one length are one shell's. Where a net is found without some of the kinds,
// those may close into another on their own.

import type { Kind } from '../pile/kind.ts';
import { raisedTo } from './raised.ts';
import type { Identification, Shape, ShapeQuestion } from './shape.ts';
import { FINEST_SD } from './side-belief.ts';
import { asAsked, nothingWrong, supposed } from './suppose.ts';

/** Of answers of which the kinds left out close on their own, so many are right. */
const TRUST = 0.97;
/** The listed shapes of the other shell must together be this probable to be believed. */
const BELIEVED = 0.5;
/** Sides are as long as each other within this many deviations of their difference: first so that none
 * that are is missed, then ever nearer, so that fewer are by chance. */
const NEAR = [3.5, 3, 2.5, 2, 1.6, 1.3];

/** Lots of kinds (by index) that are linked by sides of one length, where these are not all; the
 * largest of the widest link first. `first`: by the widest alone. */
export function linkedLots(kinds: readonly Kind[], first: boolean): number[][] {
  const seen = new Set<string>();
  return NEAR.slice(0, first ? 1 : NEAR.length)
    .flatMap((within) => lotsOf(kinds, within))
    .filter((lot) => {
      const key = lot.join();
      const isNew = !seen.has(key) && lot.length < kinds.length && lot.length > 1;
      seen.add(key);
      return isNew;
    });
}

function lotsOf(kinds: readonly Kind[], within: number): number[][] {
  const lots: number[][] = [];
  const done = new Set<number>();
  for (const start of kinds.keys()) {
    if (done.has(start)) continue;
    const lot = [start];
    done.add(start);
    for (const k of lot)
      for (const other of kinds.keys()) {
        if (done.has(other)) continue;
        if (!areLinked(kinds[k] as Kind, kinds[other] as Kind, within)) continue;
        done.add(other);
        lot.push(other);
      }
    lots.push(lot.sort((a, b) => a - b));
  }
  return lots.sort((a, b) => b.length - a.length);
}

const areLinked = (a: Kind, b: Kind, within: number): boolean =>
  a.sides.some((x, i) =>
    b.sides.some((y, j) => Math.abs(x - y) <= within * Math.hypot(sdAt(a, i), sdAt(b, j))),
  );

const sdAt = ({ sideSds }: Kind, i: number): number => Math.max(sideSds[i] as number, FINEST_SD);

/** The answer with the shell that the best shape's unexplained strangers close into, where they do. */
export function withOtherShell(
  answer: Identification,
  question: ShapeQuestion,
  ask: (question: ShapeQuestion) => Identification,
): Identification {
  const [best] = answer.shapes;
  const odd = best ? unexplained(best) : [];
  if (!best || odd.length < 2 || answer.besides) return answer;
  const { kinds } = question;
  const own = new Set(kinds.flatMap(({ id }, k) => (odd.includes(id) ? [] : [k])));
  const what = { ...nothingWrong, leftOut: own };
  const found = ask(supposed(question, what));
  if (sumOf(found.shapes) < BELIEVED) return answer;
  const besides = withoutKinds(asAsked(found, question, what, 1), kinds, own);
  const used = new Set(besides.shapes[0]?.shell.kind);
  const others = new Set(kinds.flatMap(({ id }, k) => (used.has(k) ? [id] : [])));
  const shapes = answer.shapes.map((shape) => ({
    ...shape,
    explained: shape.explained.map((one) =>
      others.has(one.kind) && one.as === 'nothing'
        ? { kind: one.kind, as: 'other shell' as const }
        : one,
    ),
  }));
  const all = shapes[0] && unexplained(shapes[0]).length === 0;
  return { ...answer, shapes: all ? raisedTo(shapes, TRUST) : shapes, besides };
}

const unexplained = ({ explained }: Shape): string[] =>
  explained.flatMap(({ kind, as }) => (as === 'nothing' ? [kind] : []));

const sumOf = (shapes: readonly Shape[]): number =>
  shapes.reduce((sum, { probability }) => sum + probability, 0);

/** An answer to which some kinds (by index) do not belong: they are no strangers to it. */
function withoutKinds(
  answer: Identification,
  kinds: readonly Kind[],
  out: ReadonlySet<number>,
): Identification {
  const ids = new Set([...out].map((k) => (kinds[k] as Kind).id));
  const shapes = answer.shapes.map((shape) => ({
    ...shape,
    strangers: shape.strangers.filter((id) => !ids.has(id)),
    explained: shape.explained.filter(({ kind }) => !ids.has(kind)),
  }));
  return { ...answer, shapes };
}
