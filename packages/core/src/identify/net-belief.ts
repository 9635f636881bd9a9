// What a found shape leaves to know of its kinds' sides and its radius: a joint Gaussian about the
// fitted sides. Only kinds that the shape uses have a place in it. Sides that the shape takes for
// misread have no say. Metres.

import type { Kind } from '../pile/kind.ts';
import type { Belief } from './belief.ts';
import { firstSides } from './corner-model.ts';
import { sharedShares } from './facts.ts';
import { beliefAt, conditionsOf, netConditions } from './fit.ts';
import { kindsOfShape, type Shape, type ShapeQuestion } from './shape.ts';
import { type BothWays, FINEST_SD, type SideBelief } from './side-belief.ts';

/** A shape's belief. Kinds are numbered as in its shell. */
export interface NetBelief {
  readonly shape: Shape;
  readonly kinds: readonly Kind[];
  /** Kind → number of its first side in the belief; −1 where the shape has no place for it. */
  readonly first: readonly number[];
  /** Changes of the sides, then of κ / κ₀. */
  readonly belief: Belief;
  /** Kind → sides as they are expected, hub to hub: as fitted; of suspects without their own reading. */
  readonly expected: readonly (readonly number[])[];
  /** The length that all readings lack: its covariance with each unknown, and its variance, m²; null
   * where none is unknown. */
  readonly lack: { readonly by: Float64Array; readonly variance: number } | null;
}

/** Deviation of a side that nobody read, or read wrong, metres. */
const UNREAD_SD = 0.025;

/** The belief of a shape of a question; null where its panels are not all on one sphere. */
export function netBelief(shape: Shape, question: ShapeQuestion): NetBelief | null {
  const kinds = kindsOfShape(shape, question.kinds);
  const used = new Set(shape.shell.kind);
  const own = kinds.map((_, k) => k).filter((k) => used.has(k));
  const starts = firstSides(own.map((k) => (kinds[k] as Kind).sides));
  const first = kinds.map((_, k) => (used.has(k) ? (starts[own.indexOf(k)] as number) : -1));
  const readings: SideBelief = {
    sides: own.map((k) => (kinds[k] as Kind).sides),
    variances: own.map((k) => variancesOf(shape, kinds, k)),
    sharedVariance: (question.allowanceSd ?? 0) ** 2,
    ...bothWaysOf(shape, question.kinds.length, own, starts),
  };
  const all = conditionsOf(shape.shell, first);
  // The rims of a straight course lie between a sphere and a cylinder: their stars do not add up.
  const conditions = shape.course ? netConditions(all.seams, []) : all;
  const fitted = own.map((k) => shape.fittedSides[k] as readonly number[]);
  const belief = beliefAt(readings, conditions, fitted, shape.radius);
  if (!belief) return null;
  const suspects = new Map(shape.suspects.map((one) => [`${one.kind} ${one.side}`, one.expected]));
  return {
    shape,
    kinds,
    first,
    belief,
    expected: kinds.map(({ id }, k) =>
      (shape.fittedSides[k] ?? []).map((side, i) => suspects.get(`${id} ${i}`) ?? side),
    ),
    lack: lackOf(readings, belief),
  };
}

/** Variances of a kind's sides as read, m²; of those that the shape takes for wrong, as unread. */
function variancesOf(shape: Shape, kinds: readonly Kind[], k: number): readonly number[] {
  const kind = kinds[k] as Kind;
  const added = shape.added[k - (kinds.length - shape.added.length)];
  if (added?.why === 'other hand' && added.of !== null)
    return [...variancesOf(shape, kinds, added.of)].reverse();
  const wrong = new Set(shape.suspects.flatMap((one) => (one.kind === kind.id ? [one.side] : [])));
  const mend = shape.mends.find((one) => one.kind === kind.id);
  if (mend?.slip === 'length') for (const side of mend.sides) wrong.add(side);
  const isUnread = (i: number): boolean => added?.why === 'wanted' || wrong.has(i);
  return kind.sideSds.map((sd, i) =>
    isUnread(i) ? Math.max(sd, UNREAD_SD) ** 2 : Math.max(sd, FINEST_SD) ** 2,
  );
}

