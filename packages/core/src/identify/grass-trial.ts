// The one star to lay out on the grass before anyone commits: of those that the panels in hand can make,
// the one whose gap tells most: which shape it is, whether its kinds belong together, whether a side is
// wrong. Metres.

import type { Kind } from '../pile/kind.ts';
import type { SideId } from '../shell/ids.ts';
import { kindSide } from '../shell/shell.ts';
import { starsOf } from '../shell/stars.ts';
import { andList, lengthText, orList } from './find-words.ts';
import { starGap } from './flat-star.ts';
import { type Predicted, readingBits, sum } from './information.ts';
import { type NetBelief, readingSdOf } from './net-belief.ts';
import { SEAM_PLAY } from './play.ts';
import type { GrassTrial, ShapeQuestion } from './shape.ts';
import { FINEST_SD } from './side-belief.ts';

/** A side that is wrong is wrong by about this, one standard deviation. */
const BLUNDER_SD = 0.015;
/** A wrong side widens what the gap may be by so many times, in steps of 2: its variance. */
const WIDER = { least: -8, most: 16 } as const;
/** Panels of one kind differ by this share of the noise of a reading, which has them in it: our own
 * judgement. */
const SCATTER = 0.5;
/** Deviations from what is expected that mean something: 1 in 400 by chance. */
const MEANS = 3;
/** A shape that makes the gap another by less than this is no rival. */
const RIVAL = 0.002;

/** One star of the best shape: kinds of the shape and the side of each that starts at the hub. */
type Star = readonly { readonly kind: number; readonly side: number }[];

/** A star with its gap and what this tells. */
interface Laid {
  readonly star: Star;
  readonly gap: Predicted;
  readonly bits: number;
  readonly rivals: readonly { readonly shape: number; readonly gap: number }[];
}

/** The star to lay; null where the panels in hand make none. `nets`: of the shapes, best first. */
export function grassTrial(
  nets: readonly (NetBelief | null)[],
  question: ShapeQuestion,
): GrassTrial | null {
  const [best] = nets;
  if (!best) return null;
  const wrongBits = bitsByWidth();
  const laid = starsInHand(best).flatMap((star) => laidStar(star, nets, question, wrongBits) ?? []);
  const [first, ...rest] = laid;
  if (!first) return null;
  return asTrial(
    rest.reduce((a, b) => (b.bits > a.bits + 1e-9 ? b : a), first),
    best,
    question,
  );
}

/** Every different star of which there are panels enough, from its longest side on. */
function starsInHand({ shape, kinds }: NetBelief): Star[] {
  const { shell, fittedSides } = shape;
  const stars = new Map<string, Star>();
  for (const { corners, closed } of starsOf(shell)) {
    if (!closed) continue;
    const own = corners.map((s) => ({
      kind: shell.kind[shell.sidePlace[s] as number] as number,
      side: kindSide(shell, s as SideId),
    }));
    const turns = own.map((_, by) => [...own.slice(by), ...own.slice(0, by)]);
    const seam = ([one]: Star): number => (one ? (fittedSides[one.kind]?.[one.side] as number) : 0);
    const keyed = turns.map((star) => ({ star, key: JSON.stringify(star), seam: seam(star) }));
    keyed.sort((a, b) => b.seam - a.seam || (a.key < b.key ? -1 : 1));
    const [from] = keyed;
    const isNew = keyed.every(({ key }) => !stars.has(key));
    if (from && isNew && isInHand(own, kinds, shape.added.length)) stars.set(from.key, from.star);
  }
  return [...stars.values()];
}

/** Whether there are panels enough for a star, as far as anybody counted; none of a wanted kind. */
function isInHand(star: Star, kinds: readonly Kind[], added: number): boolean {
  const needs = new Map<number, number>();
  for (const { kind } of star) needs.set(kind, (needs.get(kind) ?? 0) + 1);
  return [...needs].every(([k, need]) => {
    const { good, repair, counted } = kinds[k] as Kind;
    return counted ? good + repair >= need : k < kinds.length - added;
  });
}

