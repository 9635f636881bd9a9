// Which seams must be sealed while the shell is still open, and which bolts that were fitted dry must be
// done again. An order is that in which places are filled; a seam closes with the second of its places.

import type { Shell } from '../shell/shell.ts';
import { lyingSeams } from './seams.ts';

/** How the seal is laid. Between: tape or bead on the flanges' faces, which the bolts then press. Inside
 * and outside: over the seam once it is bolted. */
export const SEAL_SIDES = ['between', 'inside', 'outside'] as const;

/** One of {@link SEAL_SIDES}. */
export type SealSide = (typeof SEAL_SIDES)[number];

/** Seams that a step of the order closes. */
export interface ClosingSeams {
  /** Step of the order, from 0, and the place that is filled. */
  readonly step: number;
  readonly place: number;
  /** Seams that must be sealed as that panel goes in, and why. */
  readonly seams: readonly number[];
}

/** Steps at which seams must be sealed before or as they close: all of them for a seal between the
 * flanges; for one outside those whose middle is higher above the floor than `reach` (metres), as nobody
 * gets there once the scaffold is inside; none for one inside. RangeError for a place that is filled
 * twice. */
export function sealedBeforeClosing(
  shell: Shell,
  order: readonly number[],
  side: SealSide,
  reach: number,
  floor: number,
): ClosingSeams[] {
  const step = stepsOf(order);
  const found = new Map<number, number[]>();
  for (const { seam, over, under, middle } of lyingSeams(shell)) {
    const [a, b] = [step.get(over), step.get(under)];
    if (a === undefined || b === undefined) continue;
    const must = side === 'between' || (side === 'outside' && middle - floor > reach);
    if (must) found.set(Math.max(a, b), [...(found.get(Math.max(a, b)) ?? []), seam]);
  }
  return [...found]
    .sort(([a], [b]) => a - b)
    .map(([at, seams]) => ({ step: at, place: order[at], seams }));
}

function stepsOf(order: readonly number[]): Map<number, number> {
  const step = new Map<number, number>();
  order.forEach((place, i) => {
    if (step.has(place)) throw new RangeError(`place ${place} is filled twice in the order`);
    step.set(place, i);
  });
  return step;
}

/** A seam as the record has it. */
export interface SeamDone {
  readonly pass: 'none' | 'finger' | 'snug' | 'final';
  readonly sealed: boolean;
  /** Bolts through it; null: nobody knows. */
  readonly bolts: number | null;
}

/** Bolts that were fitted dry. */
export interface FittedDry {
  /** Seams with bolts in and no seal between their flanges. */
  readonly seams: readonly number[];
  /** Bolts of those whose number is known, to be taken out, sealed and done again. */
  readonly bolts: number;
  /** Seams among them whose bolts nobody counted. */
  readonly unknown: number;
}

/** What was fitted dry: with a seal between the flanges every bolted seam that is not sealed; with one
 * inside or outside none, as it goes over what is bolted. */
export function fittedDry(seams: readonly SeamDone[], side: SealSide): FittedDry {
  const dry =
    side === 'between'
      ? seams.flatMap(({ pass, sealed }, i) => (pass !== 'none' && !sealed ? [i] : []))
      : [];
  return {
    seams: dry,
    bolts: dry.reduce((sum, i) => sum + (seams[i].bolts ?? 0), 0),
    unknown: dry.filter((i) => seams[i].bolts === null).length,
  };
}
