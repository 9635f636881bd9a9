// The lowest panels were cut by the ground. Before a net is known: which kinds look cut, so that the
// others can be tried alone. Once it is: the plane that explains the kinds that it has no place for,
// and how much likelier that makes the net.

import type { Kind } from '../pile/kind.ts';
import { placeCount } from '../shell/shell.ts';
import { type CutFit, cutFits } from './cut-panels.ts';
import { countOf, lengthLabels, type PlaneFound, planeThrough } from './cut-plane.ts';
import type { Identification, Shape } from './shape.ts';
import { FINEST_SD } from './side-belief.ts';

/** Of answers whose strangers are all explained as cut, so many are right. */
const TRUST = 0.97;
/** Shapes whose strangers are looked at. */
const MOST_SHAPES = 12;
/** Sum of squares that a stranger costs which the plane does not explain. */
const UNEXPLAINED = 30;
/** The fitted net is known better than one reading: its error's share in the deviation of a side. The
 * errors of many sides nearly cancel in the height of the plane: in seeded trials a tenth of a reading
 * is left. */
const NET_SHARE = { side: 0.6, height: 0.1 };

/** The answer with its strangers explained as panels that the ground cut, where a plane does. */
export function withCutBase(answer: Identification, kinds: readonly Kind[]): Identification {
  const looked = answer.shapes
    .slice(0, MOST_SHAPES)
    .map((shape) => ({ shape, plane: oddOf(shape).length > 0 ? planeOf(shape, kinds) : null }));
  if (!looked.some(({ plane }) => plane)) return answer;
  const told = looked.map(({ shape, plane }) =>
    plane ? shapeOnGround(shape, kinds, plane) : shape,
  );
  const rest = answer.shapes.slice(MOST_SHAPES);
  const costs = looked.map(({ shape, plane }) => costOf(shape, plane));
  const least = Math.min(...costs);
  const weights = told.map(
    ({ probability }, i) => probability * Math.exp(-((costs[i] as number) - least) / 2),
  );
  const sum = weights.reduce((a, b) => a + b, 0);
  const before = told.reduce((a, { probability }) => a + probability, 0);
  const best = looked[costs.indexOf(least)] as (typeof looked)[0];
  const all = best.plane !== null && countOf(best.plane) === oddOf(best.shape).length;
  const total = all ? Math.max(before, TRUST) : before;
  const shapes = told
    .map((shape, i) => ({ ...shape, probability: (total * (weights[i] as number)) / sum }))
    .filter(({ probability }) => probability >= LEAST_PROBABILITY)
    .sort((a, b) => b.probability - a.probability);
  return { ...answer, shapes: all ? shapes : [...shapes, ...rest] };
}

/** Shapes less probable than this are not listed. */
const LEAST_PROBABILITY = 0.005;

/** Strangers that the ground may have cut: those that are no misread panels. */
const oddOf = ({ explained }: Shape): string[] =>
  explained.flatMap(({ kind, as }) => (as === 'misread' ? [] : [kind]));

function costOf(shape: Shape, plane: PlaneFound | null): number {
  const count = plane ? countOf(plane) : 0;
  return (
    (plane?.chi2 ?? 0) + 4 * (plane?.lacking ?? 0) + UNEXPLAINED * (oddOf(shape).length - count)
  );
}

/** Of the sorts of panel that a plane would cut, so many may be lacking for each that is there: any one
 * panel with a corner of the ball's lies on some plane, the others that it would cut do not. */
const LACKING = 1 / 3;

/** The plane that explains at least two strangers, or all, and that cuts hardly any sort of panel which
 * is not there; null for none. */