/** What a star tells: which of the shapes it is, or none and the panels are as they were read; and, where
 * one side of the best shape is wrong as likely as not and each as likely as the others, whether so. */
function laidStar(
  star: Star,
  nets: readonly (NetBelief | null)[],
  question: ShapeQuestion,
  wrongBits: (wider: number) => number,
): Laid | null {
  const [best] = nets as readonly [NetBelief];
  const laying = layingVariance(star, best, question);
  const known = nets.flatMap((net, shape) => {
    const gap = net && hasAll(star, net, best) ? gapIn(star, net, question) : null;
    return net && gap ? [{ shape, odds: net.shape.probability, gap }] : [];
  });
  const [own] = known;
  const read = gapAsRead(star, best, question);
  if (own?.shape !== 0 || !read || laying === null) return null;
  const blurred = ({ mean, variance }: Predicted): Predicted => ({
    mean,
    variance: variance + laying,
  });
  const odds = known.map((one) => one.odds);
  const none = Math.max(0, 1 - sum(odds));
  const cases = [...known.map(({ gap }) => blurred(gap)), blurred(read.gap)];
  const sides = best.kinds.reduce(
    (all, kind, k) => all + ((best.first[k] as number) < 0 ? 0 : kind.sides.length),
    0,
  );
  const { variance } = blurred(own.gap);
  const wrong = read.slopes.map(({ by }) => wrongBits((by * BLUNDER_SD) ** 2 / variance) / sides);
  return {
    star,
    gap: own.gap,
    bits: readingBits([...odds, none], cases) + sum(wrong),
    rivals: known
      .slice(1)
      .filter(({ gap }) => Math.abs(gap.mean - own.gap.mean) > RIVAL)
      .map(({ shape, gap }) => ({ shape, gap: gap.mean })),
  };
}

/** What a reading tells of which of two equally likely cases it is, bits, by how much wider the second
 * is: its further variance over that of the first. */
function bitsByWidth(): (wider: number) => number {
  const { least, most } = WIDER;
  const table = Array.from({ length: most - least + 1 }, (_, i) =>
    readingBits(
      [1, 1],
      [
        { mean: 0, variance: 1 },
        { mean: 0, variance: 1 + 2 ** (least + i) },
      ],
    ),
  );
  return (wider) => {
    const at = Math.min(Math.max(Math.log2(wider) - least, 0), table.length - 1);
    const [i, part] = [Math.floor(at), at % 1];
    const from = table[i] as number;
    return wider > 2 ** least ? from + part * ((table[i + 1] ?? from) - from) : 0;
  };
}

/** Whether a shape uses all kinds of a star of the best, by the same numbers. */
const hasAll = (star: Star, net: NetBelief, best: NetBelief): boolean =>
  net === best ||
  star.every(
    ({ kind }) =>
      kind < best.kinds.length - best.shape.added.length && (net.first[kind] as number) >= 0,
  );

/** How far the panels end before the hub: half of what hub-to-hub lengths have beyond the panels'. */
const shortOf = ({ shape }: NetBelief, { allowance }: ShapeQuestion): number =>
  ((allowance ?? 0) + (shape.allowance?.value ?? 0)) / 2;

/** The gap as a shape has it, and how well its readings tell it. */
function gapIn(star: Star, net: NetBelief, question: ShapeQuestion): Predicted | null {
  const laid = starGap(panelsOf(star, net.shape.fittedSides), shortOf(net, question));
  if (!laid) return null;
  const { size, covariance } = net.belief;
  const slopes = new Map<number, number>();
  star.forEach(({ kind }, p) => {
    (laid.slopes[p] as readonly number[]).forEach((slope, i) => {
      const s = (net.first[kind] as number) + i;
      slopes.set(s, (slopes.get(s) ?? 0) + slope);
    });
  });
  let variance = 0;
  for (const [s, a] of slopes)
    for (const [t, b] of slopes) variance += a * b * (covariance[s * size + t] as number);
  return { mean: laid.gap, variance: Math.max(0, variance) };
}

