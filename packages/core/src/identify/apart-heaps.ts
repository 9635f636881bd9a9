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

/** Most links that may be by chance, and most links of a heap of which that is supposed. */
const MOST_CHANCE = 3;
const MOST_LINKS = 60;
/** Sides that may lose all that they met, where links are taken to be by chance. */
const MOST_LOST = 1;

/** Lots of kinds (by index) that are linked by sides of one length, where these are not all; the
 * largest of the widest link first. `first`: by the widest alone; else then those that are linked but
 * for a few links, first where fewest sides lose all that they met. */
export function linkedLots(kinds: readonly Kind[], first: boolean): number[][] {
  const nears = first ? NEAR.slice(0, 1) : NEAR;
  const lots = nears.flatMap((within) => lotsOf(kinds.length, linksOf(kinds, within)));
  const seen = new Set<string>();
  return [...lots, ...(first ? [] : lotsButForChance(kinds))].filter((lot) => {
    const key = lot.join();
    const isNew = !seen.has(key) && lot.length < kinds.length;
    seen.add(key);
    return isNew;
  });
}

/** Two kinds that have sides of one length. */
type Link = readonly [number, number];

function linksOf(kinds: readonly Kind[], within: number): Link[] {
  return kinds.flatMap((a, k) =>
    kinds.flatMap((b, l): Link[] => (k < l && areLinked(a, b, within) ? [[k, l]] : [])),
  );
}

/** The kinds that hang together, the largest lot first. */
function lotsOf(count: number, links: readonly Link[]): number[][] {
  const lot = Array.from({ length: count }, (_, k) => k);
  const root = (k: number): number => {
    let at = k;
    while (lot[at] !== at) at = lot[at] as number;
    return at;
  };
  for (const [a, b] of links) lot[Math.max(root(a), root(b))] = Math.min(root(a), root(b));
  const lots = new Map<number, number[]>();
  for (const k of lot.keys()) lots.set(root(k), [...(lots.get(root(k)) ?? []), k]);
  return [...lots.values()].sort((a, b) => b.length - a.length);
}

/** The larger lots of kinds that fall into two without a few links. */
function lotsButForChance(kinds: readonly Kind[]): number[][] {
  const links = linksOf(kinds, CHANCE_NEAR);
  if (links.length > MOST_LINKS) return [];
  const found = new Map<string, { readonly lot: number[]; readonly lost: number }>();
  const without = (from: number, left: readonly Link[], depth: number): void => {
    for (let i = from; i < left.length; i++) {
      const rest = left.filter((_, j) => j !== i);
      const [lot = [], other = [], ...more] = lotsOf(kinds.length, rest);
      if (more.length === 0 && other.length > 1 && !found.has(lot.join()))
        found.set(lot.join(), { lot, lost: lostSides(kinds, lot, other) });
      if (depth > 1 && other.length === 0) without(i, rest, depth - 1);
    }
  };
  without(0, links, MOST_CHANCE);
  return [...found.values()]
    .filter(({ lost }) => lost <= MOST_LOST)
    .sort((a, b) => a.lost - b.lost)
    .map(({ lot }) => lot);
}

/** Within so many deviations sides are linked, when some links are taken to be by chance. */
const CHANCE_NEAR = 3;

/** How many sides met only sides of the other lot. */
function lostSides(
  kinds: readonly Kind[],
  lot: readonly number[],
  other: readonly number[],
): number {
  const meets = (k: number, i: number, l: number): boolean =>
    (kinds[l] as Kind).sides.some(
      (_, j) => !(k === l && i === j) && areNear(kinds[k] as Kind, i, kinds[l] as Kind, j),
    );
  const lostOf = (own: readonly number[], others: readonly number[]): number =>
    own.reduce(
      (sum, k) =>
        sum +
        (kinds[k] as Kind).sides.filter(
          (_, i) => !own.some((l) => meets(k, i, l)) && others.some((l) => meets(k, i, l)),
        ).length,
      0,
    );
  return lostOf(lot, other) + lostOf(other, lot);
}

const areNear = (a: Kind, i: number, b: Kind, j: number, within = CHANCE_NEAR): boolean =>
  Math.abs((a.sides[i] as number) - (b.sides[j] as number)) <=
  within * Math.hypot(sdAt(a, i), sdAt(b, j));

const areLinked = (a: Kind, b: Kind, within: number): boolean =>
  a.sides.some((_, i) => b.sides.some((_, j) => areNear(a, i, b, j, within)));

const sdAt = ({ sideSds }: Kind, i: number): number => Math.max(sideSds[i] as number, FINEST_SD);

/** The answer with the shell that the best shape's unexplained strangers close into, where they do. */
export function withOtherShell(
  answer: Identification,
  question: ShapeQuestion,
  ask: (question: ShapeQuestion) => Identification,
): Identification {
  const [best] = answer.shapes;
  const odd = best ? unexplained(best) : [];
  if (!best || odd.length === 0 || answer.besides) return answer;
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