function planeOf(shape: Shape, kinds: readonly Kind[]): PlaneFound | null {
  const { shell, fittedSides } = shape;
  const strangers = oddOf(shape);
  if (placeCount(shell) === 0) return null;
  const used = [...new Set(shell.kind)];
  const panels = strangersOf(strangers, kinds).map(({ sides, sideSds }) => ({
    sides,
    sds: sideSds.map((sd) => Math.max(sd, FINEST_SD) * Math.hypot(1, NET_SHARE.side)),
    fits: used.flatMap((k) => {
      const own = fittedSides[k] as readonly number[];
      return cutFits({ sides, sideSds }, { sides: own, sideSds: own.map(() => FINEST_SD) }, k);
    }),
  }));
  const found = planeThrough(shell, lengthLabels(shell, fittedSides), panels);
  if (!found || countOf(found) < Math.min(2, strangers.length)) return null;
  return found.lacking <= LACKING * countOf(found) ? found : null;
}

const strangersOf = (ids: readonly string[], kinds: readonly Kind[]): Kind[] =>
  ids.map((id) => kinds.find((kind) => kind.id === id) as Kind);

function shapeOnGround(shape: Shape, kinds: readonly Kind[], plane: PlaneFound): Shape {
  const { up, height, baseRadius } = plane;
  const odd = oddOf(shape);
  const readingSd = Math.min(...kinds.flatMap(({ sideSds }) => sideSds));
  const heightSd = Math.hypot(
    plane.heightSd,
    (shape.radiusSd * height) / shape.radius,
    NET_SHARE.height * Math.max(readingSd, FINEST_SD),
  );
  return {
    ...shape,
    cut: { up, height, heightSd, baseRadius },
    explained: shape.explained.map((one) => {
      const cut = plane.explained[odd.indexOf(one.kind)];
      return cut ? { kind: one.kind, as: 'cut' as const, ...cut } : one;
    }),
  };
}

/** Sets of kinds (by index) that may be all the cut ones, the likeliest first; empty where none looks
 * cut. */
export function cutLooking(kinds: readonly Kind[]): number[][] {
  const all = kinds.map((_, k) => k);
  const usual = Math.min(...kinds.map(({ sides }) => sides.length));
  const many = all.filter((k) => (kinds[k] as Kind).sides.length > usual);
  const few = all.filter((one) => !many.includes(one));
  const sure = many.filter((k) => fitsOf(kinds, k, few).length > 0);
  if (sure.length === 0) return [];
  const sets: number[][] = [];
  const starts = sure.length < many.length ? [many, sure] : [sure];
  for (const given of starts)
    for (const twins of [true, false]) {
      const strict = [...given, ...inRing(kinds, given, twins, false)];
      const loose = [...strict, ...inRing(kinds, strict, twins, true)];
      for (const out of loose.length > strict.length ? [strict, loose] : [strict]) {
        const left = all.filter((k) => !out.includes(k));
        sets.push([...out].sort((a, b) => a - b));
        for (const part of connected(kinds, left)) sets.push(all.filter((k) => !part.includes(k)));
      }
    }
  for (const given of starts)
    for (const twins of [false, true]) {
      const out = peeled(kinds, given, twins);
      sets.push(all.filter((k) => out.has(k)));
      for (const k of [...out].reverse().filter((one) => !given.includes(one)))
        sets.push(all.filter((one) => one !== k && out.has(one)));
    }
  const seen = new Set<string>();
  return sets.filter((set) => {
    const key = set.join();
    const isNew = !seen.has(key) && set.length < kinds.length;
    seen.add(key);
    return isNew;
  });
}

/** How a kind may have been cut from others. */
const fitsOf = (kinds: readonly Kind[], k: number, others: readonly number[]): CutFit[] =>
  others.flatMap((other) =>
    other === k ? [] : cutFits(kinds[k] as Kind, kinds[other] as Kind, other),
  );

/** Its sides that no other side of some kinds is as long as. */
function lonelyOf(
  kinds: readonly Kind[],
  k: number,
  among: readonly number[],
  twins: boolean,
): number[] {
  const partners = among.filter((one) => !twins || one === k || !areTwins(kinds, k, one));
  return (kinds[k] as Kind).sides.flatMap((_, i) =>
    partners.some((one) => meets(kinds, k, i, one)) ? [] : [i],
  );
}