const panelsOf = (star: Star, sides: readonly (readonly number[])[]) =>
  star.map(({ kind, side }) => ({ sides: sides[kind] as readonly number[], side }));

/** The gap of panels that are as they were read, and how it goes with each side of their kinds; null
 * where such panels leave none. */
function gapAsRead(
  star: Star,
  net: NetBelief,
  question: ShapeQuestion,
): { readonly gap: Predicted; readonly slopes: readonly { readonly by: number }[] } | null {
  const asRead = net.kinds.map(({ sides }) => sides);
  const laid = starGap(panelsOf(star, asRead), shortOf(net, question));
  if (!laid) return null;
  const slopes = new Map<string, { readonly by: number; readonly sd: number }>();
  star.forEach(({ kind }, p) => {
    (laid.slopes[p] as readonly number[]).forEach((slope, side) => {
      const key = `${kind} ${side}`;
      const sd = Math.max(net.kinds[kind]?.sideSds[side] as number, FINEST_SD);
      slopes.set(key, { sd, by: (slopes.get(key)?.by ?? 0) + slope });
    });
  });
  const all = [...slopes.values()];
  const variance = sum(all.map(({ by, sd }) => (by * sd) ** 2));
  return { gap: { mean: laid.gap, variance }, slopes: all };
}

/** What laying adds: the play of each seam's bolts, and panels that differ from the mean of their kind. */
function layingVariance(star: Star, net: NetBelief, question: ShapeQuestion): number | null {
  const laid = starGap(panelsOf(star, net.shape.fittedSides));
  if (!laid) return null;
  const scatter = (SCATTER * readingSdOf(question)) ** 2;
  const panels = laid.slopes.flat().reduce((sum, slope) => sum + slope ** 2 * scatter, 0);
  return panels + (star.length - 1) * (SEAM_PLAY / 2) ** 2;
}

function asTrial({ star, gap, rivals }: Laid, net: NetBelief, question: ShapeQuestion): GrassTrial {
  const laying = layingVariance(star, net, question) ?? 0;
  const reach = MEANS * Math.sqrt(gap.variance + laying);
  const [first] = star;
  const [most, least] = [gap.mean + reach, Math.max(0, gap.mean - reach)];
  return {
    around: star.map(({ kind, side }) => ({ kind: (net.kinds[kind] as Kind).id, side })),
    gap: gap.mean,
    gapSd: Math.sqrt(gap.variance),
    most,
    least,
    seam: first
      ? (net.shape.fittedSides[first.kind]?.[first.side] as number) - shortOf(net, question)
      : 0,
    rivals,
    words: trialWords(star, net, { gap: gap.mean, most, least, rivals }),
  };
}

function trialWords(
  star: Star,
  { kinds }: NetBelief,
  { gap, most, least, rivals }: Pick<GrassTrial, 'gap' | 'most' | 'rivals'> & { least: number },
): string {
  const ids = [...new Set(star.map(({ kind }) => (kinds[kind] as Kind).id))];
  const whose = `kind${ids.length > 1 ? 's' : ''} ${andList(ids)}`;
  const others = (rivals ?? []).map(
    ({ shape, gap: other }) => `${lengthText(other)} would be shape ${shape + 1}`,
  );
  const masses = star.flatMap(({ kind }) => kinds[kind]?.mass ?? []);
  const heaviest = masses.length > 0 ? ` of up to ${Math.ceil(Math.max(...masses))} kg` : '';
  return [
    `bolt ${star.length} panels flat, hand-tight, each against the one before, and leave the last seam open: at its far end it gapes ${lengthText(gap)}`,
    `a gap of more than ${lengthText(most)}${least > 0 ? `, or of less than ${lengthText(least)},` : ''} means that a side of ${whose} is not as measured, or that these kinds do not belong together: measure those panels again before going on`,
    ...(others.length > 0 ? [orList(others)] : []),
    `panels${heaviest} are heavy: two people carry each, one holds the seam, one bolts, nobody stands under a panel`,
  ].join('; ');
}
