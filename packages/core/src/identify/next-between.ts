// Which side to measure again to tell which shape it is, or that it is none of those found: every shape
// says what the tape would show, and where it is none, the tape shows what it showed. Each reading comes
// with the bits that it is expected to tell.

import { lengthTexts, orList } from './find-words.ts';
import { inProportion, oddsAt, type Predicted, readingBits, sum } from './information.ts';
import { type NetBelief, readingSdOf, tapeAt } from './net-belief.ts';
import type { NextOutcome, NextReading, Shape, ShapeQuestion } from './shape.ts';

/** The likeliest shapes that are told apart. */
export const MOST_TOLD = 8;
/** Finds that tell less are not worth the walk, bits. */
export const LEAST_BITS = 0.02;
/** Finds nearer than this many deviations of a reading are one. */
const ONE_FIND = 1.5;
/** Panels that are read where one tells less than so many bits. Otherwise one after the other, each where
 * it then tells most, settles it in fewer readings. */
const SEVERAL = 3;
const ONE_WILL_DO = LEAST_BITS;
/** A find that leaves one shape so probable among those listed decides. */
const DECIDED = 0.9;

/** Of each kind the side whose reading tells most, the most telling first. `nets`: of each shape, null
 * where there is none. */
export function readingsBetween(
  shapes: readonly Shape[],
  nets: readonly (NetBelief | null)[],
  question: ShapeQuestion,
): NextReading[] {
  const known = knownOf(shapes, nets);
  const noise = readingSdOf(question) ** 2;
  return question.kinds
    .flatMap((_, k) => readingOf(k, known, noise, shapes, question) ?? [])
    .sort((a, b) => b.bits - a.bits);
}

/** A shape whose readings can be told beforehand; without `net` it is none of those found. */
interface Known {
  readonly net: NetBelief | null;
  readonly index: number;
  readonly odds: number;
}

function knownOf(shapes: readonly Shape[], nets: readonly (NetBelief | null)[]): Known[] {
  const known = shapes.slice(0, MOST_TOLD).flatMap((shape, index): Known[] => {
    const net = nets[index];
    return net ? [{ net, index, odds: shape.probability }] : [];
  });
  const none = 1 - sum(shapes.map(({ probability }) => probability));
  return none > 0 ? [...known, { net: null, index: shapes.length, odds: none }] : known;
}

interface Told {
  readonly side: number;
  readonly cases: readonly Predicted[];
  readonly bits: number;
}

function readingOf(
  kind: number,
  known: readonly Known[],
  noise: number,
  shapes: readonly Shape[],
  question: ShapeQuestion,
): NextReading | null {
  const one = mostTelling(kind, known, noise, question);
  const isEnough = one.bits >= ONE_WILL_DO;
  const several = isEnough ? one : mostTelling(kind, known, noise / SEVERAL, question);
  const { side, cases, bits } = several;
  if (bits < LEAST_BITS) return null;
  const id = question.kinds[kind]?.id as string;
  const outcomes = outcomesOf(cases, known, shapes, question.allowance ?? 0);
  if (outcomes.length < 2) return null;
  const panels = isEnough ? 'any panel' : 'three panels';
  const texts = outcomes.map(({ find }) => find);
  const says = outcomes.every(isDecided) ? 'decides' : 'tells more';
  return {
    act: 'read',
    about: 'shape',
    kind: id,
    side,
    ...(!isEnough && { panels: SEVERAL }),
    words: `measure side ${side + 1} of ${panels} of kind ${id} again${isEnough ? '' : ' and take the mean'}: ${orList(texts)} ${says}`,
    bits,
    outcomes,
  };
}

function mostTelling(
  kind: number,
  known: readonly Known[],
  noise: number,
  { kinds }: ShapeQuestion,
): Told {
  const { sides, sideSds } = kinds[kind] as ShapeQuestion['kinds'][number];
  const odds = known.map((one) => one.odds);
  return sides
    .map((read, side): Told => {
      const asRead = { mean: read, variance: (sideSds[side] as number) ** 2 };
      const cases = known.map(({ net }): Predicted => {
        const { mean, variance } = (net && tapeAt(net, kind, side)) ?? asRead;
        return { mean, variance: variance + noise };
      });
      return { side, cases, bits: readingBits(odds, cases) };
    })
    .reduce((a, b) => (b.bits > a.bits ? b : a));
}

/** What one may read, from the shortest, each with what lies near it taken together. Where nothing lies
 * apart, what is shorter than the middle and what is longer. */
function outcomesOf(
  cases: readonly Predicted[],
  known: readonly Known[],
  shapes: readonly Shape[],
  allowance: number,
): NextOutcome[] {
  const odds = known.map((one) => one.odds);
  const shares = inProportion(odds);
  const rows = cases.map((one, i) => ({ ...one, p: shares[i] as number }));
  rows.sort((a, b) => a.mean - b.mean);
  const finds = heapsOf(rows).map((heap) => {
    const probability = sum(heap.map(({ p }) => p));
    return { probability, at: sum(heap.map(({ p, mean }) => p * mean)) / probability };
  });
  const texts = lengthTexts(finds.map(({ at }) => at - allowance));
  return finds.map(({ at, probability }, i) => ({
    find: texts[i] as string,
    length: at - allowance,
    probability,
    shapes: shapesAfter(shapes, known, oddsAt(odds, cases, at)),
  }));
}

type Row = Predicted & { readonly p: number };

function heapsOf(rows: readonly Row[]): Row[][] {
  const isApart = rows.map(({ mean, variance }, i) => {
    const before = rows[i - 1];
    return before !== undefined && mean - before.mean >= ONE_FIND * Math.sqrt(variance);
  });
  const middle = ((rows[0] as Row).mean + (rows.at(-1) as Row).mean) / 2;
  const heaps: Row[][] = [];
  rows.forEach((row, i) => {
    const before = rows[i - 1];
    const isNew = isApart.some((apart) => apart)
      ? isApart[i]
      : before !== undefined && before.mean <= middle && row.mean > middle;
    if (before === undefined || isNew) heaps.push([]);
    (heaps.at(-1) as Row[]).push(row);
  });
  return heaps;
}

/** The probabilities of all shapes, and of none of them, once those known have new ones. */
function shapesAfter(
  shapes: readonly Shape[],
  known: readonly Known[],
  after: readonly number[],
): number[] {
  const odds = shapes.map(({ probability }) => probability);
  const own = sum(known.map((one) => one.odds));
  const none = Math.max(0, 1 - sum(odds));
  const all = [...odds, none];
  known.forEach(({ index }, i) => {
    all[index] = own * (after[i] as number);
  });
  return all;
}

/** Whether a find leaves one shape nearly certain among those listed, or none of them so. */
const isDecided = ({ shapes }: NextOutcome): boolean => {
  const none = shapes.at(-1) as number;
  const listed = shapes.slice(0, -1);
  return none > DECIDED || Math.max(...listed) > DECIDED * sum(listed);
};