/** Readings that count both ways round, where the shape has kinds that were added to be so. */
function bothWaysOf(
  { added }: Shape,
  asked: number,
  own: readonly number[],
  first: Int32Array,
): { readonly bothWays?: BothWays } {
  const same = Array.from({ length: first[own.length] as number }, (_, s) => s);
  const other: (number | null)[] = own.map(() => null);
  const isAdded = own.map((k) => k >= asked && added[k - asked]?.why === 'other hand');
  own.forEach((k, at) => {
    const base = isAdded[at] ? own.indexOf(added[k - asked]?.of ?? -1) : -1;
    if (base < 0) return;
    other[at] = base;
    other[base] = at;
    const sides = (first[at + 1] as number) - (first[at] as number);
    for (let i = 0; i < sides; i++) {
      const [s, t] = [(first[at] as number) + i, (first[base] as number) + sides - 1 - i];
      same[s] = t;
      same[t] = s;
    }
  });
  if (!isAdded.some((yes) => yes)) return {};
  return { bothWays: { other, same, mirrored: own.map(() => false), added: isAdded } };
}

/** How the length that all readings lack goes with the unknowns: it follows from the sides. */
function lackOf(readings: SideBelief, { size, covariance }: Belief): NetBelief['lack'] {
  const shares = sharedShares(readings);
  if (!shares) return null;
  const by = new Float64Array(size);
  for (let u = 0; u < size; u++)
    shares.weights.forEach((w, s) => {
      by[u] = (by[u] as number) + w * (covariance[s * size + u] as number);
    });
  const variance = shares.weights.reduce((all, w, s) => all + w * (by[s] as number), 0);
  return { by, variance: shares.variance + variance };
}

/** What the tape would show at a side, beyond what it always lacks: mean and variance, metres, without
 * the noise of the reading; null where the shape has no place for the kind. */
export function tapeAt(
  net: NetBelief,
  kind: number,
  side: number,
): { readonly mean: number; readonly variance: number } | null {
  const start = net.first[kind] as number;
  if (start < 0) return null;
  const s = start + side;
  const { size, covariance } = net.belief;
  const mean = (net.expected[kind] as readonly number[])[side] as number;
  const own = covariance[s * (size + 1)] as number;
  const { lack } = net;
  const variance = lack ? own - 2 * (lack.by[s] as number) + lack.variance : own;
  return { mean: mean - (net.shape.allowance?.value ?? 0), variance: Math.max(0, variance) };
}

/** Variances of one side and of the radius, m². */
export interface Spread {
  readonly side: number;
  readonly radius: number;
}

/** What is left to know of a side and of the radius, and what were left if the side were read once
 * more with a noise of `noise` (a variance, m²). The kind must be one that the shape uses. What the
 * shape was held against besides sides lessens both by as much. */
export function sharpenedBy(
  net: NetBelief,
  kind: number,
  side: number,
  noise: number,
): { readonly before: Spread; readonly after: Spread } {
  const { first, belief, shape, lack } = net;
  const { size, covariance } = belief;
  const s = (first[kind] as number) + side;
  const last = size - 1;
  const read = (tapeAt(net, kind, side)?.variance ?? 0) + noise;
  const left = (u: number): readonly [number, number] => {
    const own = Math.max(0, covariance[u * (size + 1)] as number);
    const both = (covariance[s * size + u] as number) - (lack?.by[u] ?? 0);
    return [own, Math.max(0, own - both ** 2 / read)];
  };
  const [own, ownThen] = left(s);
  const [kappa, kappaThen] = left(last);
  const radius = shape.radiusSd ** 2;
  return {
    before: { side: own, radius },
    after: { side: ownThen, radius: kappa > 0 ? (radius * kappaThen) / kappa : 0 },
  };
}

/** Standard deviation of one reading of a side, metres. */
export const readingSdOf = ({ readingSd, kinds }: ShapeQuestion): number =>
  readingSd ?? Math.max(FINEST_SD, ...kinds.flatMap(({ sideSds }) => sideSds));
