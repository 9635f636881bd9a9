// What to read or count next of the best shape, whatever the others are: what sharpens most what is
// known least of its radius, its sides and the hub allowance, and the kinds that nobody counted. Bits
// are of the quantity as far as it matters: what the shell forgives need not be known.

import type { Kind } from '../pile/kind.ts';
import { andList, lengthText } from './find-words.ts';
import { sharpeningBits } from './information.ts';
import { type NetBelief, readingSdOf, sharpenedBy } from './net-belief.ts';
import { ALLOWANCE_PLAY, RADIUS_SHARE, SEAM_PLAY } from './play.ts';
import type { NextReading, Shape, ShapeQuestion } from './shape.ts';

/** Gains below this are not worth the walk, bits. */
const LEAST_GAIN = 0.05;
/** Whether a pile that nobody counted has enough: nobody knows, bits. */
const COUNT_BITS = 1;

/** What to do for the best shape; nothing of what is known well. */
export function nextAlone(net: NetBelief, question: ShapeQuestion): NextReading[] {
  return [
    ...sharpest(net, question),
    ...allowanceReading(net.shape),
    ...countsWanted(net.shape, question),
  ];
}

/** The side that sharpens the radius most, and the one that gains most itself. */
function sharpest(net: NetBelief, question: ShapeQuestion): NextReading[] {
  const noise = readingSdOf(question) ** 2;
  const { radius } = net.shape;
  const sides = question.kinds.flatMap((kind, k) =>
    (net.first[k] as number) < 0
      ? []
      : kind.sides.map((_, side) => {
          const { before, after } = sharpenedBy(net, k, side, noise);
          return {
            kind,
            side,
            sds: [Math.sqrt(before.side), Math.sqrt(after.side)] as const,
            radii: [Math.sqrt(before.radius), Math.sqrt(after.radius)] as const,
            bySide: sharpeningBits(before.side, after.side, SEAM_PLAY),
            byRadius: sharpeningBits(before.radius, after.radius, RADIUS_SHARE * radius),
          };
        }),
  );
  type Side = (typeof sides)[number];
  const most = (of: (side: Side) => number): Side | undefined =>
    sides.reduce<Side | undefined>((a, b) => (a && of(a) >= of(b) ? a : b), undefined);
  const [one, other] = [most((s) => s.byRadius), most((s) => s.bySide)];
  const out: NextReading[] = [];
  if (one && one.byRadius >= LEAST_GAIN)
    out.push(reading(one.kind, one.side, 'radius', one.byRadius, 'the radius', one.radii));
  if (other && other.bySide >= LEAST_GAIN)
    out.push(reading(other.kind, other.side, 'side', other.bySide, 'it', other.sds));
  return out;
}

function reading(
  { id }: Kind,
  side: number,
  about: 'radius' | 'side',
  bits: number,
  what: string,
  [before, after]: readonly [number, number],
): NextReading {
  return {
    act: 'read',
    about,
    kind: id,
    side,
    words: `measure side ${side + 1} of any panel of kind ${id} again: ${what} is known to ${lengthText(before)} now, then to ${lengthText(after)}`,
    bits,
    outcomes: [],
  };
}

const WAYS = {
  plate: 'measure a hub plate from its middle to where the tape was held along the sides',
  rim: 'join all panels around one hub and measure across, between two opposite far ends',
  angle: 'measure the angle between the panels at every sort of side',
} as const;

/** The reading that tells most of an allowance that is not known well. */
function allowanceReading({ allowance }: Shape): NextReading[] {
  const [best] = allowance?.sharper ?? [];
  if (!allowance || !best) return [];
  const bits = sharpeningBits(allowance.sd ** 2, best.sd ** 2, ALLOWANCE_PLAY);
  if (bits < LEAST_GAIN) return [];
  const words = `${WAYS[best.by]}: how far the hubs lie beyond what was measured is known to ${lengthText(allowance.sd)} now, then to ${lengthText(best.sd)}`;
  return [{ act: 'read', about: 'allowance', kind: null, side: null, words, bits, outcomes: [] }];
}

/** Kinds that the shape needs and nobody counted. */
function countsWanted({ shell }: Shape, { kinds }: ShapeQuestion): NextReading[] {
  const needs = kinds
    .map((kind, k) => ({ kind, need: shell.kind.reduce((n, own) => n + (own === k ? 1 : 0), 0) }))
    .filter(({ kind, need }) => !kind.counted && need > 0)
    .sort((a, b) => b.need - a.need);
  const [first] = needs;
  if (!first) return [];
  const several = needs.length > 1;
  return [
    {
      act: 'count',
      about: 'count',
      kind: first.kind.id,
      side: null,
      words: `count the panels of kind${several ? 's' : ''} ${andList(needs.map(({ kind }) => kind.id))}: the whole shape takes ${andList(needs.map(({ need }) => String(need)))}`,
      bits: COUNT_BITS,
      outcomes: [],
    },
  ];
}