/** The kinds besides those given that look cut, and whose pieces of sides others' pieces meet: what is
 * left of a side that ends in a corner meets what is left of one that starts there. The cut is as long
 * as no other side, or, where `loose`, one of the pieces is as long as no whole side. */
function inRing(
  kinds: readonly Kind[],
  given: readonly number[],
  twins: boolean,
  loose: boolean,
): number[] {
  const others = [...kinds.keys()].filter((k) => !given.includes(k));
  let ring = [...kinds.keys()].flatMap((k) => {
    const lonely = lonelyOf(kinds, k, others, twins);
    const n = (kinds[k] as Kind).sides.length;
    return fitsOf(kinds, k, others)
      .filter(
        ({ cutSide: c }) =>
          given.includes(k) ||
          lonely.includes(c) ||
          (loose && (lonely.includes((c + 1) % n) || lonely.includes((c + n - 1) % n))),
      )
      .map((fit) => ({ k, ...fit, sd: Math.max(...(kinds[k] as Kind).sideSds, FINEST_SD) }));
  });
  for (let before = -1; before !== ring.length; ) {
    before = ring.length;
    ring = ring.filter((one) => {
      const isMet = (a: 'before' | 'after', b: 'before' | 'after'): boolean =>
        ring.some((other) => Math.abs(one[a] - other[b]) <= MEET * Math.hypot(one.sd, other.sd));
      return given.includes(one.k) || (isMet('before', 'after') && isMet('after', 'before'));
    });
  }
  return [...new Set(ring.map(({ k }) => k))].filter((k) => !given.includes(k));
}

/** The kinds that look cut: those given, and, over and over, those of which a side that no other is as
 * long as may be the cut. `twins`: a side that only its mirror image's is as long as counts as such. */
function peeled(kinds: readonly Kind[], given: readonly number[], twins: boolean): Set<number> {
  const out = new Set(given);
  for (let more = true; more; ) {
    more = false;
    for (const k of kinds.keys()) {
      if (out.has(k)) continue;
      const left = [...kinds.keys()].filter((one) => !out.has(one));
      const lonely = lonelyOf(kinds, k, left, twins);
      if (!fitsOf(kinds, k, left).some(({ cutSide }) => lonely.includes(cutSide))) continue;
      out.add(k);
      more = true;
    }
  }
  return out;
}

/** Two sides may be of one length within this many deviations of their difference. */
const MEET = 3.5;

/** Whether a side of a kind is as long as some other side of a kind. */
function meets(kinds: readonly Kind[], k: number, side: number, other: number): boolean {
  const [a, b] = [kinds[k] as Kind, kinds[other] as Kind];
  return b.sides.some(
    (x, i) =>
      !(k === other && i === side) &&
      Math.abs(x - (a.sides[side] as number)) <=
        MEET *
          Math.hypot(
            Math.max(a.sideSds[side] as number, FINEST_SD),
            Math.max(b.sideSds[i] as number, FINEST_SD),
          ),
  );
}

function areTwins(kinds: readonly Kind[], k: number, other: number): boolean {
  const [a, b] = [kinds[k] as Kind, kinds[other] as Kind];
  return a.sides.length === b.sides.length && a.sides.every((_, i) => meets(kinds, k, i, other));
}

/** Kinds that are linked by sides of one length, the largest lot first. */
function connected(kinds: readonly Kind[], all: readonly number[]): number[][] {
  const lots: number[][] = [];
  const done = new Set<number>();
  for (const start of all) {
    if (done.has(start)) continue;
    const lot = [start];
    done.add(start);
    for (const k of lot)
      for (const other of all)
        if (
          !done.has(other) &&
          (kinds[k] as Kind).sides.some((_, i) => meets(kinds, k, i, other))
        ) {
          done.add(other);
          lot.push(other);
        }
    lots.push(lot);
  }
  return lots.sort((a, b) => b.length - a.length);
}
